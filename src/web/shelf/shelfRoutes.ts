import { type Request, type Response, Router } from 'express';
import type { Entry, ShopCriteria } from '../../../shared/words/catalogue.ts';
import { SHELF_ASKED } from '../../../shared/words/fields/shelf.ts';
import type { Job } from '../../../shared/words/job.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import {
  type ShelfAsked,
  type ShelfChange,
  type ShelfCover,
  type ShelfWhat,
  WALLS_WORD,
} from '../../../shared/words/shelf.ts';
import type { Frame } from '../../../views/frame.ts';
import { ShelfCoverPage } from '../../../views/pages/shelf/shelfCoverPage.tsx';
import { ShelfPage, WILL_WORD } from '../../../views/pages/shelf/shelfPage.tsx';
import { renderPage } from '../../../views/render.ts';
import { listEntries } from '../../records/catalogue.ts';
import { jobNamed } from '../../records/jobs/readJob.ts';
import { changeShelf, ShelfChanged, shelfHistory, shelfOf } from '../../records/shelf/shelfChanges.ts';
import { currentCriteria } from '../../records/shopCriteria.ts';
import { SHELF_EXPECTED } from '../../shop/doubts/coverExpected.ts';
import { shelfFactsOf, shelfNow } from '../../shop/shelf/shelfFacts.ts';
import { shelfRanked, stacksSuited } from '../../shop/shelf/shelfRanked.ts';
import { shelfTagOf } from '../job/papers.ts';
import { askAboutFigures } from '../request/askFigures.ts';
import { figureIn } from '../request/bodyColumns.ts';
import { readBody } from '../request/bodyForm.ts';
import { type Column, sendCsv } from '../request/csv.ts';
import { keepingUnits } from '../request/otherUnit.ts';
import { frameOf, type PageContext, rememberPreference } from '../request/pageContext.ts';
import { NoSuchPage } from '../request/pageErrors.ts';
import { askerOf } from '../request/requestGone.ts';
import { handledIn } from '../request/route.ts';
import { type Fields, fieldsOf, revisionIn, TypedForm, unitOf } from '../request/typed.ts';
import { withInitials } from '../request/whoFaults.ts';

/** The shelf: covers measured and waiting, held against an order, put there, reserved and taken off. */
export function shelfRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.get('/shelf', to(getShelf));
  router.get('/shelf.csv', to(sendShelf));
  router.get('/shelf/:number', to(getShelfCover));
  router.get('/shelf/:number/tag', to(getShelfTag));
  router.post('/shelf/:number', to(postShelf));
  return router;
}

const PAGE_LENGTH = 30;

interface Answered {
  readonly frame: Frame;
  readonly fields: Fields;
  readonly form: TypedForm;
  readonly asked: ShelfAsked;
  readonly covers: readonly ShelfCover[];
  readonly criteria: ShopCriteria;
  readonly stacks: readonly Entry<'stack'>[];
  /** Names of the stacks that a cover's studs suit. */
  readonly suits: (cover: ShelfCover) => readonly string[];
}

/** The shelf held against what was asked; nothing is listed while the question can't be read. */
async function answered(context: PageContext, req: Request, res: Response): Promise<Answered> {
  const { db } = context.shop;
  const fields = fieldsOf(req.query);
  const own = await frameOf(req, context);
  const frame = { ...own, lengthUnit: unitOf(fields) ?? own.lengthUnit };
  const form = new TypedForm(fields, frame);
  const figures = readBody(form, SHELF_ASKED);
  askAboutFigures(form, SHELF_ASKED, SHELF_EXPECTED);
  const { sure } = figures;
  if (sure !== null && (sure < SHELF_ASKED.sure.least || sure > SHELF_ASKED.sure.most))
    form.fault('sure', 'How sure: enter 50 % to 99.99 %, or leave it empty.');
  const criteria = (await currentCriteria(db)).body;
  const stacks = await listEntries(db, 'stack');
  const asked: ShelfAsked = {
    ...figures,
    familyId: form.text('family') || null,
    stackId: form.text('stack') || null,
  };
  const stack = stacks.find(({ id }) => id === asked.stackId) ?? null;
  const under = { criteria, stack, unit: frame.lengthUnit };
  const now = form.faults.length > 0 ? [] : await shelfNow(db, criteria, frame, askerOf(req, res));
  const facts = new Map(now.map((one) => [one.jobNumber, one.facts]));
  return {
    frame: keepingUnits(frame, form),
    fields,
    form,
    asked,
    covers: await shelfRanked(now, asked, under),
    criteria,
    stacks,
    suits: ({ jobNumber }) => stacksSuited(facts.get(jobNumber)!, stacks, under),
  };
}

async function getShelf(context: PageContext, req: Request, res: Response): Promise<void> {
  const { frame, fields, form, covers, suits, stacks, criteria } = await answered(context, req, res);
  const families = await listEntries(context.shop.db, 'family', { retired: true });
  const from = Math.min(revisionIn(fields.from, 0), Math.max(0, covers.length - 1));
  res.status(form.faults.length > 0 ? 422 : 200).send(
    renderPage(
      ShelfPage({
        frame,
        fields,
        writing: form.writing,
        faults: form.faults,
        doubts: form.doubts,
        confidence: criteria.confidence,
        families: families.map(({ id, name }) => ({ id, name })),
        stacks: stacks.map(({ id, name }) => ({ id, name })),
        covers: covers.slice(from, from + PAGE_LENGTH).map((cover) => ({ ...cover, suits: suits(cover) })),
        count: covers.length,
        from,
        next: from + PAGE_LENGTH < covers.length ? from + PAGE_LENGTH : null,
      }),
    ),
  );
}

async function sendShelf(context: PageContext, req: Request, res: Response): Promise<void> {
  const { frame, form, covers, suits } = await answered(context, req, res);
  if (form.faults.length > 0) throw new Refusal('wrong-values', form.faults);
  sendCsv(
    res,
    'shelf',
    columnsIn(frame.lengthUnit),
    covers.map((cover) => ({ ...cover, suits: suits(cover) })),
  );
}

type Row = ShelfCover & { readonly suits: readonly string[] };

const columnsIn = (unit: LengthUnit): readonly Column<Row>[] => {
  const length = (mm: number | null) => (mm === null ? null : figureIn(mm, 'length', unit));
  return [
    { name: 'job', of: (row) => row.jobNumber },
    { name: 'will it do', of: (row) => WILL_WORD[row.will] },
    { name: 'why', of: (row) => row.reasons.join(' ') },
    { name: 'cover type', of: (row) => row.familyName },
    { name: 'cover type id', of: (row) => row.familyId },
    { name: `wall left (${unit})`, of: (row) => length(row.wallLeftMm) },
    { name: 'wall left is', of: (row) => WALLS_WORD[row.wallsAre] },
    { name: `held against (${unit})`, of: (row) => length(row.wantedMm) },
    { name: 'how sure', of: (row) => row.sure },
    { name: 'cuts left', of: (row) => row.cutsLeft },
    { name: 'studs', of: (row) => row.studName },
    { name: 'flexplate stacks they suit', of: (row) => row.suits.join('; ') },
    { name: 'where it lies', of: (row) => row.lies },
    { name: 'reserved for job', of: (row) => row.forJob },
    { name: 'last changed at (UTC)', of: (row) => row.since },
  ];
};

async function getShelfCover(context: PageContext, req: Request, res: Response): Promise<void> {
  await show(context, req, res, await jobNamed(context.shop.db, String(req.params.number)));
}

async function getShelfTag(context: PageContext, req: Request, res: Response): Promise<void> {
  const job = await jobNamed(context.shop.db, String(req.params.number));
  const stands = await shelfOf(context.shop.db, job.id);
  if (stands === null || stands.what === 'off')
    throw new NoSuchPage(`The cover of job ${job.number} is not on the shelf, so it has no shelf tag.`);
  const frame = await frameOf(req, context);
  res.send(shelfTagOf(job, stands, { frame, publicUrl: context.settings.publicUrl }));
}

const WHATS: readonly ShelfWhat[] = ['put', 'moved', 'reserved', 'freed', 'off'];

async function postShelf(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  const fields = fieldsOf(req.body);
  const job = await jobNamed(db, String(req.params.number));
  const what = WHATS.find((one) => one === fields.what);
  if (what === undefined) throw new NoSuchPage('That can’t be done with a cover on the shelf.');
  try {
    await changeShelf(
      db,
      { who: fields.who ?? '', why: fields.why ?? '', now: context.now },
      {
        jobId: job.id,
        what,
        from: revisionIn(fields.from),
        lies: fields.lies ?? '',
        forJob: fields.forJob ?? '',
        facts: await shelfFactsOf(db, job, await frameOf(req, context), askerOf(req, res)),
      },
    );
  } catch (error) {
    if (error instanceof ShelfChanged) {
      await show(context, req, res, job, { status: 409, fields, theirs: error.theirs });
      return;
    }
    if (!(error instanceof Refusal)) throw error;
    const faults = withInitials(error.faults, fields.who);
    await show(context, req, res, job, { status: 422, fields, faults });
    return;
  }
  rememberPreference(res, 'initials', (fields.who ?? '').trim());
  res.redirect(303, `/shelf/${encodeURIComponent(job.number)}`);
}

async function show(
  context: PageContext,
  req: Request,
  res: Response,
  job: Job,
  sent: {
    readonly status?: number;
    readonly fields?: Fields;
    readonly faults?: readonly Fault[];
    readonly theirs?: ShelfChange | null;
  } = {},
): Promise<void> {
  const { db } = context.shop;
  const own = await frameOf(req, context);
  const frame = { ...own, address: `/shelf/${encodeURIComponent(job.number)}` };
  const criteria = (await currentCriteria(db)).body;
  const stacks = await listEntries(db, 'stack');
  const under = { criteria, stack: null, unit: frame.lengthUnit };
  const changes = await shelfHistory(db, job.id);
  const facts = await shelfFactsOf(db, job, frame, askerOf(req, res));
  const newest = changes.at(-1) ?? null;
  const [cover = null] =
    newest === null || newest.what === 'off'
      ? []
      : await shelfRanked(
          [
            {
              ...newest,
              facts,
              familyId: job.sections.received!.body.familyId,
              jobRevision: job.revision,
            },
          ],
          { familyId: null, stackId: null, crankPilotMm: null, leastWallMm: null, sure: null },
          under,
        );
  res.status(sent.status ?? 200).send(
    renderPage(
      ShelfCoverPage({
        frame,
        job,
        against: facts.against,
        cover: cover && { ...cover, suits: stacksSuited(facts, stacks, under) },
        changes: changes.toReversed(),
        fields: sent.fields ?? {},
        faults: sent.faults ?? [],
        stale: sent.status === 409 ? (sent.theirs ?? null) : null,
      }),
    ),
  );
}

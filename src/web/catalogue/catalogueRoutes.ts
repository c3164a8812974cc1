import { type Request, type Response, Router } from 'express';
import { writingIn } from '../../../shared/quantity/fieldText.ts';
import type { Entry, EntryBodies, Family, TypedInEntry } from '../../../shared/words/catalogue.ts';
import { PUT_AWAY } from '../../../shared/words/demo.ts';
import { FAMILY } from '../../../shared/words/fields/family.ts';
import { GAUGE } from '../../../shared/words/fields/gauge.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import {
  CATALOGUE_KINDS,
  type CatalogueKind,
  ENTRY_WORD,
  isCatalogueKind,
} from '../../../shared/words/terms.ts';
import { CataloguePage } from '../../../views/pages/catalogue/cataloguePage.tsx';
import { EntryPage } from '../../../views/pages/catalogue/entryPage.tsx';
import { sortAsked } from '../../../views/pages/catalogue/shelves.tsx';
import type { EntryStale } from '../../../views/parts/entryHistory.tsx';
import type { DoubtedLength } from '../../../views/parts/form/askedHere.ts';
import { renderPage } from '../../../views/render.ts';
import {
  addEntry,
  entryHistory,
  getEntry,
  listEntries,
  reinstateEntry,
  retireEntry,
  reviseEntry,
  typedIn,
} from '../../records/catalogue.ts';
import { StaleEdit } from '../../records/database/errors.ts';
import { type Ctx, key } from '../../records/database/writing.ts';
import { jobNamed } from '../../records/jobs/readJob.ts';
import { listPeople } from '../../records/people/people.ts';
import { currentCriteria } from '../../records/shopCriteria.ts';
import { whereUsed } from '../../records/whereUsed.ts';
import { shopMinimum } from '../../shop/limitsFor.ts';
import { ownAddress } from '../request/ownAddress.ts';
import { frameOf, type PageContext, rememberPreference, todayIn } from '../request/pageContext.ts';
import { NoSuchPage } from '../request/pageErrors.ts';
import { type Fields, fieldsOf, TypedForm } from '../request/typed.ts';
import { withInitials } from '../request/whoFaults.ts';
import { stackDrawn } from '../stud/stackDrawnRoutes.ts';
import { layerRows } from '../stud/stackForm.ts';
import { type BegunFromJob, begunFromJob } from './begunFromJob.ts';
import { atHandFor, namesOf } from './chosen.ts';
import { entryDrawn, getEntryDrawn } from './entryDrawn.ts';
import { askAboutEntry, entryAsTyped, entryBox, readEntry } from './entryForm.ts';
import { entryRevisionsInWords, entryStale } from './entryWords.ts';
import { askByFormula } from './limitsAsked.ts';
import { typedOf } from './typedEntry.ts';

/** Cover types, studs, stacks, nuts, washers, gauges, steels, linings and lathes: look, add, change as a new revision, retire. */
export function catalogueRouter(context: PageContext): Router {
  const router = Router();
  router.get('/catalogue', (req, res) => getCatalogue(context, req, res));
  router.get('/catalogue/:kind/new', (req, res) => getNewEntry(context, req, res));
  router.get('/catalogue/:kind/new/drawing', (req, res) => getEntryDrawn(context, req, res));
  router.post('/catalogue/:kind', (req, res) => postNewEntry(context, req, res));
  router.get('/catalogue/:kind/:id', (req, res) => getOneEntry(context, req, res));
  router.post('/catalogue/:kind/:id', (req, res) => postEntry(context, req, res));
  router.post('/catalogue/:kind/:id/retire', (req, res) => postUse(context, req, res, retireEntry));
  router.post('/catalogue/:kind/:id/reinstate', (req, res) => postUse(context, req, res, reinstateEntry));
  return router;
}

async function getCatalogue(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  const { text = '', sort, shelf } = fieldsOf(req.query);
  const sorted = sortAsked(sort);
  const listed = async <K extends CatalogueKind>(kind: K) =>
    (await listEntries(db, kind, { retired: true })).filter(isListed);
  const families = await listed('family');
  const limits = (await currentCriteria(db)).body;
  const minimums = new Map(families.map(({ body }) => [body, shopMinimum(body, limits).mm]));
  const props = {
    frame: await frameOf(req, context),
    shelves: {
      family: families,
      stud: await listed('stud'),
      stack: await listed('stack'),
      nut: await listed('nut'),
      washer: await listed('washer'),
      gauge: await listed('gauge'),
      steel: await listed('steel'),
      lining: await listed('lining'),
      lathe: await listed('lathe'),
    },
    shelf: isCatalogueKind(shelf) ? shelf : (sorted?.kind ?? CATALOGUE_KINDS[0]!),
    text,
    sorted,
    shopMinimumMm: (body: Family) => minimums.get(body) ?? null,
  };
  res.send(renderPage(CataloguePage(props)));
}

/** What was put away with the demo is no clutter among what the shop itself retired. */
function isListed({ retired, why }: Entry): boolean {
  return !retired || why !== PUT_AWAY;
}

async function getNewEntry(context: PageContext, req: Request, res: Response): Promise<void> {
  const { back, like, job } = fieldsOf(req.query);
  const kind = kindOf(req);
  const measured = kind === 'family' && job ? await jobNamed(context.shop.db, job) : null;
  const ofJob = measured && begunFromJob(measured, await frameOf(req, context));
  const begun = { ...(await begunAs(kind, context, req)), ...ofJob?.fields };
  const copied = like ? await copiedFrom(await mustFind(context, kind, like), context, req) : {};
  await show(context, req, res, {
    kind,
    entry: null,
    fields: { ...begun, ...copied, ...(back && { back }) },
    begunFrom: ofJob,
  });
}

/** The form of a new entry filled from another of its kind: all but what is true of that one alone. */
async function copiedFrom(entry: Entry<CatalogueKind>, context: PageContext, req: Request): Promise<Fields> {
  const { kind, id } = entry;
  const typed = entryAsTyped(entry, await frameOf(req, context));
  const own = new Set(OWN_OF_EACH[kind]);
  return { ...Object.fromEntries(Object.entries(typed).filter(([box]) => !own.has(box))), like: id };
}

const STOCKED = ['stock', 'shelf'];

/** What is of one cover type, one box on the shelf or one gauge alone, by its box. */
const OWN_OF_EACH: Readonly<Record<CatalogueKind, readonly string[]>> = {
  family: [FAMILY.shopMinimumWallBy.box, FAMILY.shopMinimumWallOn.box, FAMILY.shopMinimumWallSource.box],
  stud: STOCKED,
  nut: STOCKED,
  washer: STOCKED,
  stack: [],
  gauge: [GAUGE.calibrationUMm.box, GAUGE.repeatabilityMm.box, GAUGE.dueOn.box],
  steel: [],
  lining: [],
  lathe: [],
};

/** A copy must have a name of its own, also where the other one is retired. */
async function askOtherName(context: PageContext, kind: CatalogueKind, form: TypedForm): Promise<void> {
  const other = form.has('like') ? await getEntry(context.shop.db, kind, form.text('like')) : null;
  if (other === null || key(other.name) !== key(form.text('name'))) return;
  form.fault(
    'name',
    `This is the name of the ${ENTRY_WORD[kind].one} it was copied from. Give it another name.`,
  );
}

/** Whoever adds a cover type most often sets its minimum too, today; both can be changed. */
async function begunAs(kind: CatalogueKind, context: PageContext, req: Request): Promise<Fields> {
  if (kind !== 'family') return {};
  const { initials } = await frameOf(req, context);
  return { [FAMILY.shopMinimumWallBy.box]: initials, [FAMILY.shopMinimumWallOn.box]: todayIn(context) };
}

async function getOneEntry(context: PageContext, req: Request, res: Response): Promise<void> {
  const entry = await entryAsked(context, req);
  const fields = entryAsTyped(entry, await frameOf(req, context));
  await show(context, req, res, { kind: entry.kind, entry, fields });
}

async function postNewEntry(context: PageContext, req: Request, res: Response): Promise<void> {
  const kind = kindOf(req);
  await save(context, req, res, { kind, entry: null }, async (ctx, body, typed) => {
    return addEntry(context.shop.db, ctx, { kind, body, typed });
  });
}

async function postEntry(context: PageContext, req: Request, res: Response): Promise<void> {
  const entry = await entryAsked(context, req);
  const { kind, id } = entry;
  const fromRevision = Number(fieldsOf(req.body).from);
  await save(context, req, res, { kind, entry }, async (ctx, body, typed) => {
    return reviseEntry(context.shop.db, ctx, { kind, id, fromRevision, body, typed });
  });
}

async function postUse(
  context: PageContext,
  req: Request,
  res: Response,
  change: typeof retireEntry,
): Promise<void> {
  const entry = await entryAsked(context, req);
  const { kind, id } = entry;
  const fields = fieldsOf(req.body);
  await attempt(context, req, res, { kind, entry, fields, body: null }, () =>
    change(context.shop.db, ctxOf(context, fields), { kind, id, fromRevision: Number(fields.from) }),
  );
}

interface EntryAsked {
  readonly kind: CatalogueKind;
  /** null while it is new. */
  readonly entry: Entry<CatalogueKind> | null;
}

async function save(
  context: PageContext,
  req: Request,
  res: Response,
  { kind, entry }: EntryAsked,
  write: (ctx: Ctx, body: EntryBodies[CatalogueKind], typed: TypedInEntry | null) => Promise<Entry>,
): Promise<void> {
  const fields = fieldsOf(req.body);
  const frame = await frameOf(req, context);
  const shown = entry ? entryAsTyped(entry, writingIn(fields, frame)) : {};
  const form = new TypedForm(fields, frame, shown);
  if (fields.add === 'layer' || fields.add === 'drawing') {
    await show(context, req, res, { kind, entry, fields });
    return;
  }
  const body = readEntry(kind, form, await atHandFor(context.shop.db, kind), entry?.body ?? null);
  if (entry === null) await askOtherName(context, kind, form);
  if (body !== null) askAboutEntry(kind, form, { today: todayIn(context), standing: entry?.body ?? null });
  if (body !== null && kind === 'family') {
    const formula = (await currentCriteria(context.shop.db)).body.minimumWallFormula ?? null;
    askByFormula(form, body as Family, { standing: (entry?.body as Family | undefined) ?? null, formula });
  }
  if (body === null || form.faults.length > 0) {
    const faults = withInitials(form.faults, fields.who);
    await show(context, req, res, { kind, entry, fields, faults, doubts: form.doubts });
    return;
  }
  const typed = typedOf(form, body, entryBox(kind, form), shown);
  await attempt(context, req, res, { kind, entry, fields, body }, () =>
    write(ctxOf(context, fields), body, typed),
  );
}

async function attempt(
  context: PageContext,
  req: Request,
  res: Response,
  sent: EntryAsked & {
    readonly fields: Fields;
    /** null where only its use changes. */
    readonly body: EntryBodies[CatalogueKind] | null;
  },
  change: () => Promise<Entry>,
): Promise<void> {
  const { kind, entry, fields, body } = sent;
  let kept: Entry;
  try {
    kept = await change();
  } catch (error) {
    if (error instanceof StaleEdit && entry) {
      const stale = entryStale(kind, error, body, await frameOf(req, context));
      const theirs = await mustFind(context, kind, entry.id);
      await show(context, req, res, { kind, entry: theirs, fields, stale });
      return;
    }
    if (!(error instanceof Refusal)) throw error;
    await show(context, req, res, { kind, entry, fields, faults: error.faults });
    return;
  }
  rememberPreference(res, 'initials', (fields.who ?? '').trim());
  res.redirect(303, fields.back ? backWith(fields.back, kind, kept) : `/catalogue?shelf=${kind}`);
}

/** Where whoever added it came from, with the new entry chosen there. */
function backWith(back: string, kind: CatalogueKind, { id }: Entry): string {
  const at = new URL(ownAddress(back), 'http://shop.invalid');
  at.searchParams.set(kind, id);
  return `${at.pathname}${at.search}${at.hash}`;
}

async function show(
  context: PageContext,
  req: Request,
  res: Response,
  page: EntryAsked & {
    readonly fields: Fields;
    readonly faults?: readonly Fault[];
    readonly doubts?: readonly DoubtedLength[];
    readonly stale?: EntryStale;
    readonly begunFrom?: BegunFromJob | null;
  },
): Promise<void> {
  const { kind, entry, fields, faults = [], doubts = [], stale = null, begunFrom = null } = page;
  const { db } = context.shop;
  const own = await frameOf(req, context);
  const { back, like, job } = fields;
  const query = new URLSearchParams({
    ...(back && { back }),
    ...(!entry && like && { like }),
    ...(!entry && job && { job }),
  });
  const from = query.size > 0 ? `?${query}` : '';
  const address = `/catalogue/${kind}/${entry ? encodeURIComponent(entry.id) : 'new'}${from}`;
  const frame = { ...own, ...writingIn(fields, own), address };
  const told = async ({ id }: Entry) =>
    entryRevisionsInWords(kind, await entryHistory(db, kind, id), await typedIn(db, kind, id), frame);
  const rows = layerRows(new TypedForm(fields, frame));
  const history = entry ? await told(entry) : [];
  const kept = entry ? entryAsTyped(entry, frame) : await begunAs(kind, context, req);
  const typed = new TypedForm(fields, frame, kept);
  const people = (await listPeople(db)).filter(({ retired }) => !retired);
  const props = {
    frame,
    kind,
    entry,
    history,
    fields,
    kept,
    layerRows: rows,
    begunFrom,
    used: entry ? await whereUsed(db, kind, entry.id) : null,
    toName: namesOf(await atHandFor(db, kind)),
    typedStack: kind === 'stack' ? stackDrawn(fields, frame, kept) : null,
    typed: await entryDrawn(context, kind, typed),
    faults,
    doubts,
    stale,
    people: people.flatMap(({ initials, name }) => [initials, name]),
  };
  res.status(stale !== null ? 409 : faults.length > 0 ? 422 : 200).send(renderPage(EntryPage(props)));
}

async function entryAsked(context: PageContext, req: Request): Promise<Entry<CatalogueKind>> {
  return mustFind(context, kindOf(req), String(req.params.id));
}

async function mustFind(
  { shop }: PageContext,
  kind: CatalogueKind,
  id: string,
): Promise<Entry<CatalogueKind>> {
  const entry = await getEntry(shop.db, kind, id);
  if (entry === null)
    throw new NoSuchPage(`There is no ${ENTRY_WORD[kind].one} "${id.slice(0, 60)}" in the catalog.`);
  return entry;
}

function ctxOf(context: PageContext, fields: Fields): Ctx {
  return { who: fields.who ?? '', why: fields.why ?? '', now: context.now };
}

function kindOf(req: Request): CatalogueKind {
  const { kind } = req.params;
  if (isCatalogueKind(kind)) return kind;
  throw new NoSuchPage(
    'The catalog holds cover types, studs, flexplate stacks, nuts, washers, shims, gauges, steels, linings and lathes. Choose one of them.',
  );
}

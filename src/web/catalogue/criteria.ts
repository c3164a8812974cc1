import { createHash } from 'node:crypto';
import { type Request, type Response, Router } from 'express';
import { asTyped, writingIn } from '../../../shared/quantity/fieldText.ts';
import { shopCriteriaSchema } from '../../../shared/schemas/catalogue.ts';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import type { ShopCriteria } from '../../../shared/words/catalogue.ts';
import { CRITERIA } from '../../../shared/words/fields/criteria.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import { CriteriaPage, type LimitsPreview } from '../../../views/pages/catalogue/criteriaPage.tsx';
import { JudgedPage } from '../../../views/pages/catalogue/judgedPage.tsx';
import type { EntryStale } from '../../../views/parts/entryHistory.tsx';
import type { DoubtedLength } from '../../../views/parts/form/askedHere.ts';
import { renderPage } from '../../../views/render.ts';
import { entryHistory, listEntries, typedIn } from '../../records/catalogue.ts';
import { StaleEdit } from '../../records/database/errors.ts';
import { CRITERIA_ID, criteriaOf, currentCriteria, saveCriteria } from '../../records/shopCriteria.ts';
import { countJudged, JUDGED_A_PAGE, judgedUnder } from '../../records/trends/judgedUnder.ts';
import { answersChanged } from '../../shop/limitsChange.ts';
import { boxAt, readBody } from '../request/bodyForm.ts';
import { differences } from '../request/fieldLines.ts';
import { frameOf, type PageContext, rememberPreference, zoneHeld } from '../request/pageContext.ts';
import { NoSuchPage } from '../request/pageErrors.ts';
import { type Fields, fieldsOf, revisionIn, TypedForm } from '../request/typed.ts';
import { withInitials } from '../request/whoFaults.ts';
import { criteriaFields } from './entryFields.ts';
import { entryRevisionsInWords, entryStale } from './entryWords.ts';
import { askFormula, askLimits } from './limitsAsked.ts';
import { getMinimumGiven, minimumGiven } from './minimumGiven.ts';
import { typedOf } from './typedEntry.ts';

/** The box that each place in the limits came from. */
export const boxOfPath = (path: string): string => boxAt(CRITERIA, path) ?? path;

/** The shop's own limits, each change a revision with who, when and why. */
export function criteriaRouter(context: PageContext): Router {
  const router = Router();
  router.get('/criteria', (req, res) => getLimits(context, req, res));
  router.get('/criteria/minimum', (req, res) => getMinimumGiven(context, req, res));
  router.get('/criteria/jobs', (req, res) => getJudged(context, req, res));
  router.post('/criteria', (req, res) => postLimits(context, req, res));
  return router;
}

async function getLimits(context: PageContext, req: Request, res: Response): Promise<void> {
  const now = await currentCriteria(context.shop.db);
  const saved = Number(req.query.saved) === now.revision && now.revision > 0;
  const fields = asTyped(CRITERIA, now.body, await frameOf(req, context));
  await show(context, req, res, { revision: now.revision, fields, saved });
}

/** The jobs a revision judged. */
async function getJudged(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  const { revision: asked = '', before } = fieldsOf(req.query);
  const revision = revisionIn(asked);
  if ((await criteriaOf(db, revision)) === null)
    throw new NoSuchPage(`The shop limits have no revision "${asked.slice(0, 20)}".`);
  const jobs = await judgedUnder(db, revision, before === undefined ? undefined : revisionIn(before));
  const last = jobs.length === JUDGED_A_PAGE ? jobs.at(-1)! : null;
  const props = {
    frame: await frameOf(req, context),
    revision,
    count: (await countJudged(db)).get(revision) ?? 0,
    jobs,
    next: last && `/criteria/jobs?${new URLSearchParams({ revision: asked, before: String(last.id) })}`,
  };
  res.send(renderPage(JudgedPage(props)));
}

/** Saved at once where no open job is answered otherwise; else once that has been seen. */
async function postLimits(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  const fields = fieldsOf(req.body);
  const frame = await frameOf(req, context);
  const before = await currentCriteria(db);
  const shown = before.revision === 0 ? {} : asTyped(CRITERIA, before.body, writingIn(fields, frame));
  const form = new TypedForm(fields, frame, shown);
  const types = await listEntries(db, 'family');
  const body = readCriteria(form, (formula) => {
    askLimits(
      form,
      before.body,
      types.map((entry) => entry.body),
    );
    askFormula(form, formula, types);
  });
  const revision = Number(fields.from);
  if (body === null) {
    const faults = withInitials(form.faults, fields.who);
    await show(context, req, res, { revision, fields, faults, doubts: form.doubts });
    return;
  }
  const jobs = await answersChanged(db, before.body, body, frame);
  const seen = markOf(body, jobs);
  // What is stale, or not signed for, is refused first.
  const complete = before.revision === revision && form.has('who') && (revision === 0 || form.has('why'));
  if (fields.preview !== undefined || (complete && jobs.length > 0 && fields.seen !== seen)) {
    const told = [before.body, body].map((one) => criteriaFields(one, frame));
    const preview = { changes: differences(told[0]!, told[1]!), jobs, seen };
    await show(context, req, res, { revision, fields, preview });
    return;
  }
  const typed = typedOf(form, body, boxOfPath, asTyped(CRITERIA, before.body, form.writing));
  const ctx = { who: fields.who ?? '', why: fields.why ?? '', now: context.now };
  try {
    const kept = await saveCriteria(db, ctx, { fromRevision: revision, body, typed });
    rememberPreference(res, 'initials', (fields.who ?? '').trim());
    res.redirect(303, `/criteria?saved=${kept.revision}`);
  } catch (error) {
    if (error instanceof StaleEdit) {
      const stale = entryStale('criteria', error, body, frame);
      await show(context, req, res, { revision: error.currentRevision, fields, stale });
      return;
    }
    if (!(error instanceof Refusal)) throw error;
    await show(context, req, res, { revision, fields, faults: error.faults });
  }
}

/** What was seen is these limits and these jobs: where either changes, it is shown again. */
function markOf(body: ShopCriteria, jobs: LimitsPreview['jobs']): string {
  const text = JSON.stringify([body, jobs.map(({ number, after }) => [number, after])]);
  return createHash('sha256').update(text).digest('hex').slice(0, 16);
}

interface Shown {
  readonly revision: number;
  readonly fields: Fields;
  readonly faults?: readonly Fault[];
  readonly stale?: EntryStale;
  readonly doubts?: readonly DoubtedLength[];
  readonly preview?: LimitsPreview;
  readonly saved?: boolean;
}

async function show(context: PageContext, req: Request, res: Response, page: Shown): Promise<void> {
  const { revision, fields, faults = [], stale = null, preview = null, saved = false, doubts = [] } = page;
  const { db } = context.shop;
  const own = await frameOf(req, context);
  const frame = { ...own, ...writingIn(fields, own), address: '/criteria' };
  const history = await entryHistory(db, 'criteria', CRITERIA_ID);
  const typed = await typedIn(db, 'criteria', CRITERIA_ID);
  const told = entryRevisionsInWords('criteria', history, typed, frame);
  const standing = (await currentCriteria(db)).body;
  const kept = asTyped(CRITERIA, standing, frame);
  const given = await minimumGiven(db, new TypedForm(fields, frame), standing);
  const props = {
    frame,
    revision,
    fields,
    kept,
    faults,
    doubts,
    stale,
    preview,
    saved,
    given,
    history: told,
    judged: await countJudged(db),
    zone: zoneHeld(context.settings, standing),
  };
  res.status(stale !== null ? 409 : faults.length > 0 ? 422 : 200).send(renderPage(CriteriaPage(props)));
}

/** The limits as typed, and `ask` what looks like a slip among them; null with the sentences in the form. */
export function readCriteria(form: TypedForm, ask: (formula: string | null) => void): ShopCriteria | null {
  const read = readBody(form, CRITERIA);
  // The shims in stock, thinnest first, each once.
  const shimsMm = [...new Set(read.shimsMm)].sort((a, b) => a - b);
  const parsed = form.faults.length === 0 ? shopCriteriaSchema.safeParse({ ...read, shimsMm }) : null;
  if (parsed?.error) form.addFaults(faultsOf(parsed.error), boxOfPath);
  ask(read.minimumWallFormula);
  return form.faults.length === 0 ? (parsed?.data ?? null) : null;
}

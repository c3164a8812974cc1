import { type Request, type Response, Router } from 'express';
import { asTyped, boxOf, writingIn } from '../../shared/quantity/fieldText.ts';
import { CRITERIA } from '../../shared/words/fields/criteria.ts';
import type { AnyField } from '../../shared/words/fields/field.ts';
import { type Fault, Refusal } from '../../shared/words/refusal.ts';
import {
  type EntryStep,
  SettingUpPage,
  type ShopStep,
  STEP_FIELDS,
} from '../../views/pages/settingUpPage.tsx';
import type { EntryStale } from '../../views/parts/entryHistory.tsx';
import type { DoubtedLength } from '../../views/parts/form/askedHere.ts';
import { renderPage } from '../../views/render.ts';
import { listEntries } from '../records/catalogue.ts';
import type { Db } from '../records/database/database.ts';
import { StaleEdit } from '../records/database/errors.ts';
import { currentCriteria, saveCriteria } from '../records/shopCriteria.ts';
import { boxOfPath, readCriteria } from './catalogue/criteria.ts';
import { entryStale } from './catalogue/entryWords.ts';
import { askFormula, askLimits } from './catalogue/limitsAsked.ts';
import { typedOf } from './catalogue/typedEntry.ts';
import { frameOf, type PageContext, rememberPreference, zoneHeld } from './request/pageContext.ts';
import { handledIn } from './request/route.ts';
import { type Fields, fieldsOf, revisionIn, TypedForm } from './request/typed.ts';
import { withInitials } from './request/whoFaults.ts';

/** An empty shop, led from its name to its first cover; every step is a record of its own, so it goes on where it was left. */
export function settingUpRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.get('/setup', to(getSettingUp));
  router.post(
    '/setup/shop',
    to((_, req, res) => postStep(context, req, res, 'shop')),
  );
  router.post(
    '/setup/limits',
    to((_, req, res) => postStep(context, req, res, 'limits')),
  );
  return router;
}

/** Whether something is left to be set up. */
export async function isToSetUp(db: Db): Promise<boolean> {
  const { shopDone, limitsDone, first } = await standing(db);
  return !(shopDone && limitsDone && Object.values(first).every((entry) => entry !== null));
}

async function standing(db: Db) {
  const limits = await currentCriteria(db);
  const firstOf = async (kind: EntryStep) => {
    const [entry] = await listEntries(db, kind);
    return entry ? { id: entry.id, name: entry.name } : null;
  };
  return {
    limits,
    shopDone: limits.revision > 0,
    // Name and units are the first revision; the limits are another, or came with the whole form.
    limitsDone: limits.revision > 1 || limits.body.minimumWallMm !== null,
    first: {
      family: await firstOf('family'),
      gauge: await firstOf('gauge'),
      stud: await firstOf('stud'),
      stack: await firstOf('stack'),
    },
  };
}

async function getSettingUp(context: PageContext, req: Request, res: Response): Promise<void> {
  await show(context, req, res);
}

const STEP_WHY = { shop: 'Shop and units set up', limits: 'Limits set up' } as const;

async function postStep(context: PageContext, req: Request, res: Response, step: ShopStep): Promise<void> {
  const { db } = context.shop;
  const sent = fieldsOf(req.body);
  const frame = await frameOf(req, context);
  const before = await currentCriteria(db);
  const shown = asTyped(CRITERIA, before.body, writingIn(sent, frame));
  const own = STEP_FIELDS[step].map((key) => boxOf(key, CRITERIA[key] as AnyField)!);
  const rest = Object.fromEntries(Object.entries(shown).filter(([box]) => !own.some((one) => one === box)));
  const form = new TypedForm({ ...sent, ...rest }, frame, rest);
  if (step === 'shop') for (const key of CHOSEN) needed(form, key);
  const types = step === 'limits' ? await listEntries(db, 'family') : [];
  const body = readCriteria(form, (formula) => {
    if (step === 'shop') return;
    const families = types.map((entry) => entry.body);
    askLimits(form, before.body, families);
    askFormula(form, formula, types);
  });
  if (body === null || form.faults.length > 0) {
    const faults = withInitials(form.faults, sent.who);
    await show(context, req, res, { step, fields: sent, faults, doubts: form.doubts });
    return;
  }
  try {
    const ctx = { who: sent.who ?? '', why: STEP_WHY[step], now: context.now };
    const typed = typedOf(form, body, boxOfPath, rest);
    await saveCriteria(db, ctx, { fromRevision: revisionIn(sent.from), body, typed });
  } catch (error) {
    if (error instanceof StaleEdit) {
      const stale = entryStale('criteria', error, body, frame);
      await show(context, req, res, { step, fields: sent, stale });
      return;
    }
    if (!(error instanceof Refusal)) throw error;
    await show(context, req, res, { step, fields: sent, faults: error.faults });
    return;
  }
  rememberPreference(res, 'initials', (sent.who ?? '').trim());
  if (step === 'shop') rememberPreference(res, 'unit', body.lengthUnit);
  res.redirect(303, '/setup');
}

/** Nothing is chosen for the shop: not its name, nor its units. */
const CHOSEN = ['shopName', 'lengthUnit', 'decimalSign'] as const;
function needed(form: TypedForm, key: (typeof CHOSEN)[number]): void {
  if (form.has(key)) return;
  form.fault(key, `${CRITERIA[key].label}: ${key === 'shopName' ? 'enter it' : 'choose one'}.`);
}

interface Sent {
  readonly step?: ShopStep;
  readonly fields?: Fields;
  readonly faults?: readonly Fault[];
  readonly doubts?: readonly DoubtedLength[];
  readonly stale?: EntryStale;
}

async function show(context: PageContext, req: Request, res: Response, sent: Sent = {}): Promise<void> {
  const { step = null, fields = {}, faults = [], doubts = [], stale = null } = sent;
  const own = await frameOf(req, context);
  const { limits, ...stands } = await standing(context.shop.db);
  const props = {
    frame: { ...own, ...writingIn(fields, own), address: '/setup' },
    now: context.now(),
    zone: zoneHeld(context.settings, limits.body),
    revision: limits.revision,
    ...stands,
    step,
    fields,
    faults,
    doubts,
    stale,
  };
  res.status(stale !== null ? 409 : faults.length > 0 ? 422 : 200).send(renderPage(SettingUpPage(props)));
}

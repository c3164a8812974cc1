import { randomUUID } from 'node:crypto';
import { type Request, type Response, Router } from 'express';
import { writingIn } from '../../../shared/quantity/fieldText.ts';
import type { Entry } from '../../../shared/words/catalogue.ts';
import { daysAfter } from '../../../shared/words/day.ts';
import { MASTER_CHECK } from '../../../shared/words/fields/masterCheck.ts';
import type { MasterCheck } from '../../../shared/words/gauges/masterChecks.ts';
import { MM_PER_UNIT, printAgainst, printLength } from '../../../shared/words/print.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import { MasterChecksPage } from '../../../views/pages/catalogue/masterChecksPage.tsx';
import type { DoubtedLength } from '../../../views/parts/form/askedHere.ts';
import { renderPage } from '../../../views/render.ts';
import { getEntry } from '../../records/catalogue.ts';
import { addMasterCheck, masterChecksOf, withdrawMasterCheck } from '../../records/gauges/masterChecks.ts';
import { driftOf, limitOf, masterFinding, offOf } from '../../shop/mastersChecked.ts';
import { readBody } from '../request/bodyForm.ts';
import { type Column, sendCsv } from '../request/csv.ts';
import { frameOf, type PageContext, rememberPreference, todayIn } from '../request/pageContext.ts';
import { NoSuchPage } from '../request/pageErrors.ts';
import { handledIn } from '../request/route.ts';
import { type Fields, fieldsOf, TypedForm } from '../request/typed.ts';
import { withInitials } from '../request/whoFaults.ts';

/** Gauges on their masters: the next check, all before it over time, and those taken back. */
export function masterChecksRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.get('/gauges/:id/checks.csv', to(sendChecks));
  router.get('/gauges/:id/checks', to(getChecks));
  router.post('/gauges/:id/checks', to(postCheck));
  router.post('/gauges/:id/checks/withdraw', to(postWithdrawal));
  return router;
}

async function getChecks(context: PageContext, req: Request, res: Response): Promise<void> {
  await show(context, req, res, await gaugeAsked(context, req));
}

const SENT_ID = /^[A-Za-z0-9-]{16,64}$/;

async function postCheck(context: PageContext, req: Request, res: Response): Promise<void> {
  const gauge = await gaugeAsked(context, req);
  const fields = fieldsOf(req.body);
  const form = new TypedForm(fields, await frameOf(req, context));
  const { masterMm, readingMm } = readBody(form, MASTER_CHECK);
  const [master, reading] = [MASTER_CHECK.masterMm.box, MASTER_CHECK.readingMm.box];
  form.askFigure(master, MASTER_CHECK.masterMm.label, 'length', MASTERS);
  if (masterMm !== null && readingMm !== null) askAboutReading(form, gauge, { masterMm, readingMm });
  const { doubts } = form;
  const faults = form.faults.length > 0 ? withInitials(form.faults, fields.who) : form.faults;
  if (masterMm === null || readingMm === null || faults.length > 0) {
    await show(context, req, res, gauge, { fields, faults, doubts });
    return;
  }
  const id = SENT_ID.test(fields.sentId ?? '') ? fields.sentId! : randomUUID();
  const check = { id, gaugeId: gauge.id, day: todayIn(context), masterMm, readingMm };
  await attempt(context, req, res, gauge, { fields, withdrawing: null }, () =>
    addMasterCheck(
      context.shop.db,
      { who: fields.who ?? '', now: context.now },
      {
        ...check,
        masterTyped: form.text(master),
        readingTyped: form.text(reading),
        confirmed: [master, reading].some((box) => form.has(`ok.${box}`)),
      },
    ),
  );
}

/** Blocks, rings and rods for walls: 0.5 to 60 mm, of any size between. */
const MASTERS = { least: 0.5, most: 60, anyDecimal: true };

/** Farther off than this many times its limit it is asked about: read again, or the wrong master. */
const FAR_OFF = 10;
const FAR_OFF_MM = 0.25;

/** A reading that is no reading of this master: slipped by ten or by its unit, or far off. */
function askAboutReading(
  form: TypedForm,
  gauge: Entry<'gauge'>,
  { masterMm, readingMm }: { readonly masterMm: number; readonly readingMm: number },
): void {
  const { box, label } = MASTER_CHECK.readingMm;
  if (masterMm > 0) {
    const usual = { least: 0.9 * masterMm, most: 1.1 * masterMm, signed: true };
    if (form.askFigure(box, label, 'length', usual) || form.isSure(box)) return;
  }
  const limitMm = limitOf(gauge.body);
  const farMm = limitMm === null ? FAR_OFF_MM : FAR_OFF * limitMm;
  const offMm = Math.abs(readingMm - masterMm);
  if (offMm <= farMm || form.isSure(box)) return;
  const unit = form.writing.lengthUnit;
  const off = printAgainst(offMm, farMm, unit);
  form.ask(
    box,
    `${label}: that is ${off} off the master. Is the master ${printLength(masterMm, unit)}, and was the gauge zeroed?`,
    `The gauge reads ${off} off the master, as typed`,
    [],
  );
}

async function postWithdrawal(context: PageContext, req: Request, res: Response): Promise<void> {
  const gauge = await gaugeAsked(context, req);
  const fields = fieldsOf(req.body);
  const { id = '', why = '', who = '' } = fields;
  await attempt(context, req, res, gauge, { fields, withdrawing: id }, () =>
    withdrawMasterCheck(context.shop.db, { who, now: context.now }, { gaugeId: gauge.id, id, why }),
  );
}

/** Somebody else was first, or the page was sent before. */
const ALREADY = ['withdrawn', 'sent-otherwise'];

async function attempt(
  context: PageContext,
  req: Request,
  res: Response,
  gauge: Entry<'gauge'>,
  { fields, withdrawing }: { readonly fields: Fields; readonly withdrawing: string | null },
  change: () => Promise<void>,
): Promise<void> {
  try {
    await change();
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const status = ALREADY.includes(error.code) ? 409 : 422;
    await show(context, req, res, gauge, { fields, faults: error.faults, withdrawing, status });
    return;
  }
  rememberPreference(res, 'initials', (fields.who ?? '').trim());
  res.redirect(303, `/gauges/${encodeURIComponent(gauge.id)}/checks`);
}

async function show(
  context: PageContext,
  req: Request,
  res: Response,
  gauge: Entry<'gauge'>,
  sent: {
    readonly fields?: Fields;
    readonly faults?: readonly Fault[];
    readonly doubts?: readonly DoubtedLength[];
    readonly withdrawing?: string | null;
    readonly status?: number;
  } = {},
): Promise<void> {
  const { fields = {}, faults = [], doubts = [], withdrawing = null } = sent;
  const own = await frameOf(req, context);
  const address = `/gauges/${encodeURIComponent(gauge.id)}/checks`;
  const frame = { ...own, ...writingIn(fields, own), address };
  const checks = await masterChecksOf(context.shop.db, [gauge.id]);
  const today = todayIn(context);
  const drift = driftOf(gauge.body, checks);
  const isSent = SENT_ID.test(fields.sentId ?? '') && withdrawing === null;
  const props = {
    frame,
    gauge,
    checks,
    limitMm: limitOf(gauge.body),
    finding: masterFinding(gauge.body, checks, today, frame.lengthUnit),
    drift: drift?.sure ? lineOf(checks, drift) : [],
    driftMmPerMonth: drift?.sure ? drift.mmPerDay * DAYS_A_MONTH : null,
    sentId: isSent ? fields.sentId! : randomUUID(),
    fields: withdrawing === null ? { ...lastMaster(checks), ...fields } : fields,
    faults,
    doubts,
    withdrawing,
  };
  res.status(sent.status ?? (faults.length > 0 ? 422 : 200)).send(renderPage(MasterChecksPage(props)));
}

const DAYS_A_MONTH = 30.4;

/** The master is most often the one of the last check. */
function lastMaster(checks: readonly MasterCheck[]): Fields {
  const last = checks.findLast(({ withdrawn }) => withdrawn === null);
  return last === undefined ? {} : { [MASTER_CHECK.masterMm.box]: last.masterTyped };
}

/** The ends of the line of a drift, for the drawing. */
function lineOf(
  checks: readonly MasterCheck[],
  { lastMm, mmPerDay }: { readonly lastMm: number; readonly mmPerDay: number },
) {
  const stand = checks.filter(({ withdrawn }) => withdrawn === null);
  const last = stand.at(-1)!;
  const first = stand.find(({ dueOn }) => dueOn === last.dueOn)!;
  const days = Math.round((Date.parse(last.day) - Date.parse(first.day)) / (24 * 3600 * 1000));
  return [
    { day: daysAfter(last.day, -days), offMm: lastMm - days * mmPerDay },
    { day: last.day, offMm: lastMm },
  ];
}

async function sendChecks(context: PageContext, req: Request, res: Response): Promise<void> {
  const gauge = await gaugeAsked(context, req);
  const { lengthUnit } = await frameOf(req, context);
  const length = (mm: number) => Number((mm / MM_PER_UNIT[lengthUnit]).toPrecision(12));
  const columns: readonly Column<MasterCheck>[] = [
    { name: 'day', of: ({ day }) => day },
    { name: 'at (UTC)', of: ({ at }) => at },
    { name: `master (${lengthUnit})`, of: ({ masterMm }) => length(masterMm) },
    { name: `read (${lengthUnit})`, of: ({ readingMm }) => length(readingMm) },
    { name: `off (${lengthUnit})`, of: (one) => length(offOf(one)) },
    { name: 'master as typed', of: ({ masterTyped }) => masterTyped },
    { name: 'read as typed', of: ({ readingTyped }) => readingTyped },
    { name: 'confirmed', of: ({ confirmed }) => confirmed },
    { name: 'calibration due then', of: ({ dueOn }) => dueOn },
    { name: 'by', of: ({ who }) => who },
    { name: 'withdrawn by', of: ({ withdrawn }) => withdrawn?.who ?? null },
    { name: 'withdrawn because', of: ({ withdrawn }) => withdrawn?.why ?? null },
  ];
  sendCsv(res, `${gauge.name} on its master`, columns, await masterChecksOf(context.shop.db, [gauge.id]));
}

async function gaugeAsked({ shop }: PageContext, req: Request): Promise<Entry<'gauge'>> {
  const id = String(req.params.id);
  const gauge = await getEntry(shop.db, 'gauge', id);
  if (gauge === null) throw new NoSuchPage(`There is no gauge "${id.slice(0, 60)}" in the catalog.`);
  return gauge;
}

import { randomInt, randomUUID } from 'node:crypto';
import { type Request, type Response, Router } from 'express';
import { writingIn } from '../../../shared/quantity/fieldText.ts';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import { studyPlanSchema } from '../../../shared/schemas/gauge.ts';
import type { Entry } from '../../../shared/words/catalogue.ts';
import { GAUGE_STUDY } from '../../../shared/words/fields/gaugeStudy.ts';
import {
  type KeptStudy,
  nextPlace,
  type StudyPlan,
  stationOf,
} from '../../../shared/words/gauges/gaugeStudies.ts';
import { MM_PER_UNIT } from '../../../shared/words/print.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import { StudiesPage } from '../../../views/pages/catalogue/studiesPage.tsx';
import { StudyPage } from '../../../views/pages/catalogue/studyPage.tsx';
import { StudyTurnPage } from '../../../views/pages/catalogue/studyTurnPage.tsx';
import type { DoubtedLength } from '../../../views/parts/form/askedHere.ts';
import { renderPage } from '../../../views/render.ts';
import { getEntry } from '../../records/catalogue.ts';
import { samePerson, unfitInitials } from '../../records/database/writing.ts';
import { repeatsInJobs } from '../../records/gauges/repeatsInJobs.ts';
import {
  addStudyReading,
  getStudy,
  startStudy,
  stopStudy,
  studiesOf,
  withdrawStudyReading,
} from '../../records/gauges/studies.ts';
import { currentCriteria } from '../../records/shopCriteria.ts';
import { repeatabilityInJobs } from '../../shop/gauging/repeatabilityInJobs.ts';
import { studyAnswer } from '../../shop/gauging/studyAnswer.ts';
import { studyOrder } from '../../shop/gauging/studyOrder.ts';
import { NO_WALL, studyReadingExpected } from '../../shop/gauging/studyReadingExpected.ts';
import { sureOfOne } from '../../shop/gauging/sureOfOne.ts';
import { boxAt, readBody } from '../request/bodyForm.ts';
import { type Column, sendCsv } from '../request/csv.ts';
import { frameOf, type PageContext, rememberPreference, todayIn } from '../request/pageContext.ts';
import { NoSuchPage } from '../request/pageErrors.ts';
import { handledIn } from '../request/route.ts';
import { type Fields, fieldsOf, TypedForm } from '../request/typed.ts';
import { withInitials } from '../request/whoFaults.ts';

/** Studies of a gauge: set up, read one station at a time without seeing what was read before, and what they say. */
export function studiesRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.get('/gauges/:id/studies', to(getStudies));
  router.post('/gauges/:id/studies', to(postStudy));
  router.get('/studies/:number', to(getOneStudy));
  router.post('/studies/:number', to(postReading));
  router.post('/studies/:number/withdraw', to(postWithdrawal));
  router.post('/studies/:number/stop', to(postStop));
  router.get('/studies/:number/readings.csv', to(sendReadings));
  return router;
}

const SENT_ID = /^[A-Za-z0-9-]{16,64}$/;
const sentIdIn = ({ sentId = '' }: Fields) => (SENT_ID.test(sentId) ? sentId : randomUUID());

async function getStudies(context: PageContext, req: Request, res: Response): Promise<void> {
  await showStudies(context, req, res, await gaugeAsked(context, req));
}

async function postStudy(context: PageContext, req: Request, res: Response): Promise<void> {
  const gauge = await gaugeAsked(context, req);
  const fields = fieldsOf(req.body);
  const form = new TypedForm(fields, await frameOf(req, context));
  const plan = planTyped(form);
  if (plan === null || form.faults.length > 0) {
    await showStudies(context, req, res, gauge, { fields, faults: withInitials(form.faults, fields.who) });
    return;
  }
  const order = studyOrder(plan, (below) => randomInt(below));
  const ctx = { who: fields.who ?? '', now: context.now };
  const study = { sentId: sentIdIn(fields), gaugeId: gauge.id, day: todayIn(context), plan, order };
  let number: number;
  try {
    number = await startStudy(context.shop.db, ctx, study);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    await showStudies(context, req, res, gauge, { fields, faults: error.faults, status: statusOf(error) });
    return;
  }
  rememberPreference(res, 'initials', (fields.who ?? '').trim());
  res.redirect(303, `/studies/${number}`);
}

/** Somebody else was first, or the page was sent before. */
const ALREADY = ['withdrawn', 'sent-otherwise', 'already-read', 'stopped', 'complete'];
const statusOf = ({ code }: Refusal) => (ALREADY.includes(code) ? 409 : 422);

/** Who reads what, as typed; null when something cannot be used, with the sentences in the form. */
function planTyped(form: TypedForm): StudyPlan | null {
  const { covers, stations, rounds } = readBody(form, GAUGE_STUDY);
  const people = peopleTyped(form);
  if (covers === null || stations === null || rounds === null || form.faults.length > 0) return null;
  const read = studyPlanSchema.safeParse({ covers, stations, rounds, people });
  if (read.success) return read.data;
  form.addFaults(faultsOf(read.error), (path) => boxAt(GAUGE_STUDY, path) ?? path);
  return null;
}

const MOST_PEOPLE = 6;

function peopleTyped(form: TypedForm): readonly string[] {
  const { box } = GAUGE_STUDY.people;
  const people = form
    .text(box)
    .split(/[,;\s]+/)
    .filter((one) => one !== '');
  const unfit = people.map((one) => unfitInitials(one)).find((one) => one !== null);
  const twice = people.find((one, i) => people.slice(0, i).some((before) => samePerson(before, one)));
  if (unfit) form.fault(box, unfit.message);
  else if (twice !== undefined) form.fault(box, `${twice} is entered twice. Enter each person once.`);
  else if (people.length < 2 || people.length > MOST_PEOPLE)
    form.fault(box, `People: enter the initials of 2 to ${MOST_PEOPLE} people, with commas between.`);
  return people;
}

/** What stands in the boxes of a new study. */
const USUAL: Fields = { stations: '1' };

async function showStudies(
  context: PageContext,
  req: Request,
  res: Response,
  gauge: Entry<'gauge'>,
  sent: { readonly fields?: Fields; readonly faults?: readonly Fault[]; readonly status?: number } = {},
): Promise<void> {
  const { fields = {}, faults = [] } = sent;
  const own = await frameOf(req, context);
  const frame = { ...own, address: `/gauges/${encodeURIComponent(gauge.id)}/studies` };
  const studies = await studiesOf(context.shop.db, gauge.id);
  const kind = gauge.body.gaugeKind === 'indicator' ? 'face' : 'wall';
  const inJobs = repeatabilityInJobs(await repeatsInJobs(context.shop.db, gauge.id, kind));
  const props = {
    frame,
    gauge,
    studies,
    inJobs,
    sentId: sentIdIn(fields),
    fields: { ...USUAL, ...fields },
    faults,
  };
  res.status(sent.status ?? (faults.length > 0 ? 422 : 200)).send(renderPage(StudiesPage(props)));
}

async function getOneStudy(context: PageContext, req: Request, res: Response): Promise<void> {
  await show(context, req, res, await studyAsked(context, req));
}

async function postReading(context: PageContext, req: Request, res: Response): Promise<void> {
  const study = await studyAsked(context, req);
  const fields = fieldsOf(req.body);
  const form = new TypedForm(fields, await frameOf(req, context));
  const place = Number(/^\d{1,4}$/.test(fields.place ?? '') ? fields.place : Number.NaN);
  const valueMm = readingTyped(form, study, await gaugeOf(context, study));
  if (valueMm === null || form.faults.length > 0) {
    await show(context, req, res, study, { fields, faults: form.faults, doubts: form.doubts });
    return;
  }
  const turn = study.order[place];
  const who = fields.who ?? (turn === undefined ? '' : study.plan.people[turn.person]!);
  const reading = {
    id: sentIdIn(fields),
    place,
    valueMm,
    typed: form.text('value'),
    confirmed: form.isConfirmed('value'),
  };
  await attempt(context, req, res, study, { fields, act: 'read' }, () =>
    addStudyReading(context.shop.db, { who, now: context.now }, study.number, reading),
  );
}

/** The reading as typed: a wall above zero, asked about where it looks like a slip; never held up against one station’s others, for nobody is to know those. */
function readingTyped(form: TypedForm, study: KeptStudy, gauge: Entry<'gauge'>): number | null {
  const valueMm = form.length('value', 'Reading');
  if (valueMm === null) {
    if (!form.has('value')) form.fault('value', 'Reading is empty. Enter what the gauge shows.');
    return null;
  }
  if (gauge.body.gaugeKind === 'indicator') {
    form.askFigure('value', 'Reading', 'length', studyReadingExpected(study, 'height'));
    return valueMm;
  }
  if (valueMm <= 0) {
    form.fault('value', NO_WALL);
    return null;
  }
  form.askFigure('value', 'Reading', 'length', studyReadingExpected(study, 'size'));
  return valueMm;
}

async function postWithdrawal(context: PageContext, req: Request, res: Response): Promise<void> {
  const study = await studyAsked(context, req);
  const fields = fieldsOf(req.body);
  const { id = '', why = '', who = '' } = fields;
  await attempt(context, req, res, study, { fields, act: 'withdraw' }, () =>
    withdrawStudyReading(context.shop.db, { who, now: context.now }, study.number, { id, why }),
  );
}

async function postStop(context: PageContext, req: Request, res: Response): Promise<void> {
  const study = await studyAsked(context, req);
  const fields = fieldsOf(req.body);
  const { why = '', who = '' } = fields;
  await attempt(context, req, res, study, { fields, act: 'stop' }, () =>
    stopStudy(context.shop.db, { who, now: context.now }, study.number, why),
  );
}

type Act = 'read' | 'withdraw' | 'stop';

async function attempt(
  context: PageContext,
  req: Request,
  res: Response,
  study: KeptStudy,
  { fields, act }: { readonly fields: Fields; readonly act: Act },
  change: () => Promise<void>,
): Promise<void> {
  try {
    await change();
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const now = (await getStudy(context.shop.db, study.number)) ?? study;
    await show(context, req, res, now, { fields, faults: error.faults, act, status: statusOf(error) });
    return;
  }
  res.redirect(303, `/studies/${study.number}`);
}

interface Sent {
  readonly fields?: Fields;
  readonly faults?: readonly Fault[];
  readonly doubts?: readonly DoubtedLength[];
  /** What was refused. */
  readonly act?: Act;
  readonly status?: number;
}

async function show(
  context: PageContext,
  req: Request,
  res: Response,
  study: KeptStudy,
  sent: Sent = {},
): Promise<void> {
  const { fields = {}, faults = [], doubts = [], act = 'read' } = sent;
  const own = await frameOf(req, context);
  const frame = { ...own, ...writingIn(fields, own), address: `/studies/${study.number}` };
  const gauge = await gaugeOf(context, study);
  const place = nextPlace(study);
  const isAsked = String(place) === fields.place && act === 'read' && sent.status !== 409;
  const page = { frame, gauge, study, fields, faults, doubts, act };
  res.status(sent.status ?? (faults.length > 0 ? 422 : 200));
  if (place !== null) {
    const sentId = isAsked ? sentIdIn(fields) : randomUUID();
    res.send(
      renderPage(StudyTurnPage({ ...page, place, sentId, typed: isAsked ? (fields.value ?? '') : '' })),
    );
    return;
  }
  const answer = studyAnswer(study);
  const { body } = await currentCriteria(context.shop.db);
  const { variance } = answer;
  const means = variance && {
    ...sureOfOne(
      gauge.body,
      { repeatabilityMm: variance.repeatability.value!, reproducibilityMm: variance.reproducibility.value! },
      body.confidence,
    ),
  };
  res.send(renderPage(StudyPage({ ...page, answer, means })));
}

async function sendReadings(context: PageContext, req: Request, res: Response): Promise<void> {
  const study = await studyAsked(context, req);
  const { lengthUnit } = await frameOf(req, context);
  if (nextPlace(study) !== null)
    throw new NoSuchPage(
      'While a study goes on nobody sees its readings. Stop it, or take every reading first.',
    );
  const columns: readonly Column<KeptStudy['readings'][number]>[] = [
    { name: 'cover', of: ({ place }) => placeOf(study, place).cover },
    { name: 'angle from stud 1 (deg)', of: ({ place }) => placeOf(study, place).angleDeg },
    { name: 'person', of: ({ place }) => study.plan.people[study.order[place]!.person]! },
    { name: 'round', of: ({ place }) => study.order[place]!.round + 1 },
    {
      name: `reading (${lengthUnit})`,
      of: ({ valueMm }) => Number((valueMm / MM_PER_UNIT[lengthUnit]).toPrecision(12)),
    },
    { name: 'as typed', of: ({ typed }) => typed },
    { name: 'confirmed', of: ({ confirmed }) => confirmed },
    { name: 'asked as number', of: ({ place }) => place + 1 },
    { name: 'at (UTC)', of: ({ at }) => at },
    { name: 'saved by', of: ({ who }) => who },
    { name: 'withdrawn by', of: ({ withdrawn }) => withdrawn?.who ?? '' },
    { name: 'withdrawn why', of: ({ withdrawn }) => withdrawn?.why ?? '' },
  ];
  sendCsv(res, `study-${study.number}-readings`, columns, study.readings);
}

const placeOf = (study: KeptStudy, place: number) => stationOf(study.plan, study.order[place]!.station);

async function gaugeAsked({ shop }: PageContext, req: Request): Promise<Entry<'gauge'>> {
  const id = String(req.params.id);
  const gauge = await getEntry(shop.db, 'gauge', id);
  if (gauge === null) throw new NoSuchPage(`There is no gauge "${id.slice(0, 60)}" in the catalog.`);
  return gauge;
}

async function studyAsked({ shop }: PageContext, req: Request): Promise<KeptStudy> {
  const asked = String(req.params.number);
  const study = /^\d{1,9}$/.test(asked) ? await getStudy(shop.db, Number(asked)) : null;
  if (study === null) throw new NoSuchPage(`There is no study "${asked.slice(0, 20)}".`);
  return study;
}

async function gaugeOf({ shop }: PageContext, { gaugeId }: KeptStudy): Promise<Entry<'gauge'>> {
  const gauge = await getEntry(shop.db, 'gauge', gaugeId);
  if (gauge === null) throw new NoSuchPage(`There is no gauge "${gaugeId.slice(0, 60)}" in the catalog.`);
  return gauge;
}

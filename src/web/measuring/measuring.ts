import { randomUUID } from 'node:crypto';
import express, { type Request, type Response, Router } from 'express';
import { coverageInWords } from '../../../shared/measuring/askedInWords.ts';
import { type Order, type Step, stepsOf, writeStep } from '../../../shared/measuring/steps.ts';
import { readingsToCheck } from '../../../shared/measuring/toCheck.ts';
import { keptReadingsSchema } from '../../../shared/schemas/measuring.ts';
import type { Job, Pass } from '../../../shared/words/job.ts';
import { mayAs, type Person } from '../../../shared/words/people.ts';
import { samePlace } from '../../../shared/words/places.ts';
import { READING_WORD } from '../../../shared/words/readings.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import type { Frame } from '../../../views/frame.ts';
import { ClosedPage } from '../../../views/pages/measuring/closedPage.tsx';
import { MeasuringPage } from '../../../views/pages/measuring/measuringPage.tsx';
import { type MeasuringProps, orderFields } from '../../../views/pages/measuring/measuringProps.ts';
import { renderPage } from '../../../views/render.ts';
import { samePerson, unfitInitials } from '../../records/database/writing.ts';
import { addReadings } from '../../records/jobs/readings.ts';
import { jobNamed } from '../../records/jobs/readJob.ts';
import { listPeople } from '../../records/people/people.ts';
import { heldAgainst } from '../../shop/doubts/jobReadingDoubt.ts';
import { type PlaceRead, placesNotLaidOut, placesRead } from '../../shop/placesOfJob.ts';
import { frameOf, type PageContext, preferencesOf, rememberPreference } from '../request/pageContext.ts';
import { NoSuchPage } from '../request/pageErrors.ts';
import { handledIn } from '../request/route.ts';
import { type Fields, fieldsOf, unitOf, type Writing } from '../request/typed.ts';
import { whoOf } from '../request/whoSignedIn.ts';
import { askedNow, isMeasured, skippedSteps } from './askedNow.ts';
import { keepTyped } from './kept.ts';
import { orderOf, writeOrder } from './order.ts';
import { pasteRouter } from './paste.ts';
import { passOf, readOne } from './plainReading.ts';
import { standingViews } from './view.ts';

const BODY_LIMIT = '512kb';

/** Measuring at the bench: one box, one reading at a time, made for a gauge that types its reading and Enter. */
export function measuringRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.get('/jobs/:number/measure', to(getMeasuring));
  router.post('/jobs/:number/measure', to(postReading));
  router.use(pasteRouter(context));
  router.post('/jobs/:number/measure/order', to(postOrder));
  router.post('/jobs/:number/measure/kept', express.json({ limit: BODY_LIMIT }), to(postKept));
  router.get('/jobs/:number/measure/standing', to(getStanding));
  return router;
}

async function getMeasuring(context: PageContext, req: Request, res: Response): Promise<void> {
  const job = await jobNamed(context.shop.db, String(req.params.number));
  await show(context, req, res, job, fieldsOf(req.query), { status: 200, faults: [], doubt: null });
}

/** One reading from the plain form; on to the next. */
async function postReading(context: PageContext, req: Request, res: Response): Promise<void> {
  const job = await jobNamed(context.shop.db, String(req.params.number));
  const { meant = '', none = '', ...sent } = fieldsOf(req.body);
  const typed = none === '1' ? '0' : meant;
  const fields = typed === '' ? sent : { ...sent, value: typed };
  const frame = await frameOf(req, context);
  const read = readOne(job, fields, writingOf(fields, frame));
  if (!read.ok) {
    await show(context, req, res, job, fields, { status: 422, faults: read.faults, doubt: read.doubt });
    return;
  }
  const who = whoOf(req, fields.who);
  try {
    const ctx = { who, why: fields.why ?? '', now: context.now };
    await addReadings(context.shop.db, ctx, { jobId: job.id, readings: [read.reading] });
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const status = error.code === 'reading-differs' || error.code === 'nothing-to-replace' ? 409 : 422;
    const faults = error.faults.map(({ path, message }) => ({
      path: path.startsWith('readings') ? 'value' : path,
      message,
    }));
    await show(context, req, res, job, fields, { status, faults, doubt: null });
    return;
  }
  rememberPreference(res, 'initials', who.trim());
  const { pass, kind } = read.reading;
  const stations = placesRead(job, pass).toMeasure;
  const at = stations.findIndex((place) => samePlace(place, read.reading));
  const nth = at < 0 ? 0 : stations[at]!.readings.filter((one) => one.kind === kind).length;
  const after = at < 0 ? (fields.after ?? '') : writeStep({ kind, at, nth });
  const order = orderFields(orderIn(req, fields, job, pass));
  res.redirect(303, address(job, { ...order, after, skipped: fields.skipped ?? '', pass }));
}

/** What is measured and in which order: remembered on this tablet. */
async function postOrder(context: PageContext, req: Request, res: Response): Promise<void> {
  const job = await jobNamed(context.shop.db, String(req.params.number));
  const fields = fieldsOf(req.body);
  const pass = passOf(fields);
  const order = orderIn(req, fields, job, pass);
  rememberPreference(res, 'measuring', writeOrder(order, pass, preferencesOf(req).measuring));
  // Initials typed before the first reading stay typed.
  const who = whoOf(req, fields.who).trim();
  if (unfitInitials(who) === null) rememberPreference(res, 'initials', who);
  res.redirect(303, address(job, { ...orderFields(order), pass }));
}

function orderIn(req: Request, fields: Fields, job: Job, pass: Pass): Order {
  return orderOf(fields, preferencesOf(req).measuring, job, pass);
}

/** What a tablet kept while it had no connection, and what its script sends all along. */
async function postKept(context: PageContext, req: Request, res: Response): Promise<void> {
  const job = await jobNamed(context.shop.db, String(req.params.number));
  const frame = await frameOf(req, context);
  const sent = keptReadingsSchema.safeParse(req.body);
  if (!sent.success) {
    refuse(
      res,
      'wrong-values',
      sent.error.issues[0]?.message ??
        'The reading can’t be used as sent. Reload the page and enter it again.',
    );
    return;
  }
  const who = whoOf(req, sent.data.who);
  try {
    const ctx = { who, why: sent.data.why, now: context.now };
    const people = await listPeople(context.shop.db);
    const taken = await keepTyped(context.shop.db, ctx, job, sent.data.readings, mayHaveTyped(people));
    if (taken.added.length > 0) rememberPreference(res, 'initials', who.trim());
    res.json({ ...taken, ...(await standing(context, job.number, passOf(fieldsOf(req.query)), frame)) });
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    refuse(res, error.code, error.message);
  }
}

/** Where people sign in, one of them who may measure; else anybody who has initials. */
function mayHaveTyped(people: readonly Person[]): (who: string) => boolean {
  return (who) =>
    people.length === 0
      ? unfitInitials(who) === null
      : people.some(({ initials, role }) => samePerson(initials, who) && mayAs(role, 'recorder'));
}

/** What stands on the server, for a tablet that was away or that shares the job with another. */
async function getStanding(context: PageContext, req: Request, res: Response): Promise<void> {
  const job = await jobNamed(context.shop.db, String(req.params.number));
  const frame = await frameOf(req, context);
  res.json(await standing(context, job.number, passOf(fieldsOf(req.query)), frame));
}

async function standing(context: PageContext, number: string, pass: Pass, frame: Frame) {
  const job = await jobNamed(context.shop.db, number);
  return {
    revision: job.revision,
    standing: standingViews(job, pass, placesRead(job, pass).toMeasure, frame),
  };
}

async function show(
  context: PageContext,
  req: Request,
  res: Response,
  job: Job,
  fields: Fields,
  what: {
    status: number;
    faults: readonly Fault[];
    doubt: MeasuringProps['doubt'];
  },
): Promise<void> {
  const frame = await frameOf(req, context);
  if (job.stage === 'closed') {
    res.status(what.status).send(renderPage(ClosedPage({ frame, job })));
    return;
  }
  const family = job.sections.received?.body.family;
  if (!family) throw new NoSuchPage(`Job ${job.number} has no cover type, so there is nothing to measure.`);
  const pass = passOf(fields);
  const order = orderIn(req, fields, job, pass);
  const read = placesRead(job, pass);
  const stations = read.toMeasure;
  const faults = [...what.faults];
  const html = renderPage(
    MeasuringPage({
      frame: { ...frame, address: address(job, { ...orderFields(order), pass }) },
      job,
      pass,
      order,
      shape: { ...family, densityKgPerM3: null },
      stations: stations.map(({ angleDeg, radiusMm, name }) => ({ angleDeg, radiusMm, name })),
      asked: askedNow(job, read, order, fields, frame, faults),
      ...standsNow(job, pass, order, stations, fields, frame),
      gauge: job.sections.setup?.body.gauge ?? '',
      id: /^[A-Za-z0-9-]{16,64}$/.test(fields.id ?? '') && what.status === 422 ? fields.id! : randomUUID(),
      typed: what.status === 200 ? '' : (fields.value ?? ''),
      faults,
      doubt: what.doubt,
      fields,
    }),
  );
  res.status(what.status).send(html);
}

type StandsNow = Pick<
  MeasuringProps,
  'standing' | 'expected' | 'skipped' | 'toCheck' | 'coverage' | 'notLaidOut' | 'counts'
>;

/** What is measured so far, what was passed over, and what the readings show to be off. */
function standsNow(
  job: Job,
  pass: Pass,
  order: Order,
  stations: readonly PlaceRead[],
  fields: Fields,
  frame: Frame,
): StandsNow {
  const standing = standingViews(job, pass, stations, frame);
  const { expected } = heldAgainst(job, pass);
  const steps = stepsOf(stations, order);
  const measured = (step: Step) => isMeasured(stations, step);
  const notLaidOut = pass === 'before' ? placesNotLaidOut(job, stations) : [];
  const held = { ...expected, nominalWallMm: job.sections.received?.body.family.nominalWallMm ?? 0 };
  const whole = steps.every((step) => step.kind !== 'face' || measured(step));
  return {
    standing,
    expected,
    skipped: skippedSteps(fields, stations, steps).map((step) => ({
      step: writeStep(step),
      label: `${READING_WORD[pass][step.kind]} ${stations[step.at]!.name}`,
    })),
    toCheck: whole
      ? readingsToCheck(standing, held, { unit: frame.lengthUnit, sign: frame.decimalSign })
      : [],
    coverage: coverageInWords(steps, order, measured, notLaidOut),
    notLaidOut,
    counts: { measured: steps.filter(measured).length, all: steps.length },
  };
}

function refuse(res: Response, code: string, message: string): void {
  res.status(422).json({ error: { code, message } });
}

function address(job: Job, fields: Readonly<Record<string, string>>): string {
  const said = Object.entries(fields).filter(([, value]) => value !== '');
  return `/jobs/${encodeURIComponent(job.number)}/measure?${new URLSearchParams(said)}`;
}

function writingOf(fields: Fields, frame: Frame): Writing {
  return {
    decimalSign: frame.decimalSign,
    lengthUnit: unitOf(fields) ?? frame.lengthUnit,
  };
}

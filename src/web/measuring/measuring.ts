import { randomUUID } from 'node:crypto';
import express, { type Request, type Response, Router } from 'express';
import { readReading } from '../../../shared/measuring/readReading.ts';
import {
  ASKS,
  BYS,
  KIND_OF,
  nextStep,
  type Order,
  ROUNDS,
  type Step,
  stepsOf,
} from '../../../shared/measuring/steps.ts';
import { keptReadingsSchema } from '../../../shared/schemas/measuring.ts';
import type { Job, NewReading, Pass, ReadingKind } from '../../../shared/words/job.ts';
import { type Place, readPlace, samePlace, stationAt, turned } from '../../../shared/words/places.ts';
import { briefLength } from '../../../shared/words/print.ts';
import { READING_WORD } from '../../../shared/words/readings.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import type { Frame } from '../../../views/frame.ts';
import { type AskedHere, MeasuringPage } from '../../../views/pages/job/measuringPage.tsx';
import { renderPage } from '../../../views/render.ts';
import { addReadings } from '../../records/jobs/readings.ts';
import { jobNamed } from '../../records/jobs/readJob.ts';
import { heldAgainst } from '../../shop/doubts/jobReadingDoubt.ts';
import { type PlaceRead, type PlacesRead, placeOn, placesRead } from '../../shop/jobPlaces.ts';
import { NoSuchPage } from '../request/errors.ts';
import { frameOf, type PageContext, rememberPreference } from '../request/pageContext.ts';
import { handledIn } from '../request/route.ts';
import { type Fields, fieldsOf, TypedForm, unitOf, type Writing } from '../request/typed.ts';
import { whoOf } from '../request/whoSignedIn.ts';
import { keepTyped } from './kept.ts';
import { shownAs, standingViews } from './view.ts';

const LETTER: Readonly<Record<ReadingKind, string>> = { wall: 'w', face: 'f', mark: 'm' };
const BODY_LIMIT = '512kb';

/** Measuring at the bench: one box, one reading at a time, made for a gauge that types its reading and Enter. */
export function measuringRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.get('/jobs/:number/measure', to(getMeasuring));
  router.post('/jobs/:number/measure', to(postReading));
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
  const { meant = '', ...sent } = fieldsOf(req.body);
  const fields = meant === '' ? sent : { ...sent, value: meant };
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
  const stations = placesRead(job, read.reading.pass).toMeasure;
  const at = stations.findIndex((place) => samePlace(place, read.reading));
  const after = at < 0 ? (fields.after ?? '') : `${LETTER[read.reading.kind]}.${at}`;
  res.redirect(
    303,
    address(job, { ...orderFields(orderOf(fields, read.reading.pass)), after, pass: read.reading.pass }),
  );
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
    const taken = await keepTyped(context.shop.db, ctx, job, sent.data.readings);
    if (taken.added.length > 0) rememberPreference(res, 'initials', who.trim());
    res.json({ ...taken, ...(await standing(context, job.number, passOf(fieldsOf(req.query)), frame)) });
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    refuse(res, error.code, error.message);
  }
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
    doubt: { question: string; meant: string | null } | null;
  },
): Promise<void> {
  const frame = await frameOf(req, context);
  const family = job.sections.received?.body.family;
  if (!family) throw new NoSuchPage(`Job ${job.number} has no cover type, so there is nothing to measure.`);
  const pass = passOf(fields);
  const order = orderOf(fields, pass);
  const read = placesRead(job, pass);
  const stations = read.toMeasure;
  const faults = [...what.faults];
  const now = askedNow(job, read, order, fields, frame, faults);
  const html = renderPage(
    MeasuringPage({
      frame: { ...frame, address: address(job, { ...orderFields(order), pass }) },
      job,
      pass,
      order,
      shape: { ...family, densityKgPerM3: null },
      stations: stations.map(({ angleDeg, radiusMm, name }) => ({ angleDeg, radiusMm, name })),
      asked: now,
      standing: standingViews(job, pass, stations, frame),
      expected: heldAgainst(job, pass).expected,
      gauge: job.sections.setup?.body.gauge ?? '',
      id: /^[A-Za-z0-9-]{16,64}$/.test(fields.id ?? '') && what.status === 422 ? fields.id! : randomUUID(),
      typed: what.status === 200 ? '' : (fields.value ?? ''),
      faults,
      doubt: what.doubt,
      fields,
      counts: {
        measured: stepsOf(stations, order).filter((step) => isMeasured(stations, step)).length,
        all: stepsOf(stations, order).length,
      },
    }),
  );
  res.status(what.status).send(html);
}

function refuse(res: Response, code: string, message: string): void {
  res.status(422).json({ error: { code, message } });
}

function passOf(fields: Fields): Pass {
  return fields.pass === 'after' ? 'after' : 'before';
}

function orderOf(fields: Fields, pass: Pass): Order {
  return {
    round: ROUNDS.find((one) => one === fields.round) ?? 'numbered',
    by: BYS.find((one) => one === fields.by) ?? 'kind',
    asks: ASKS.find((one) => one === fields.asks) ?? (pass === 'before' ? 'wfm' : 'w'),
  };
}

function orderFields({ round, by, asks }: Order): Record<string, string> {
  return { round, by, asks };
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

function isMeasured(stations: readonly PlaceRead[], { kind, at }: Step): boolean {
  return stations[at]!.readings.some((one) => one.kind === kind);
}

function stepNamed(text: string | undefined, stations: readonly Place[]): Step | null {
  const named = /^([wfm])\.(\d{1,3})$/.exec(text ?? '');
  const at = Number(named?.[2]);
  return named && at < stations.length ? { kind: KIND_OF[named[1]!]!, at } : null;
}

/** What the box is for: the place and kind asked in the address, else the first that has no reading. */
function askedNow(
  job: Job,
  read: PlacesRead,
  order: Order,
  fields: Fields,
  writing: Writing,
  faults: Fault[],
): AskedHere | null {
  const cover = job.sections.received?.body.family;
  const stations = read.toMeasure;
  const steps = stepsOf(stations, order);
  const measured = (step: Step) => isMeasured(stations, step);
  const marked = markPlace(fields, writing, faults);
  if (marked !== null && stationAt(stations, marked) === undefined) {
    const was = read.readAt('mark', marked).at(-1) ?? null;
    return {
      kind: 'mark',
      at: null,
      ...marked,
      place: placeOn(cover, marked.angleDeg),
      replaces: was && { id: was.id, shown: shownAs(was, writing) },
      again: false,
      back: null,
      skip: null,
    };
  }
  const step = stepNamed(fields.at, stations) ?? nextStep(steps, stepNamed(fields.after, stations), measured);
  if (step === null) return null;
  const place = stations[step.at]!;
  const index = steps.findIndex((one) => one.kind === step.kind && one.at === step.at);
  const back = steps[index - 1] ?? null;
  const again = fields.again === '1';
  const was = again ? null : (read.readAt(step.kind, place).at(-1) ?? null);
  const named = (one: Step) => `${LETTER[one.kind]}.${one.at}`;
  return {
    ...step,
    angleDeg: place.angleDeg,
    radiusMm: place.radiusMm,
    place: place.name,
    replaces: was && { id: was.id, shown: shownAs(was, writing) },
    again,
    back: back && named(back),
    skip: named(step),
  };
}

/** Where a mark between stations lies, as typed or as touched. */
function markPlace(fields: Fields, writing: Writing, faults: Fault[]): Place | null {
  if ((fields.ma ?? '') === '' && (fields.mr ?? '') === '') return null;
  const form = new TypedForm(fields, writing);
  const angleDeg = form.angle('ma', 'Angle of the heat mark');
  const radiusMm = form.length('mr', 'Radius of the heat mark');
  form.needed(angleDeg, 'ma', 'Angle of the heat mark');
  form.needed(radiusMm, 'mr', 'Radius of the heat mark');
  if (radiusMm !== null && !(radiusMm > 0 && radiusMm < 10_000)) {
    form.fault(
      'mr',
      `Radius of the heat mark is ${briefLength(radiusMm, form.writing.lengthUnit)}; it must be more than 0. Measure it from the crank axis.`,
    );
  }
  faults.push(...form.faults);
  if (form.faults.length > 0 || angleDeg === null || radiusMm === null) return null;
  return { angleDeg: turned(angleDeg), radiusMm };
}

type ReadOne =
  | { readonly ok: true; readonly reading: NewReading }
  | {
      readonly ok: false;
      readonly faults: readonly Fault[];
      readonly doubt: { question: string; meant: string | null } | null;
    };

/** The one reading of the plain form, or why it is not taken. */
function readOne(job: Job, fields: Fields, writing: Writing): ReadOne {
  const no = (path: string, message: string): ReadOne => ({
    ok: false,
    faults: [{ path, message }],
    doubt: null,
  });
  const kind = KIND_OF[fields.kind ?? ''];
  const at = readPlace(fields.place ?? '');
  if (!kind || !at || !/^[A-Za-z0-9-]{16,64}$/.test(fields.id ?? '')) {
    return no(
      '',
      'This form is not complete, so nothing was saved. Open the measuring page again and enter it there.',
    );
  }
  const typed = (fields.value ?? '').trim();
  const cover = job.sections.received?.body.family;
  const field = `${READING_WORD[passOf(fields)][kind]} ${placeOn(cover, at.angleDeg)}`;
  const read = readReading({
    kind,
    field,
    typed,
    unit: writing.lengthUnit,
    decimalSign: writing.decimalSign,
    nominalWallMm: job.sections.received?.body.family.nominalWallMm ?? 0,
    place: at,
    ...heldAgainst(job, passOf(fields), (fields.replaces ?? '') === '' ? [] : [fields.replaces!]),
  });
  if (!read.ok) return no('value', read.message);
  if (read.doubt !== null && fields.ok !== typed) {
    return { ok: false, faults: [], doubt: { question: read.doubt.question, meant: read.doubt.meantTyped } };
  }
  return {
    ok: true,
    reading: {
      id: fields.id!,
      pass: passOf(fields),
      kind,
      ...at,
      valueMm: read.valueMm,
      typed,
      gauge: job.sections.setup?.body.gauge ?? '',
      doubtful: false,
      replaces: (fields.replaces ?? '') === '' ? null : fields.replaces!,
    },
  };
}

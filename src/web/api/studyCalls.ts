import { randomUUID } from 'node:crypto';
import { studiesAnswer, studyOneAnswer } from '../../../shared/schemas/answers/benchAnswers.ts';
import { studyReadingSchema } from '../../../shared/schemas/benchCalls.ts';
import {
  type KeptStudy,
  nextPlace,
  standingReadings,
  stationOf,
} from '../../../shared/words/gauges/gaugeStudies.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import { getEntry } from '../../records/catalogue.ts';
import { NotInRecords } from '../../records/database/errors.ts';
import { addStudyReading, getStudy, studiesOf } from '../../records/gauges/studies.ts';
import { figuresDoubted } from '../../shop/doubts/figuresDoubted.ts';
import { studyAnswer } from '../../shop/gauging/studyAnswer.ts';
import { NO_WALL, studyReadingExpected } from '../../shop/gauging/studyReadingExpected.ts';
import { ApiError, readBody } from '../request/apiErrors.ts';
import { type JobAnswered, type JobAsked, type JobCall, type JobNeeds, ok } from './call.ts';

/** Studies of a gauge: what each asks for next, and what it says. They are set up and stopped on the gauge’s page. */
export const studyCalls: readonly JobCall[] = [
  {
    methods: ['GET'],
    path: '/studies',
    name: 'findStudies',
    summary: 'Studies of a gauge, newest first.',
    description: 'Who read which covers, and how far each study is.',
    query: { gauge: 'the id of the gauge' },
    schema: null,
    answers: { 200: studiesAnswer },
    answer: async ({ db }, { query }) => {
      const { gauge = '' } = query;
      if ((await getEntry(db, 'gauge', gauge)) === null)
        throw new Refusal('wrong-values', [
          { path: 'gauge', message: `There is no gauge "${gauge.slice(0, 60)}" in the catalog.` },
        ]);
      return ok({ studies: (await studiesOf(db, gauge)).map(lineOf) });
    },
  },
  {
    methods: ['GET'],
    path: '/studies/{number}',
    name: 'getStudy',
    summary: 'A study of a gauge: what is read next, or what it says.',
    description:
      'While it goes on nobody sees its readings. Once every reading is taken, or it was stopped, it has them with repeatability and reproducibility.',
    query: {},
    schema: null,
    answers: { 200: studyOneAnswer },
    answer: async ({ db }, { named }) => ok(toldOf(await studyNamed(db, named))),
  },
  {
    methods: ['POST'],
    path: '/studies/{number}/readings',
    name: 'addStudyReading',
    summary: 'Send one reading of a study.',
    description:
      'place is that of next. With an id of your own it can be sent again; a place read before answers 409. A reading that looks like a slip is refused unless confirmed names valueMm.',
    query: {},
    schema: studyReadingSchema,
    answers: { 200: studyOneAnswer },
    answer: sendReading,
  },
];

async function studyNamed(db: JobNeeds['db'], named: string): Promise<KeptStudy> {
  const study = /^\d{1,9}$/.test(named) ? await getStudy(db, Number(named)) : null;
  if (study === null) throw new NotInRecords('number', `There is no study "${named.slice(0, 20)}".`);
  return study;
}

function lineOf(study: KeptStudy) {
  const { number, gaugeId, at, day, who, plan, order, stopped } = study;
  const taken = standingReadings(study).filter((one) => one !== null).length;
  return { number, gaugeId, at, day, who, plan, asked: order.length, taken, stopped };
}

function toldOf(study: KeptStudy) {
  const place = nextPlace(study);
  const turnAt = (at: number) => {
    const { station, person, round } = study.order[at]!;
    return {
      place: at,
      ...stationOf(study.plan, station),
      person: study.plan.people[person]!,
      round: round + 1,
    };
  };
  return {
    ...lineOf(study),
    next: place === null ? null : turnAt(place),
    readings:
      place !== null ? null : study.readings.map((reading) => ({ ...reading, ...turnAt(reading.place) })),
    answer: place !== null ? null : studyAnswer(study),
  };
}

/** Somebody else was first, or the page was sent before. */
const ALREADY = ['sent-otherwise', 'already-read', 'stopped'];

async function sendReading(needs: JobNeeds, { named, body }: JobAsked): Promise<JobAnswered> {
  const { db, now } = needs;
  const { id, who, place, valueMm, typed, confirmed } = readBody(studyReadingSchema, body);
  const study = await studyNamed(db, named);
  const gauge = await getEntry(db, 'gauge', study.gaugeId);
  const kind = gauge?.body.gaugeKind === 'indicator' ? 'height' : 'size';
  if (kind === 'size' && valueMm <= 0)
    throw new Refusal('wrong-values', [{ path: 'valueMm', message: NO_WALL }]);
  const [doubt] = figuresDoubted(
    { valueMm: { label: 'Reading', kind } },
    { valueMm },
    { valueMm: studyReadingExpected(study, kind) },
    '',
  );
  const sure = confirmed.includes('valueMm');
  if (doubt !== undefined && !sure)
    throw new Refusal('wrong-values', [
      { path: 'valueMm', message: `${doubt.question} If it is right, name valueMm in confirmed.` },
    ]);
  const reading = {
    id: id ?? randomUUID(),
    place,
    valueMm,
    typed: typed === '' ? `${valueMm} mm` : typed,
    confirmed: doubt !== undefined && sure,
  };
  try {
    await addStudyReading(db, { who, now }, study.number, reading);
  } catch (error) {
    if (error instanceof Refusal && ALREADY.includes(error.code))
      throw new ApiError(409, error.code, error.message, error.faults);
    throw error;
  }
  return ok(toldOf(await studyNamed(db, named)));
}

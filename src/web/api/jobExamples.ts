import {
  catalogueNutSchema,
  catalogueStackSchema,
  catalogueStudSchema,
  catalogueWasherSchema,
} from '../../../shared/schemas/catalogue.ts';
import type {
  CatalogueGauge,
  CatalogueLathe,
  CatalogueLining,
  CatalogueSteel,
  Family,
} from '../../../shared/words/catalogue.ts';
import type { StudyPlan } from '../../../shared/words/gauges/gaugeStudies.ts';
import type { InspectionList } from '../../../shared/words/inspection.ts';
import { addEntry } from '../../records/catalogue.ts';
import { openShopInMemory } from '../../records/database/database.ts';
import { startStudy } from '../../records/gauges/studies.ts';
import { currentCriteria, saveCriteria } from '../../records/shopCriteria.ts';
import { ITSELF } from '../../shop/work/workPool.ts';
import { errorBody } from '../request/apiErrors.ts';
import type { JobCall, JobNeeds } from './call.ts';
import { jobCalls } from './jobCalls.ts';

/** When everything in the examples happens. */
export const EXAMPLE_TIME = '2026-11-24T14:05:00.000Z';

export interface JobExample {
  /** Of the call it is an example of. */
  readonly name: string;
  readonly method: 'GET' | 'POST' | 'PUT';
  /** The address it is sent to, below /api, without its query. */
  readonly path: string;
  readonly query: Readonly<Record<string, string>>;
  readonly body: unknown;
}

export interface JobExampleAnswered extends JobExample {
  readonly status: number;
  readonly answer: unknown;
}

const family: Family = {
  name: 'Alder 11 plain',
  make: 'stamped',
  sideWall: 'plain',
  studCount: 4,
  studCircleDiameterMm: 286,
  trackInnerDiameterMm: 214,
  trackOuterDiameterMm: 264,
  nominalWallMm: 5,
  bossDiameterMm: 60,
  rimDiameterMm: 296,
  padDiameterMm: 32,
  padThicknessMm: 6.5,
  makerMinimumWallMm: null,
  makerMinimumWallSource: null,
  shopMinimumWallMm: 4.3,
  shopMinimumWallSource: 'set by the owner, 2026',
  ringAllowed: false,
  note: '',
};

/** The invented shop the examples are played in. */
export async function prepareExamples({ db, now }: Pick<JobNeeds, 'db' | 'now'>): Promise<void> {
  const ctx = { who: 'BL', why: 'invented', now };
  await saveCriteria(db, ctx, { fromRevision: 0, body: (await currentCriteria(db)).body });
  await addEntry(db, ctx, { kind: 'family', id: 'alder-11-plain', body: family });
  await addEntry(db, ctx, { kind: 'stud', id: 'long-3-8-24', body: catalogueStudSchema.parse(longStud) });
  await addEntry(db, ctx, { kind: 'stack', id: 'two-piece', body: catalogueStackSchema.parse(twoPiece) });
  await addEntry(db, ctx, { kind: 'nut', id: 'hex-3-8-24', body: catalogueNutSchema.parse(hexNut) });
  await addEntry(db, ctx, { kind: 'washer', id: 'shim-0-8', body: catalogueWasherSchema.parse(shim) });
  await addEntry(db, ctx, { kind: 'gauge', id: 'micrometer-m2', body: micrometer });
  await addEntry(db, ctx, { kind: 'steel', id: 'pressing-steel', body: pressingSteel });
  await addEntry(db, ctx, { kind: 'lining', id: 'paper-lining', body: paperLining });
  await addEntry(db, ctx, { kind: 'lathe', id: 'lathe-2', body: latheTwo });
  await addEntry(db, ctx, { kind: 'checklist', id: 'hard-parts', body: hardParts });
  await startStudy(db, ctx, {
    sentId: 'study-of-examples',
    gaugeId: 'micrometer-m2',
    day: '2026-11-24',
    plan,
    order,
  });
}

const pressingSteel: CatalogueSteel = {
  name: 'Pressing steel',
  youngMPa: 206_000,
  poisson: 0.29,
  source: 'invented for the example',
  sourceOn: null,
  yieldMPa: 320,
  conductivityWPerMK: 51.9,
  densityKgPerM3: 7870,
  specificHeatJPerKgK: 486,
  note: '',
};

const paperLining: CatalogueLining = {
  name: 'Paper lining',
  liningModulusMPaPerMm: 60,
  source: 'invented for the example',
  sourceOn: null,
  note: '',
};

const latheTwo: CatalogueLathe = {
  name: 'Lathe 2',
  leastRpm: 40,
  mostRpm: 1200,
  cuttingSpeedMPerMin: 150,
  noseRadiusMm: 0.8,
  roughingLimitMm: 0.25,
  finishingCutMm: 0.1,
  roughingFeedMm: 0.2,
  finishingFeedMm: 0.1,
  source: 'invented for the example',
  sourceOn: null,
  note: '',
};

const micrometer: CatalogueGauge = {
  name: 'Micrometer M2',
  gaugeKind: 'micrometer',
  resolutionMm: 0.001,
  calibrationUMm: 0.004,
  coverageFactor: 2,
  repeatabilityMm: 0.002,
  dueOn: '2027-05-31',
  note: '',
};
const hardParts: InspectionList = {
  name: 'Hard parts',
  familyIds: [],
  items: [
    {
      id: 'hub-free-of-grooves',
      name: 'Hub free of grooves',
      kind: 'yes-no',
      least: null,
      most: null,
      how: '',
    },
    { id: 'end-play', name: 'End play', kind: 'length', least: 0.1, most: 0.4, how: '' },
  ],
  source: 'set by the owner, 2026',
  note: '',
};
const plan: StudyPlan = { covers: 2, stations: 1, people: ['BL', 'AK'], rounds: 2 };
/** As if drawn by lot. */
const order = [
  { station: 1, person: 0, round: 0 },
  { station: 0, person: 0, round: 0 },
  { station: 0, person: 1, round: 0 },
  { station: 1, person: 1, round: 0 },
  { station: 0, person: 1, round: 1 },
  { station: 1, person: 1, round: 1 },
  { station: 1, person: 0, round: 1 },
  { station: 0, person: 0, round: 1 },
];

const longStud = {
  name: 'Long stud 3/8-24',
  stud: {
    threadStartMm: 6,
    threadEndMm: 20,
    projectionMm: 29.5,
    lengthToleranceMm: 0.25,
    pilotDiameterMm: 8,
    tensileMPa: 1035,
    proofMPa: 827,
  },
  threadTyped: '3/8-24 UNF-2A',
  note: '',
};
const twoPiece = {
  name: 'Two-piece, plate and casting',
  stack: {
    style: 'two-piece',
    layers: [
      { name: 'plate', thicknessMm: 3.2, toleranceMm: 0.1, holeDiameterMm: 10.3 },
      { name: 'casting', thicknessMm: 6.4, toleranceMm: 0.2, holeDiameterMm: 10.5 },
    ],
    holeCount: 4,
    holeCircleDiameterMm: 286,
    tipRoomMm: 45,
  },
  nut: { heightMm: 8.3, toleranceMm: 0.2, countersinkMm: 0.1, washerMm: 0, prevailing: false },
  nutThreadTyped: '3/8-24 UNF-2B',
  pullForwardMm: 4,
  note: '',
};

const hexNut = {
  name: 'Hex nut 3/8-24',
  nut: { heightMm: 8.3, toleranceMm: 0.2, countersinkMm: 0.1, proofMPa: 827, prevailing: false },
  threadTyped: '3/8-24 UNF-2B',
  stock: 40,
  shelf: 'N-3',
  note: '',
};
const shim = {
  name: 'Shim 0.8 mm',
  use: 'shim',
  innerDiameterMm: 10.7,
  outerDiameterMm: 22,
  thicknessMm: 0.8,
  toleranceMm: 0.05,
  note: '',
};

const id = (place: string) => `example-00000000-${place}`;
const places = [
  ...[0, 45, 90, 135, 180, 225, 270, 315].map((angleDeg) => ({ angleDeg, radiusMm: 110 })),
  ...[0, 90, 180, 270].map((angleDeg) => ({ angleDeg, radiusMm: 128 })),
];
const readings = (kind: 'wall' | 'face', pass: 'before' | 'after', values: readonly number[]) =>
  values.map((valueMm, i) => ({
    id: id(`${kind}-${pass}-${i}`),
    pass,
    kind,
    ...places[i],
    valueMm,
    typed: String(valueMm),
    gauge: kind === 'wall' ? 'micrometer 2' : 'indicator 1',
  }));
const walls = [4.92, 4.91, 4.9, 4.89, 4.88, 4.89, 4.9, 4.91, 4.92, 4.9, 4.88, 4.9];
const faces = [0.02, 0.01, 0, -0.01, -0.02, -0.01, 0, 0.01, 0.02, 0, -0.02, 0];

const received = {
  familyId: 'alder-11-plain',
  customerReference: 'delivery van, blue',
  receivedOn: '2026-11-24',
  note: '',
};
const looked = { crackTest: 'none-found', crackMethod: 'dye', crackNote: '', items: [] };
const seen = { stackRevision: 1, studRevision: 1, criteriaRevision: 1 };
const [MH, AK, BL] = [{ who: 'MH' }, { who: 'AK' }, { who: 'BL' }];

const step = (
  method: JobExample['method'],
  name: string,
  path: string,
  body: unknown = null,
  query: JobExample['query'] = {},
): JobExample => ({ method, name, path, query, body });

const joint = {
  torqueNm: 36,
  nutFactor: 0.2,
  scatter: 0.25,
  friction: 0.15,
  engineTorqueNm: 210,
  serviceFactor: 2,
  studCount: 4,
  studCircleDiameterMm: 286,
};

const asked = {
  stackId: 'two-piece',
  pullForwardMm: 4.2,
  joint,
  torqueFrom: 'maker',
};
const slip = { ...BL, customerReference: 'caller, blue van', ...asked };

/** One job from receipt to signature, in order: each is sent where the one before has left the job. */
export const jobExamples: readonly JobExample[] = [
  step('GET', 'listFamily', '/catalogue/family'),
  step('GET', 'listStud', '/catalogue/stud'),
  step('GET', 'listStack', '/catalogue/stack'),
  step('GET', 'listNut', '/catalogue/nut'),
  step('GET', 'listWasher', '/catalogue/washer'),
  step('GET', 'listSteel', '/catalogue/steel'),
  step('GET', 'listLining', '/catalogue/lining'),
  step('GET', 'listLathe', '/catalogue/lathe'),
  step('POST', 'receiveJob', '/jobs', { id: id('receive'), ...MH, received }),
  step('POST', 'receiveJob', '/jobs', { ...MH, received: { ...received, receivedOn: '2026-02-30' } }),
  step('PUT', 'changeReceived', '/jobs/1001/received', {
    fromRevision: 1,
    ...MH,
    received: { ...received, customerReference: 'delivery van, green' },
  }),
  step('PUT', 'changeLooked', '/jobs/1001/looked', { fromRevision: 2, ...AK, looked }),
  step('PUT', 'changeLooked', '/jobs/1001/looked', {
    fromRevision: 2,
    ...BL,
    looked: { ...looked, crackMethod: 'by-eye' },
  }),
  step('PUT', 'changeSetup', '/jobs/1001/setup', {
    fromRevision: 3,
    ...AK,
    setup: {
      gauge: 'micrometer 2',
      gaugeFigures: null,
      chucking: 'pads-and-pilot-trued',
      residualRunoutMm: null,
      wallReadThrough: 'bare',
      stations: places,
    },
  }),
  step('POST', 'addReadings', '/jobs/1001/readings', {
    ...AK,
    readings: [...readings('wall', 'before', walls), ...readings('face', 'before', faces)],
  }),
  step('PUT', 'changePlan', '/jobs/1001/plan', {
    fromRevision: 5,
    ...BL,
    plan: { plannedCutMm: 0.2, typed: '0.20' },
  }),
  step('PUT', 'changeDecision', '/jobs/1001/decision', {
    fromRevision: 6,
    ...BL,
    decision: { decision: 'replace', criteriaRevision: 1 },
  }),
  step('PUT', 'changeDecision', '/jobs/1001/decision', {
    fromRevision: 6,
    ...BL,
    decision: { decision: 'face', criteriaRevision: 1 },
  }),
  step('PUT', 'changeCuts', '/jobs/1001/cuts', {
    fromRevision: 7,
    ...AK,
    cuts: { cuts: [{ depthMm: 0.2, typed: '0.20', note: '' }] },
  }),
  step('POST', 'addReadings', '/jobs/1001/readings', {
    ...AK,
    readings: readings(
      'wall',
      'after',
      walls.map(() => 4.7),
    ),
  }),
  step('PUT', 'changeStuds', '/jobs/1001/studs', {
    fromRevision: 9,
    ...BL,
    studs: { stackId: 'two-piece', studId: 'no-such-stud', ...seen },
  }),
  step('PUT', 'changeStuds', '/jobs/1001/studs', {
    fromRevision: 9,
    ...BL,
    studs: {
      stackId: 'two-piece',
      studId: 'long-3-8-24',
      ...seen,
      joint: { ...joint, surface: 'rz-10-to-40' },
      torqueFrom: 'maker',
    },
  }),
  step('PUT', 'changeSignature', '/jobs/1001/signature', {
    fromRevision: 10,
    ...BL,
    signature: { statement: 'Checked against the sheet.' },
  }),
  step('GET', 'findJobs', '/jobs', null, { text: 'alder', stage: 'signed' }),
  step('GET', 'getJob', '/jobs/1001', null, { revision: '3' }),
  step('GET', 'jobHistory', '/jobs/1001/history'),
  step('GET', 'jobStiffness', '/jobs/1001/stiffness'),
  step('POST', 'receiveJob', '/jobs', { id: id('twice'), ...MH, received }),
  step('PUT', 'changeClosed', '/jobs/1002/closed', {
    fromRevision: 1,
    ...MH,
    why: 'the same cover, received twice',
    closed: { closed: true },
  }),
  step('POST', 'saveSlip', '/slips', { id: id('slip'), ...slip }),
  step('POST', 'saveSlip', '/slips', { id: id('slip'), ...slip }),
  step('POST', 'saveSlip', '/slips', { id: id('slip'), ...slip, pullForwardMm: 3.9 }),
  step('POST', 'saveSlip', '/slips', { ...slip, joint: { ...asked.joint, torqueNm: 27 } }),
  step('GET', 'getSlip', '/slips/S-1'),
  step('GET', 'getSlip', '/slips/S-9'),
  step('GET', 'findSlips', '/slips', null, { text: 'blue van', counted: 'no' }),
  step('PUT', 'changeShelf', '/shelf/1001', { ...BL, what: 'put', from: 0, lies: 'rack B, third board' }),
  step('PUT', 'changeShelf', '/shelf/1001', { ...AK, what: 'put', from: 0, lies: 'rack C' }),
  step('PUT', 'changeShelf', '/shelf/1001', { ...BL, what: 'moved', from: 1 }),
  step('GET', 'getShelfCover', '/shelf/1001'),
  step('GET', 'findCovers', '/shelf', null, { family: 'alder-11-plain', leastWallMm: '4.4' }),
  step('GET', 'findStudies', '/studies', null, { gauge: 'micrometer-m2' }),
  step('GET', 'getStudy', '/studies/1'),
  step('POST', 'addStudyReading', '/studies/1/readings', {
    id: id('study'),
    who: 'BL',
    place: 0,
    valueMm: 4.921,
  }),
  step('POST', 'addStudyReading', '/studies/1/readings', { who: 'BL', place: 1, valueMm: 49.18 }),
  step('GET', 'inspectionLists', '/inspection'),
  step('GET', 'jobInspected', '/jobs/1001/inspected'),
  step('PUT', 'changeInspected', '/jobs/1001/inspected', {
    fromRevision: 11,
    ...BL,
    why: 'looked at again',
    items: [
      { listId: 'hard-parts', itemId: 'hub-free-of-grooves', ok: true },
      { listId: 'hard-parts', itemId: 'end-play', value: 0.25 },
    ],
  }),
  step('PUT', 'changeInspected', '/jobs/1001/inspected', {
    fromRevision: 11,
    ...BL,
    items: [{ listId: 'hard-parts', itemId: 'end-play', value: 2.5 }],
  }),
];

/** Plays the examples in a shop of their own, for the document that shows them. */
export async function playExamples(): Promise<JobExampleAnswered[]> {
  const now = () => new Date(EXAMPLE_TIME);
  const shop = openShopInMemory({ now });
  try {
    const needs: JobNeeds = { db: shop.db, now, publicUrl: null, timeZone: 'UTC' };
    await prepareExamples(needs);
    const answered: JobExampleAnswered[] = [];
    for (const example of jobExamples) answered.push({ ...example, ...(await play(example, needs)) });
    return answered;
  } finally {
    await shop.close();
  }
}

async function play(example: JobExample, needs: JobNeeds): Promise<{ status: number; answer: unknown }> {
  const call = callOf(example);
  const named = /^\/(?:jobs|slips|shelf|studies)\/([^/]+)/.exec(example.path)?.[1] ?? '';
  try {
    const { status, body } = await call.answer(needs, {
      named,
      query: example.query,
      body: example.body,
      asker: ITSELF,
    });
    return { status, answer: asItLeaves(body) };
  } catch (thrown) {
    const { status, body } = errorBody(thrown);
    return { status, answer: asItLeaves(body) };
  }
}

function callOf({ name }: JobExample): JobCall {
  const call = jobCalls.find((one) => one.name === name);
  if (!call) throw new Error(`${name} is an example of no call.`);
  return call;
}

function asItLeaves(body: unknown): unknown {
  return JSON.parse(JSON.stringify(body));
}

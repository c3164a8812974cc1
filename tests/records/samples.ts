import type { Family, ShopCriteria } from '../../shared/words/catalogue.ts';
import type { CoverCheck, CoverCheckInput, Verdict } from '../../shared/words/cover.ts';
import type {
  CutsMade,
  Decision,
  DecisionKind,
  Job,
  Looked,
  MeasuringSetup,
  NewReading,
  Received,
  StudsChosen,
} from '../../shared/words/job.ts';
import type { Db } from '../../src/records/database/database.ts';
import type { Ctx } from '../../src/records/database/writing.ts';
import { createJob } from '../../src/records/jobs/createJob.ts';
import { addReadings } from '../../src/records/jobs/readings.ts';
import { reviseJob } from '../../src/records/jobs/reviseJob.ts';
import type { PrintSigned } from '../../src/records/jobs/signedPrints.ts';

/** A clock that goes on by a second every time it is asked. */
function steppingClock(start: string): () => Date {
  let at = Date.parse(start);
  return () => {
    at += 1000;
    return new Date(at);
  };
}

const clock = steppingClock('2026-03-02T08:00:00.000Z');

export function as(who: string, why?: string): Ctx {
  return why === undefined ? { who, now: clock } : { who, why, now: clock };
}

export const alder: Family = {
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
  shopMinimumWallSource: 'the shop, spring',
  ringAllowed: true,
  note: '',
};

export const criteria: ShopCriteria = {
  shopName: 'Heron Lane Rebuilds',
  minimumWallMm: 4.3,
  cleanUpAllowanceMm: 0.05,
  faceRunoutLimitMm: 0.13,
  confidence: 0.95,
  typicalCutMm: 0.25,
  protrusionThreads: 1,
  startThreads: 2,
  lengthUnit: 'mm',
  decimalSign: 'point',
};

export function received(changes: Partial<Received> = {}): Received {
  return {
    familyId: 'alder-11-plain',
    familyRevision: 1,
    family: alder,
    customerReference: 'van, blue',
    receivedOn: '2026-03-02',
    note: '',
    ...changes,
  };
}

export function looked(changes: Partial<Looked> = {}): Looked {
  return {
    crackTest: 'none-found',
    crackMethod: 'dye',
    crackNote: '',
    items: [{ item: 'welds', result: 'sound', final: false, note: '' }],
    ...changes,
  };
}

export const crack = looked({
  crackTest: 'found',
  crackMethod: 'by-eye',
  crackNote: 'at the weld of stud 2',
});
export const noCrackAfterAll = looked({
  crackTest: 'none-found',
  crackMethod: 'dye',
  crackNote: 'a scratch',
});

export const setup: MeasuringSetup = {
  gauge: 'micrometer 2',
  chucking: 'pads-and-pilot-trued',
  residualRunoutMm: 0.01,
  gaugeFigures: null,
  wallReadThrough: 'bare',
  stations: [
    { angleDeg: 0, radiusMm: 110 },
    { angleDeg: 45, radiusMm: 110 },
  ],
};

export function wall(id: string, changes: Partial<NewReading> = {}): NewReading {
  return {
    id,
    pass: 'before',
    kind: 'wall',
    angleDeg: 0,
    radiusMm: 110,
    valueMm: 4.92,
    typed: '4.92',
    gauge: 'micrometer 2',
    doubtful: false,
    replaces: null,
    ...changes,
  };
}

const input: CoverCheckInput = {
  cover: {
    studCount: 4,
    studCircleDiameterMm: 286,
    trackInnerDiameterMm: 214,
    trackOuterDiameterMm: 264,
    nominalWallMm: 5,
    densityKgPerM3: null,
  },
  stations: [{ angleDeg: 0, radiusMm: 110, wallMm: [4.92], faceMm: null, markDepthMm: 0.2 }],
  marks: [],
  gauge: null,
  criteria: null,
  makerMinimumWallMm: null,
  makerMinimumWallSource: null,
  chucking: null,
  plannedCutMm: null,
  crackTest: 'none-found',
  releaseClearanceMm: null,
  inspectionFailures: [],
  doubtfulReadings: [],
};

function check(verdict: Verdict, wallAfterMm: number): CoverCheck {
  return {
    verdict,
    headline: 'Face it: 0.25 mm.',
    because: 'The least wall left is 4.67 mm.',
    face: {
      runoutMm: null,
      indicatorReadingMm: null,
      flatnessLeastSquaresMm: null,
      flatnessMinimumZoneMm: null,
      dishMm: null,
    },
    cut: { dialledMm: 0.25, toolPlaneMm: -0.25, cleansUp: true, cleanUpMm: 0.25 },
    dialledIn: null,
    leastWall: {
      beforeMm: 4.92,
      afterMm: wallAfterMm,
      station: 0,
      standardUncertaintyMm: null,
      expandedUncertaintyMm: null,
      degreesOfFreedom: null,
    },
    minimumWall: { mm: 4.3, source: 'the shop, spring', from: 'shop' },
    conformanceProbability: null,
    cutsLeft: 1,
    stations: [],
    marks: [],
    bounds: null,
    unbalance: null,
    releaseClearanceAfterMm: null,
    findings: [],
    answers: {},
  };
}

export function decision(
  workedOutAtRevision: number,
  changes: { decision?: DecisionKind; reason?: string; verdict?: Verdict; wallAfterMm?: number } = {},
): Decision {
  return {
    decision: changes.decision ?? 'face',
    reason: changes.reason ?? '',
    input,
    criteria,
    check: check(changes.verdict ?? 'face', changes.wallAfterMm ?? 4.67),
    calcVersion: 'cover-1',
    workedOutAtRevision,
  };
}

export function cuts(...depthsMm: number[]): CutsMade {
  return { cuts: depthsMm.map((depthMm) => ({ depthMm, typed: String(depthMm), note: '' })) };
}

export const studs: StudsChosen = {
  stackId: 'one-plate',
  stack: {
    name: 'One plate',
    stack: { style: 'one-piece', layers: [], holeCount: 4, holeCircleDiameterMm: 286, tipRoomMm: null },
    nut: null,
    nutThreadTyped: null,
    pullForwardMm: 4,
    note: '',
  },
  studId: 'short',
  stud: {
    name: 'Short',
    stud: {
      thread: { system: 'metric', designation: 'M10 × 1.5-6g', majorMm: 10, pitchMm: 1.5, class: '6g' },
      threadStartMm: 1,
      threadEndMm: 20,
      projectionMm: 20,
      lengthToleranceMm: 0.2,
      pilotDiameterMm: null,
      tensileMPa: 800,
      proofMPa: 600,
      filletMm: null,
    },
    threadTyped: 'M10x1.5',
    note: '',
  },
  pullForwardMm: 4,
  check: {
    fits: 'yes',
    holds: 'not-checked',
    headline: 'It fits.',
    because: '',
    decidedBy: null,
    byMm: null,
    stackMm: { nominal: 3.2, least: 3.1, most: 3.3 },
    engagement: null,
    protrusionThreads: null,
    reach: { seatedMm: 16.8, pushedBackMm: 12.8, threadsShowing: 8, grade: 'starts-by-hand' },
    strength: {
      tensileAreaMm2: 58,
      studShearAreaMm2: null,
      nutShearAreaMm2: null,
      weakest: null,
      breakingLoadN: null,
    },
    joint: null,
    findings: [],
    answers: {},
  },
  calcVersion: 'stud-1',
  note: '',
};

/** Papers of a signature, for tests that are about something else. */
export const prints: PrintSigned = async (_trx, { number }) => ({
  html: { sheet: `<p>Sheet of ${number}</p>`, tag: `<p>Tag of ${number}</p>` },
  parts: [{ hash: 'a'.repeat(64), kind: 'css', base64: 'cHt9' }],
});

/** A job that has been looked at and measured: revision 4. */
export async function measuredJob(db: Db, look = looked()): Promise<Job> {
  const job = await createJob(db, as('AB'), { received: received() });
  const { id: jobId } = job;
  await reviseJob(db, as('AB'), { jobId, fromRevision: 1, what: 'looked', body: look });
  await reviseJob(db, as('AB'), { jobId, fromRevision: 1, what: 'setup', body: setup });
  return (await addReadings(db, as('AB'), { jobId, readings: [wall(`${jobId}-w1`), wall(`${jobId}-w2`)] }))
    .job;
}

/** A job with everything done but the signature: revision 7. */
export async function finishedJob(db: Db): Promise<Job> {
  const { id: jobId, revision } = await measuredJob(db);
  await reviseJob(db, as('AB'), {
    jobId,
    fromRevision: revision,
    what: 'decision',
    body: decision(revision),
  });
  await reviseJob(db, as('AB'), { jobId, fromRevision: revision + 1, what: 'cuts', body: cuts(0.25) });
  const after = wall(`${jobId}-a1`, { pass: 'after', valueMm: 4.67, typed: '4.67' });
  return (await addReadings(db, as('AB'), { jobId, readings: [after] })).job;
}

/** A signed job: revision 8. */
export async function signedJob(db: Db): Promise<Job> {
  const { id: jobId, revision } = await finishedJob(db);
  const body = { statement: 'Measured, cut and measured again.', signedRevision: revision };
  const edit = { jobId, fromRevision: revision, what: 'signature', body } as const;
  return reviseJob(db, as('AB'), edit, prints);
}

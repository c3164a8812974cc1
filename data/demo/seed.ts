import type { Entry } from '../../shared/words/catalogue.ts';
import type { MeasuredCheck } from '../../shared/words/cover.ts';
import { DEMO_BEGAN, DEMO_CHANGED_LIMITS } from '../../shared/words/demo.ts';
import type { Job, Looked, LookItem, NewReading } from '../../shared/words/job.ts';
import { LOOK_ITEMS, STAGES } from '../../shared/words/job.ts';
import { type LengthUnit, MM_PER_STEP, MM_PER_UNIT, wholeSteps } from '../../shared/words/print.ts';
import { PILOT_LEAD_MM } from '../../shared/words/stud/stud.ts';
import { COVER_CALC_VERSION, checkCover } from '../../src/calc/cover/checkCover.ts';
import { checkStud, STUD_CALC_VERSION } from '../../src/calc/stud/checkStud.ts';
import { jointFrom } from '../../src/calc/stud/joint/jointFigures.ts';
import { replacedInStack } from '../../src/calc/stud/match/replacedInStack.ts';
import { addEntry, getEntry, listEntries } from '../../src/records/catalogue.ts';
import type { Db } from '../../src/records/database/database.ts';
import { createJob } from '../../src/records/jobs/createJob.ts';
import { findJobs } from '../../src/records/jobs/findJobs.ts';
import { addReadings } from '../../src/records/jobs/readings.ts';
import { getJob } from '../../src/records/jobs/readJob.ts';
import { reviseJob } from '../../src/records/jobs/reviseJob.ts';
import type { PrintSigned } from '../../src/records/jobs/signedPrints.ts';
import { currentCriteria, saveCriteria } from '../../src/records/shopCriteria.ts';
import { type DemoCover, demoCovers, demoInput } from './covers.ts';
import { demoCriteria, demoCriteriaNow } from './criteria.ts';
import { demoFamilies } from './families.ts';
import { demoGauges } from './gauges.ts';
import { inches } from './inches.ts';
import { type DemoJob, demoJobs } from './jobs.ts';
import { demoLathes } from './lathes.ts';
import { demoLinings } from './linings.ts';
import { demoNuts, demoWashers } from './nuts.ts';
import { demoStacks } from './stacks.ts';
import { demoSteels } from './steels.ts';
import { demoStuds } from './studs.ts';

const [RECEIVER, MACHINIST, BUILDER] = ['AA', 'BB', 'CC'];
const HOUR_MS = 3_600_000;

/**
 * Fills an empty shop with the invented one; a shop that holds anything is left alone. It works in inches, or in the
 * unit it is opened with; its signed jobs are printed as any.
 */
export async function seedDemo(
  db: Db,
  print: PrintSigned,
  { lengthUnit = demoCriteria.lengthUnit }: { lengthUnit?: LengthUnit } = {},
): Promise<void> {
  if (!(await isEmpty(db))) return;
  const ctx = { who: BUILDER!, now: () => new Date(DEMO_BEGAN) };
  await saveCriteria(db, ctx, {
    fromRevision: 0,
    body: { ...demoCriteria, lengthUnit },
    why: 'invented, to try the program with',
  });
  await saveCriteria(
    db,
    { who: BUILDER!, now: () => new Date(DEMO_CHANGED_LIMITS) },
    {
      fromRevision: 1,
      body: { ...demoCriteriaNow, lengthUnit },
      why: 'invented: covers faced thin came back with the same heat marks',
    },
  );
  for (const { id, steel } of demoSteels) await addEntry(db, ctx, { kind: 'steel', id, body: steel });
  for (const { id, lining } of demoLinings) await addEntry(db, ctx, { kind: 'lining', id, body: lining });
  for (const { id, lathe } of demoLathes) await addEntry(db, ctx, { kind: 'lathe', id, body: lathe });
  for (const { id, family } of demoFamilies) await addEntry(db, ctx, { kind: 'family', id, body: family });
  for (const { id, entry } of demoStuds) await addEntry(db, ctx, { kind: 'stud', id, body: entry });
  for (const { id, entry } of demoStacks) await addEntry(db, ctx, { kind: 'stack', id, body: entry });
  for (const { id, entry } of demoNuts) await addEntry(db, ctx, { kind: 'nut', id, body: entry });
  for (const { id, entry } of demoWashers) await addEntry(db, ctx, { kind: 'washer', id, body: entry });
  for (const { id, gauge } of demoGauges) await addEntry(db, ctx, { kind: 'gauge', id, body: gauge });
  for (const [index, job] of demoJobs.entries())
    await playJob({ db, unit: lengthUnit, print }, job, String(1001 + index));
}

async function isEmpty(db: Db): Promise<boolean> {
  const { jobs } = await findJobs(db, { limit: 1 });
  const criteria = await currentCriteria(db);
  const entries = [
    await listEntries(db, 'family', { retired: true }),
    await listEntries(db, 'stud', { retired: true }),
    await listEntries(db, 'stack', { retired: true }),
  ];
  return jobs.length === 0 && criteria.revision === 0 && entries.every((list) => list.length === 0);
}

type SectionEdit = Parameters<typeof reviseJob>[2];
type Edit = SectionEdit extends infer E ? Omit<E, 'jobId' | 'fromRevision'> : never;

interface DemoShop {
  readonly db: Db;
  /** What the shop works in. */
  readonly unit: LengthUnit;
  readonly print: PrintSigned;
}

/** One job while it is played. */
interface Play extends DemoShop {
  readonly played: DemoJob;
  readonly cover: DemoCover;
  readonly number: string;
  readonly family: Entry<'family'>;
  /** As it stands. */
  job(): Job;
  revise(who: string, edit: Edit): Promise<void>;
  read(readings: readonly NewReading[]): Promise<void>;
}

/** Does what people of the shop would have done, step by step, up to the stage the job has come to. */
async function playJob(shop: DemoShop, played: DemoJob, number: string): Promise<void> {
  const play = await receive(shop, played, number);
  const reaches = (stage: DemoJob['upTo']) => STAGES.indexOf(played.upTo) >= STAGES.indexOf(stage);
  if (!reaches('to-measure')) return;
  await play.revise(MACHINIST!, { what: 'looked', body: lookedOf(play.cover) });
  if (play.cover.stations.length === 0) return;
  await measure(play);
  if (!reaches('to-cut')) return;
  const { decision, check } = await decide(play);
  if (decision !== 'replace') {
    if (!reaches('to-verify')) return;
    await cut(play, check);
    if (!reaches('to-sign')) return;
    await play.read(afterCut(check.stations, number, play.cover));
    if (played.studs) await chooseStuds(play, played.studs);
  }
  if (played.upTo === 'signed') await sign(play);
}

/** The job as it is received; from then on each act is half an hour after the one before. */
async function receive({ db, unit, print }: DemoShop, played: DemoJob, number: string): Promise<Play> {
  const cover = demoCovers.find(({ id }) => id === played.coverId)!;
  const family = await getEntry(db, 'family', cover.familyId);
  if (family === null) throw new Error(`The demo cover type ${cover.familyId} is missing.`);
  let clock = new Date(`${played.receivedOn}T08:00:00Z`).getTime();
  const by = (who: string) => {
    clock += HOUR_MS / 2;
    const at = new Date(clock);
    return { who, why: '', now: () => at };
  };
  let job = await createJob(db, by(RECEIVER!), {
    number,
    demo: true,
    received: {
      familyId: family.id,
      familyRevision: family.revision,
      family: family.body,
      customerReference: played.customerReference,
      receivedOn: played.receivedOn,
      note: cover.about,
    },
  });
  return {
    db,
    unit,
    print,
    played,
    cover,
    number,
    family,
    job: () => job,
    revise: async (who, edit) => {
      const whole = { jobId: job.id, fromRevision: job.revision, ...edit } as SectionEdit;
      job = await reviseJob(db, by(who), whole, print);
    },
    read: async (readings) => {
      await addReadings(db, by(MACHINIST!), { jobId: job.id, readings });
      job = (await getJob(db, job.id))!;
    },
  };
}

async function measure({ cover, number, revise, read }: Play): Promise<void> {
  await revise(MACHINIST!, {
    what: 'setup',
    body: {
      gauge: cover.gauge?.name ?? '',
      gaugeFigures: cover.gauge?.gauge ?? null,
      chucking: cover.chucking,
      residualRunoutMm: null,
      wallReadThrough: 'bare',
      stations: [],
    },
  });
  await read(readingsOf(cover, number));
  if (cover.plannedCut === null) return;
  await revise(BUILDER!, {
    what: 'plan',
    body: { plannedCutMm: cover.plannedCut.mm, typed: cover.plannedCut.typed },
  });
}

async function decide({ played, cover, unit, job, revise }: Play) {
  const input = demoInput(cover);
  const check = checkCover(input, unit);
  const decision = played.decision ?? (check.verdict === 'replace' ? 'replace' : 'face');
  await revise(BUILDER!, {
    what: 'decision',
    body: {
      decision,
      reason: played.reason ?? '',
      input,
      criteria: { ...demoCriteria, lengthUnit: unit },
      check,
      calcVersion: COVER_CALC_VERSION,
      workedOutAtRevision: job().revision,
    },
  });
  return { decision, check };
}

async function cut({ revise }: Play, check: MeasuredCheck): Promise<void> {
  const depth = toTenths(wholeSteps(check.cut.dialledMm, 'in', 'up') * MM_PER_STEP.in);
  await revise(MACHINIST!, {
    what: 'cuts',
    body: { cuts: [{ depthMm: depth.mm, typed: depth.typed, note: 'one pass, as planned' }] },
  });
}

async function sign({ job, revise }: Play): Promise<void> {
  await revise(BUILDER!, {
    what: 'signature',
    body: { statement: 'Checked against the sheet.', signedRevision: job().revision },
  });
}

async function chooseStuds(play: Play, studs: NonNullable<DemoJob['studs']>): Promise<void> {
  const { db, unit, family, revise } = play;
  const stack = await getEntry(db, 'stack', studs.stackId);
  const tries = [...(studs.before ? [studs.before] : []), { studId: studs.studId, note: studs.note }];
  for (const { studId, note } of tries) {
    const stud = await getEntry(db, 'stud', studId);
    if (stack === null || stud === null) throw new Error(`The demo stud ${studId} or its stack is missing.`);
    const input = {
      stud: stud.body.stud,
      stack: stack.body.stack,
      nut: stack.body.nut,
      pullForwardMm: stack.body.pullForwardMm,
      criteria: {
        protrusionThreads: demoCriteria.protrusionThreads,
        startThreads: demoCriteria.startThreads,
        pilotLeadMm: demoCriteria.pilotLeadMm ?? PILOT_LEAD_MM,
        leastPullForwardMm: demoCriteria.leastPullForwardMm ?? null,
        mostPullForwardMm: demoCriteria.mostPullForwardMm ?? null,
      },
      joint: studs.joint ?? null,
      coverStudCount: family.body.studCount,
      coverStudCircleDiameterMm: family.body.studCircleDiameterMm,
    };
    await revise(BUILDER!, {
      what: 'studs',
      body: {
        stackId: stack.id,
        stack: stack.body,
        studId: stud.id,
        stud: stud.body,
        pullForwardMm: stack.body.pullForwardMm,
        input,
        check: checkStud(input, unit),
        calcVersion: STUD_CALC_VERSION,
        note,
        jointFrom: studs.joint ? jointFrom(studs.joint, 'maker') : null,
        ...(studs.replaced && {
          replaced: studs.replaced.map((one) => ({
            ...one,
            findings: replacedInStack(input, one, demoCriteria.studSetting ?? null, unit),
          })),
        }),
      },
    });
  }
}

const ITEMS: Readonly<Record<string, LookItem>> = {
  welds: 'welds',
  pads: 'pads',
  'stud threads': 'stud-threads',
  'crank pilot': 'crank-pilot',
  'earlier repairs': 'earlier-repairs',
};

/** As the person who looked typed it. */
export const CRACK_NOTE = 'A line from the weld toward stud 2, about 1/2 in long.';

function lookedOf(cover: DemoCover): Looked {
  const tested = cover.crackTest !== 'not-done';
  return {
    crackTest: cover.crackTest,
    crackMethod: tested ? 'dye' : null,
    crackNote: cover.crackTest === 'found' ? CRACK_NOTE : '',
    items: LOOK_ITEMS.map((item) => {
      const fault = cover.inspectionFailures.find((failure) => ITEMS[failure.item] === item);
      return {
        item,
        result: fault ? 'fault' : 'sound',
        final: fault?.final ?? false,
        note: fault ? cover.about : '',
      };
    }),
  };
}

function readingsOf(cover: DemoCover, number: string): NewReading[] {
  const base = { pass: 'before', gauge: cover.gauge?.name ?? '', replaces: null } as const;
  const doubted = (place: string) => cover.doubtfulReadings.some((one) => one.startsWith(place));
  const atStations = cover.stations.flatMap(({ angleDeg, radiusMm, wall, face, mark }, i): NewReading[] => [
    ...wall.map(
      (one, j): NewReading => ({
        ...base,
        id: `demonstration-${number}-w${i}-${j}`,
        kind: 'wall',
        angleDeg,
        radiusMm,
        valueMm: one.mm,
        typed: one.typed,
        doubtful: j === 0 && doubted(`wall at station ${i + 1} `),
      }),
    ),
    ...[
      { kind: 'face' as const, one: face },
      { kind: 'mark' as const, one: mark },
    ].flatMap(({ kind, one }): NewReading[] =>
      one === null
        ? []
        : [
            {
              ...base,
              id: `demonstration-${number}-${kind}${i}`,
              kind,
              angleDeg,
              radiusMm,
              valueMm: one.mm,
              typed: one.typed,
              doubtful: false,
            },
          ],
    ),
  ]);
  const between = cover.marks.map(
    ({ angleDeg, radiusMm, depth }, i): NewReading => ({
      ...base,
      id: `demonstration-${number}-between${i}`,
      kind: 'mark',
      angleDeg,
      radiusMm,
      valueMm: depth.mm,
      typed: depth.typed,
      doubtful: false,
    }),
  );
  return [...atStations, ...between];
}

/** To 0.0001 in, as typed. */
function toTenths(mm: number) {
  const text = (mm / MM_PER_UNIT.in).toFixed(4);
  return { mm: inches(Number(text)), typed: `${text} in` };
}

/** What the micrometer showed afterwards: what was planned, a ten-thousandth or two off. */
function afterCut(
  stations: readonly { angleDeg: number; radiusMm: number; wallAfterMm: number }[],
  number: string,
  cover: DemoCover,
): NewReading[] {
  return stations.map(({ angleDeg, radiusMm, wallAfterMm }, i) => {
    const { mm: valueMm, typed } = toTenths(wallAfterMm + ((i % 5) - 1) * 0.002);
    return {
      id: `demonstration-${number}-after${i}`,
      pass: 'after',
      kind: 'wall',
      angleDeg,
      radiusMm,
      valueMm,
      typed,
      gauge: cover.gauge?.name ?? '',
      doubtful: false,
      replaces: null,
    };
  });
}

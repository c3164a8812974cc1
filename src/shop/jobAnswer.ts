import { coverCheckSchema } from '../../shared/schemas/coverCheck.ts';
import { faultsOf } from '../../shared/schemas/faultsOf.ts';
import type { ShopCriteria } from '../../shared/words/catalogue.ts';
import type { CoverCheck, CoverCheckInput, GaugeAtHand, Station } from '../../shared/words/cover.ts';
import { dayIn, type UnitAndZone } from '../../shared/words/day.ts';
import type { Finding } from '../../shared/words/finding.ts';
import type { Job, Pass, Reading, ReadingKind, Stage, StepName } from '../../shared/words/job.ts';
import { countingPasses, passesBeforeRing } from '../../shared/words/passes.ts';
import { samePlace } from '../../shared/words/places.ts';
import type { LengthUnit } from '../../shared/words/print.ts';
import { type Fault, Refusal } from '../../shared/words/refusal.ts';
import type { ComparedWall, PassView } from '../../views/pages/job/cut.tsx';
import { checkCover } from '../calc/cover/checkCover.ts';
import { placeName } from '../calc/cover/placeNames.ts';
import { stationsRead } from '../calc/job/jobPlaces.ts';
import { faceAsCut, type NextPass, nextPass, type PassMade } from '../calc/judge/nextPass.ts';
import { type CutVerification, verifyCut } from '../calc/judge/verifyCut.ts';

const ITEM_WORD = {
  welds: 'welds',
  pads: 'pads',
  'stud-threads': 'stud threads',
  'crank-pilot': 'crank pilot',
  'earlier-repairs': 'earlier repairs',
} as const;

export interface JobAnswer {
  readonly input: CoverCheckInput | null;
  readonly check: CoverCheck | null;
  readonly faults: readonly Fault[];
}

/** What the job's standing readings say, under the criteria given. */
export function checkJob(
  job: Job,
  criteria: ShopCriteria,
  { lengthUnit, timeZone }: UnitAndZone,
  atHand: readonly GaugeAtHand[] = [],
): JobAnswer {
  const raw = rawInput(job, criteria, timeZone, atHand);
  if (raw === null) return { input: null, check: null, faults: [] };
  const parsed = coverCheckSchema.safeParse(raw);
  if (!parsed.success) return { input: null, check: null, faults: faultsOf(parsed.error) };
  try {
    return { input: parsed.data, check: checkCover(parsed.data, lengthUnit), faults: [] };
  } catch (error) {
    if (error instanceof Refusal) return { input: null, check: null, faults: error.faults };
    throw error;
  }
}

function rawInput(job: Job, criteria: ShopCriteria, timeZone: string, atHand: readonly GaugeAtHand[]) {
  const family = job.sections.received?.body.family;
  if (!family) return null;
  const places = placesRead(job, 'before');
  const stations = places.filter(({ wallMm }) => wallMm.length > 0);
  if (stations.length === 0) return null;
  const looked = job.sections.looked?.body;
  const lastBefore = job.readings.findLast((one) => one.pass === 'before');
  const shopMinimum = shopMinimumOf(job, criteria);
  return {
    cover: {
      studCount: family.studCount,
      studCircleDiameterMm: family.studCircleDiameterMm,
      trackInnerDiameterMm: family.trackInnerDiameterMm,
      trackOuterDiameterMm: family.trackOuterDiameterMm,
      nominalWallMm: family.nominalWallMm,
    },
    stations,
    marks: places.flatMap(({ angleDeg, radiusMm, wallMm, markDepthMm }) =>
      wallMm.length === 0 && markDepthMm !== null ? [{ angleDeg, radiusMm, depthMm: markDepthMm }] : [],
    ),
    gauge: job.sections.setup?.body.gaugeFigures ?? null,
    criteria: {
      minimumWallMm: shopMinimum,
      minimumWallSource:
        shopMinimum === null
          ? null
          : family.shopMinimumWallMm !== null
            ? (family.shopMinimumWallSource ?? 'the shop')
            : `the criteria of ${criteria.shopName}`,
      faceRunoutLimitMm: criteria.faceRunoutLimitMm,
      cleanUpAllowanceMm: criteria.cleanUpAllowanceMm,
      confidence: criteria.confidence,
      typicalCutMm: criteria.typicalCutMm,
    },
    makerMinimumWallMm: family.makerMinimumWallMm,
    makerMinimumWallSource: family.makerMinimumWallSource,
    chucking: job.sections.setup?.body.chucking ?? null,
    plannedCutMm: job.sections.plan?.body.plannedCutMm ?? null,
    knockOn: job.sections.setup?.body.knockOn ?? null,
    familyLimits: family.limits ?? null,
    releaseClearanceMm: job.sections.setup?.body.releaseClearanceMm ?? null,
    crackTest: looked?.crackTest ?? 'not-done',
    inspectionFailures: (looked?.items ?? [])
      .filter((one) => one.result === 'fault')
      .map((one) => ({ item: ITEM_WORD[one.item], final: one.final })),
    gaugesUsed: (job.sections.setup?.body.gauges ?? []).map(({ gauge }) => ({
      name: gauge.name,
      dueOn: gauge.dueOn,
    })),
    measuredOn: lastBefore ? dayIn(timeZone, lastBefore.at) : null,
    gaugesAtHand: atHand,
    balance: criteria.balance ?? null,
    doubtfulReadings: doubtedIn(job, 'before', family.studCount),
  };
}

/** The family's own, where it has one. */
function shopMinimumOf(job: Job, criteria: ShopCriteria): number | null {
  return job.sections.received?.body.family.shopMinimumWallMm ?? criteria.minimumWallMm;
}

/** Readings that look like a slip and were not confirmed: "wall behind stud 2". */
function doubtedIn(job: Job, pass: Reading['pass'], studCount: number): string[] {
  return job.readings
    .filter((one) => one.pass === pass && one.doubtful)
    .map((one) => `${one.kind} ${placeName(one.angleDeg, studCount)}`);
}

/** What was read in one pass, place by place. */
function placesRead(job: Job, pass: Pass): readonly Station[] {
  return stationsRead(job, pass).flatMap(({ angleDeg, radiusMm, readings }) => {
    const values = (kind: ReadingKind) =>
      readings.flatMap((one) => (one.kind === kind && one.valueMm !== null ? [one.valueMm] : []));
    const [heights, depths] = [values('face'), values('mark')];
    if (readings.length === 0) return [];
    return [
      {
        angleDeg,
        radiusMm,
        wallMm: values('wall'),
        // Repeats of a height are averaged like those of a wall, whichever tablet's came last.
        faceMm: heights.length === 0 ? null : mean(heights),
        // Of a mark read more than once the deepest counts: the layer has to go.
        markDepthMm: depths.length === 0 ? null : Math.max(...depths),
      },
    ];
  });
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const cutInAll = (job: Job) => countingPasses(job).reduce((sum, cut) => sum + cut.depthMm, 0);

/** Each station: before the cut, what the decision and the cut made would leave, and what was measured. */
export function comparedWalls(job: Job, unit: LengthUnit): readonly ComparedWall[] {
  const decision = job.sections.decision?.body;
  if (!decision) return [];
  const cut = checkCover({ ...decision.input, plannedCutMm: cutInAll(job) }, unit);
  return placesRead(job, 'after').flatMap(({ wallMm, ...place }) => {
    if (wallMm.length === 0) return [];
    const index = decision.input.stations.findIndex((one) => samePlace(one, place));
    const before = decision.check.stations[index];
    return [
      {
        ...place,
        place: placeName(place.angleDeg, decision.input.cover.studCount),
        beforeMm: before?.wallMm ?? null,
        decidedMm: before?.wallAfterMm ?? null,
        cutMm: cut.stations[index]?.wallAfterMm ?? null,
        measuredMm: mean(wallMm),
      },
    ];
  });
}

/** After the cut: what was decided and cut against what is measured. Empty until something was measured. */
export function verifyJob(job: Job, criteria: ShopCriteria, unit: LengthUnit): readonly Finding[] {
  const decision = job.sections.decision?.body;
  const compared = comparedWalls(job, unit);
  if (!decision || compared.length === 0) return [];
  return verifyCut(
    {
      cover: decision.input.cover,
      stations: compared.map(({ angleDeg, radiusMm, measuredMm, faceMm, cutMm }) => ({
        angleDeg,
        radiusMm,
        wallMm: measuredMm,
        faceMm,
        cutWallMm: cutMm,
      })),
      marksLeft: placesRead(job, 'after').flatMap(({ angleDeg, radiusMm, markDepthMm }) =>
        markDepthMm === null ? [] : [{ angleDeg, radiusMm, depthMm: markDepthMm }],
      ),
      doubtful: doubtedIn(job, 'after', decision.input.cover.studCount),
      sureness: surenessNow(job, unit),
      measuredBefore: decision.input.stations,
      minimumWall: decision.check.minimumWall,
      minimumTodayMm: shopMinimumOf(job, criteria),
      faceRunoutLimitMm: decision.criteria.faceRunoutLimitMm,
      cleanUpAllowanceMm: decision.criteria.cleanUpAllowanceMm,
      dialledMm: cutInAll(job),
      plannedMm: decision.check.cut.dialledMm,
      look: countingPasses(job).at(-1)?.look ?? null,
    },
    unit,
  );
}

/** Each pass with what was seen and read after it, until the next. */
export function passesOf(job: Job): readonly PassView[] {
  const at = job.passesAt ?? [];
  const after = [...(job.earlierAfter ?? []), ...job.readings.filter((one) => one.pass === 'after')];
  const before = passesBeforeRing(job);
  let totalMm = 0;
  return (job.sections.cuts?.body.cuts ?? []).map((cut, i) => {
    totalMm = i === before ? cut.depthMm : totalMm + cut.depthMm;
    const [from, to] = [at[i] ?? 0, at[i + 1] ?? Number.POSITIVE_INFINITY];
    const read = after.filter((one) => one.revision > from && one.revision <= to);
    const values = (kind: Reading['kind']) =>
      read.filter((one) => one.kind === kind).map((one) => one.valueMm ?? 0);
    const [walls, marks] = [values('wall'), values('mark')];
    return {
      depthMm: cut.depthMm,
      totalMm,
      note: cut.note,
      look: cut.look ?? null,
      beforeRing: i < before,
      thinnestMm: walls.length === 0 ? null : Math.min(...walls),
      darkMm: marks.length === 0 ? null : Math.max(...marks),
    };
  });
}

/** What the last pass showed, and whether another still leaves the minimum; null before any, or with nothing decided. */
export function nextPassOf(job: Job, unit: LengthUnit): NextPass | null {
  const made = passMade(job);
  if (made === null || job.outcome === null || job.outcome === 'replace') return null;
  try {
    return nextPass(made, unit);
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}

/** The step that is to be done; while it is still dark, the cut comes before all else. */
export function nextStepOf(job: Job, pass: NextPass | null): StepName | null {
  const dark = pass !== null && pass.state !== 'gone' && pass.state !== 'look';
  return dark && (job.stage === 'to-verify' || job.stage === 'to-sign') ? 'cut' : NEXT_AT[job.stage];
}

const NEXT_AT: Readonly<Record<Stage, StepName | null>> = {
  'to-look': 'look',
  'to-measure': 'measure',
  'to-decide': 'decide',
  'to-cut': 'cut',
  'to-verify': 'verify',
  'to-sign': 'sign',
  signed: null,
};

function passMade(job: Job): PassMade | null {
  const decision = job.sections.decision?.body;
  const last = countingPasses(job).at(-1);
  if (!decision || !last) return null;
  return {
    decided: decision.input,
    plannedMm: decision.check.cut.dialledMm,
    cutMm: cutInAll(job),
    look: last.look ?? null,
    after: placesRead(job, 'after'),
  };
}

/** How sure the walls measured after the cut make it that the minimum is left everywhere. */
function surenessNow(job: Job, unit: LengthUnit): CutVerification['sureness'] {
  const made = passMade(job);
  const wanted = job.sections.decision?.body.criteria.confidence ?? null;
  if (made === null || wanted === null) return null;
  try {
    const share = faceAsCut(made, unit).conformanceProbability;
    return share === null ? null : { share, wanted };
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}

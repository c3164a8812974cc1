import { coverCheckSchema } from '../../shared/schemas/coverCheck.ts';
import { faultsOf } from '../../shared/schemas/faultsOf.ts';
import type { ShopCriteria } from '../../shared/words/catalogue.ts';
import type { CoverCheck, CoverCheckInput, GaugeAtHand } from '../../shared/words/cover.ts';
import type { Finding } from '../../shared/words/finding.ts';
import type { Job, Reading } from '../../shared/words/job.ts';
import type { LengthUnit } from '../../shared/words/print.ts';
import { type Fault, Refusal } from '../../shared/words/refusal.ts';
import { checkCover } from '../calc/cover/checkCover.ts';
import { placeName } from '../calc/cover/placeNames.ts';
import { verifyCut } from '../calc/judge/verifyCut.ts';
import { placesOf } from './readingsForm.ts';

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
  unit: LengthUnit,
  atHand: readonly GaugeAtHand[] = [],
): JobAnswer {
  const raw = rawInput(job, criteria, atHand);
  if (raw === null) return { input: null, check: null, faults: [] };
  const parsed = coverCheckSchema.safeParse(raw);
  if (!parsed.success) return { input: null, check: null, faults: faultsOf(parsed.error) };
  try {
    return { input: parsed.data, check: checkCover(parsed.data, unit), faults: [] };
  } catch (error) {
    if (error instanceof Refusal) return { input: null, check: null, faults: error.faults };
    throw error;
  }
}

function rawInput(job: Job, criteria: ShopCriteria, atHand: readonly GaugeAtHand[]) {
  const family = job.sections.received?.body.family;
  if (!family) return null;
  const at = (place: { angleDeg: number; radiusMm: number }, kind: Reading['kind']) =>
    job.readings.filter(
      (one) =>
        one.pass === 'before' &&
        one.kind === kind &&
        one.angleDeg === place.angleDeg &&
        one.radiusMm === place.radiusMm,
    );
  const places = placesOf(job, 'before').map((place) => ({
    ...place,
    walls: at(place, 'wall'),
    face: at(place, 'face').at(-1)?.valueMm ?? null,
    mark: at(place, 'mark').at(-1)?.valueMm ?? null,
  }));
  const stations = places.filter((place) => place.walls.length > 0);
  if (stations.length === 0) return null;
  const looked = job.sections.looked?.body;
  const shopMinimum = family.shopMinimumWallMm ?? criteria.minimumWallMm;
  return {
    cover: {
      studCount: family.studCount,
      studCircleDiameterMm: family.studCircleDiameterMm,
      trackInnerDiameterMm: family.trackInnerDiameterMm,
      trackOuterDiameterMm: family.trackOuterDiameterMm,
      nominalWallMm: family.nominalWallMm,
    },
    stations: stations.map((place) => ({
      angleDeg: place.angleDeg,
      radiusMm: place.radiusMm,
      wallMm: place.walls.map((one) => one.valueMm),
      faceMm: place.face,
      markDepthMm: place.mark,
    })),
    marks: places
      .filter((place) => place.walls.length === 0 && place.mark !== null)
      .map((place) => ({ angleDeg: place.angleDeg, radiusMm: place.radiusMm, depthMm: place.mark })),
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
    releaseClearanceMm: job.sections.setup?.body.releaseClearanceMm ?? null,
    crackTest: looked?.crackTest ?? 'not-done',
    inspectionFailures: (looked?.items ?? [])
      .filter((one) => one.result === 'fault')
      .map((one) => ({ item: ITEM_WORD[one.item], final: one.final })),
    gaugesUsed: (job.sections.setup?.body.gauges ?? []).map(({ gauge }) => ({
      name: gauge.name,
      dueOn: gauge.dueOn,
    })),
    measuredOn: job.readings.findLast((one) => one.pass === 'before')?.at.slice(0, 10) ?? null,
    gaugesAtHand: atHand,
    balance: criteria.balance ?? null,
    doubtfulReadings: job.readings
      .filter((one) => one.pass === 'before' && one.doubtful)
      .map((one) => `${one.kind} ${placeName(one.angleDeg, family.studCount)}`),
  };
}

/** After the cut: what was planned against what is measured. Empty until something was measured. */
export function verifyJob(job: Job, unit: LengthUnit): readonly Finding[] {
  const decision = job.sections.decision?.body;
  const after = job.readings.filter((one) => one.pass === 'after');
  if (!decision || after.every((one) => one.kind !== 'wall')) return [];
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const stations = placesOf(job, 'after').flatMap((place) => {
    const here = after.filter((one) => one.angleDeg === place.angleDeg && one.radiusMm === place.radiusMm);
    const walls = here.filter((one) => one.kind === 'wall').map((one) => one.valueMm ?? 0);
    if (walls.length === 0) return [];
    const index = decision.input.stations.findIndex(
      (one) => one.angleDeg === place.angleDeg && one.radiusMm === place.radiusMm,
    );
    return [
      {
        ...place,
        wallMm: mean(walls),
        faceMm: here.filter((one) => one.kind === 'face').at(-1)?.valueMm ?? null,
        markLeftMm: here.filter((one) => one.kind === 'mark').at(-1)?.valueMm ?? null,
        plannedWallMm: decision.check.stations[index]?.wallAfterMm ?? null,
        wallBeforeMm: decision.check.stations[index]?.wallMm ?? null,
      },
    ];
  });
  return verifyCut(
    {
      cover: decision.input.cover,
      stations,
      measuredBefore: decision.input.stations,
      minimumWall: decision.check.minimumWall,
      faceRunoutLimitMm: decision.criteria.faceRunoutLimitMm,
      cleanUpAllowanceMm: decision.criteria.cleanUpAllowanceMm,
      dialledMm: (job.sections.cuts?.body.cuts ?? []).reduce((sum, cut) => sum + cut.depthMm, 0),
      plannedMm: decision.check.cut.dialledMm,
    },
    unit,
  );
}

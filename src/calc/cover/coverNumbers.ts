import type { Answer } from '../../../shared/words/answer.ts';
import type { CoverCheckInput } from '../../../shared/words/cover.ts';
import { betweenStations } from './betweenStations.ts';
import { type Coverage, coverage } from './coverage.ts';
import { cutsLeft } from './cutsLeft.ts';
import { dish } from './dish.ts';
import { type FaceCut, faceCut } from './faceCut.ts';
import { faceLies, type MeasuredMark } from './faceLies.ts';
import { flatnessLeastSquares } from './flatnessLeastSquares.ts';
import { type GoverningMinimum, governingMinimum } from './governingMinimum.ts';
import { indicatorReading } from './indicatorReading.ts';
import { type MeasuredStation, measuredStations } from './measuredStations.ts';
import { releaseClearance } from './releaseClearance.ts';
import { tiltOverTrack } from './tiltOverTrack.ts';
import { unbalance } from './unbalance.ts';

/** Taken where the shop has said nothing (common practice, no source); the answer says so. */
export const USUAL = { cleanUpAllowanceMm: 0.05, confidence: 0.95, densityKgPerM3: 7870 } as const;

const TOLERANCE_MM = 1e-9;

/** Everything worked out of a cover, before anything is judged. */
export interface CoverNumbers {
  readonly input: CoverCheckInput;
  readonly stations: readonly MeasuredStation[];
  readonly marks: readonly MeasuredMark[];
  readonly allowanceMm: number;
  readonly confidence: number;
  readonly minimum: GoverningMinimum | null;
  readonly coverage: Coverage;
  /** One with indicator readings; without, pad side flat and face flat. */
  readonly ways: readonly FaceCut[];
  readonly cleanUp: { readonly dialledMm: number; readonly leastWallMm: number };
  readonly cut: {
    readonly dialledMm: number;
    readonly toolPlaneMm: number;
    readonly dirtyStations: readonly number[];
    readonly dirtyMarks: readonly number[];
    /** Per station, the larger of the ways' cuts, and so the lower of their walls. */
    readonly cutsMm: readonly number[];
    readonly wallsAfterMm: readonly number[];
    readonly markCutsMm: readonly number[];
  };
  /** Without indicator readings: what the larger clean-up cut leaves if the face was flat all along. */
  readonly worstOfBothMm: number | null;
  readonly leastBeforeMm: number;
  readonly least: { readonly station: number; readonly wallMm: number };
  readonly runout: Answer | null;
  readonly indicator: Answer | null;
  readonly flatness: Answer | null;
  readonly dish: Answer | null;
  readonly cutsLeft: Answer | null;
  readonly unbalance: ReturnType<typeof unbalance>;
  readonly releaseAfter: Answer | null;
}

/** Of several equally small values the first counts. */
function firstLeast(values: readonly number[]): number {
  let found = 0;
  for (const [index, value] of values.entries()) if (value < values[found]! - TOLERANCE_MM) found = index;
  return found;
}

function acrossWays(ways: readonly FaceCut[], pick: (way: FaceCut) => readonly number[]): readonly number[] {
  return pick(ways[0]!).map((_, index) => Math.max(...ways.map((way) => pick(way)[index]!)));
}

export function coverNumbers(input: CoverCheckInput): CoverNumbers {
  const { cover, criteria } = input;
  const stations = measuredStations(input.stations);
  const marks = input.marks.map((mark) => ({ ...mark, ...betweenStations(mark, stations) }));
  const allowanceMm = criteria?.cleanUpAllowanceMm ?? USUAL.cleanUpAllowanceMm;
  const minimum = governingMinimum({
    makerMm: input.makerMinimumWallMm,
    makerSource: input.makerMinimumWallSource,
    shopMm: criteria?.minimumWallMm ?? null,
    shopSource: criteria?.minimumWallSource ?? null,
  });

  const ways = faceLies(stations, marks).map((lie) =>
    faceCut(lie, { allowanceMm, plannedCutMm: input.plannedCutMm }),
  );
  const deepest = ways.reduce((a, b) => (b.cleanUp.dialled.value! > a.cleanUp.dialled.value! ? b : a));
  const cleanUp = {
    dialledMm: deepest.cleanUp.dialled.value!,
    leastWallMm: Math.min(...ways.map((way) => way.cleanUp.leastWallMm)),
  };
  const cutsMm = acrossWays(ways, (way) => way.cutsMm);
  const wallsAfterMm = stations.map((_, i) => Math.min(...ways.map((way) => way.wallsAfterMm[i]!)));
  const dirty = (pick: (way: FaceCut) => readonly number[]) =>
    [...new Set(ways.flatMap(pick))].sort((a, b) => a - b);
  const station = firstLeast(wallsAfterMm);
  const least = { station, wallMm: wallsAfterMm[station]! };
  const leastBeforeMm = Math.min(...stations.map(({ wallMm }) => wallMm));
  const dialledMm = input.plannedCutMm ?? cleanUp.dialledMm;

  const measured = ways.length === 1;
  const face = stations.map((s) => ({ xMm: s.xMm, yMm: s.yMm, zMm: s.faceMm ?? 0 }));
  const typicalCutMm = criteria?.typicalCutMm ?? null;
  return {
    input,
    stations,
    marks,
    allowanceMm,
    confidence: criteria?.confidence ?? USUAL.confidence,
    minimum,
    coverage: coverage(stations, cover.studCount),
    ways,
    cleanUp,
    cut: {
      dialledMm,
      toolPlaneMm: deepest.toolPlaneMm,
      dirtyStations: dirty((way) => way.dirtyStations),
      dirtyMarks: dirty((way) => way.dirtyMarks),
      cutsMm,
      wallsAfterMm,
      markCutsMm: acrossWays(ways, (way) => way.markCutsMm),
    },
    worstOfBothMm: measured ? null : leastBeforeMm - cleanUp.dialledMm,
    leastBeforeMm,
    least,
    runout: measured ? tiltOverTrack(face, cover.trackOuterDiameterMm) : null,
    indicator: measured ? indicatorReading(stations.map((s) => s.faceMm!)) : null,
    flatness: measured ? flatnessLeastSquares(face) : null,
    dish: measured ? dish(stations) : null,
    cutsLeft:
      minimum && typicalCutMm !== null
        ? cutsLeft({ leastWallMm: least.wallMm, minimumWallMm: minimum.mm, typicalCutMm })
        : null,
    unbalance: unbalance({
      walls: stations.map((s, i) => ({ xMm: s.xMm, yMm: s.yMm, zMm: unevenWall(ways, wallsAfterMm)[i]! })),
      trackInnerDiameterMm: cover.trackInnerDiameterMm,
      trackOuterDiameterMm: cover.trackOuterDiameterMm,
      densityKgPerM3: cover.densityKgPerM3 ?? USUAL.densityKgPerM3,
    }),
    releaseAfter:
      input.releaseClearanceMm === null
        ? null
        : releaseClearance({ beforeMm: input.releaseClearanceMm, dialledMm }),
  };
}

/** Without indicator readings a pad side that was flat leaves an even wall; a flat face leaves the worse unbalance. */
function unevenWall(ways: readonly FaceCut[], wallsAfterMm: readonly number[]): readonly number[] {
  return ways.find((way) => way.name === 'face-flat')?.wallsAfterMm ?? wallsAfterMm;
}

import type { Answer } from '../../../shared/words/answer.ts';
import type { CoverCheckInput } from '../../../shared/words/cover.ts';
import type { HeatMarkRow } from '../../../shared/words/heatMarks.ts';
import { printNumber } from '../../../shared/words/print.ts';
import { conformanceProbability } from '../measure/conformanceProbability.ts';
import { sureMargin } from '../measure/sureMargin.ts';
import { betweenStations } from './betweenStations.ts';
import { type Coverage, coverage } from './coverage.ts';
import { cutsLeft } from './cutting/cutsLeft.ts';
import { type DialledIn, dialledIn } from './face/dialledIn.ts';
import { dish } from './face/dish.ts';
import { type FaceCut, faceCut } from './face/faceCut.ts';
import { faceLies, type MeasuredMark } from './face/faceLies.ts';
import { flatnessLeastSquares } from './face/flatnessLeastSquares.ts';
import { flatnessMinimumZone } from './face/flatnessMinimumZone.ts';
import { indicatorReading } from './face/indicatorReading.ts';
import { tiltOverTrack } from './face/tiltOverTrack.ts';
import { type GoverningMinimum, governingMinimum } from './governingMinimum.ts';
import { heatMarks } from './marks/heatMarks.ts';
import { type MeasuredStation, measuredStations, placeOnFace } from './measuredStations.ts';
import { releaseClearance } from './releaseClearance.ts';
import { unbalance } from './unbalance.ts';
import { type WallUncertainty, wallUncertainty } from './wallUncertainty.ts';

/** Used where the shop has set no figure (common practice, no source); the answer says so. */
export const USUAL = { cleanUpAllowanceMm: 0.05, confidence: 0.95, densityKgPerM3: 7870 } as const;

const TOLERANCE_MM = 1e-9;

/** Everything worked out of a cover, before anything is judged. */
export interface CoverNumbers {
  readonly input: CoverCheckInput;
  readonly stations: readonly MeasuredStation[];
  readonly marks: readonly MeasuredMark[];
  readonly allowanceMm: number;
  readonly confidence: number;
  /** Which figures nobody set, so that the usual one is used. */
  readonly usual: { readonly allowance: boolean; readonly confidence: boolean; readonly density: boolean };
  readonly minimum: GoverningMinimum | null;
  readonly coverage: Coverage;
  /** How the face may lie: one way where it was indicated, else two (pad side flat, face flat). */
  readonly ways: readonly FaceCut[];
  /** The clean-up cut: the larger of all ways, with the lowest wall of all ways. */
  readonly cleanUp: {
    readonly plane: Answer;
    readonly dialled: Answer;
    readonly dialledMm: number;
    readonly leastWallMm: number;
  };
  readonly cut: {
    readonly dialledMm: number;
    readonly toolPlaneMm: number;
    readonly dirtyStations: readonly number[];
    readonly dirtyMarks: readonly number[];
    /** Per station, the larger cut of all ways. */
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
  readonly minimumZone: Answer | null;
  readonly dish: Answer | null;
  /** Worked out for the clean-up cut. null without heights, without a limit on runout, or in side-wall jaws. */
  readonly dialledIn: DialledIn | null;
  /** null when nothing is known of the gauge. */
  readonly uncertainty: WallUncertainty | null;
  /** null when nothing is known of the gauge, or no minimum is set. */
  readonly sure: {
    /** Probability that every station is at or above the minimum. */
    readonly all: Answer;
    readonly eachStation: readonly number[];
    /** The same probability for the clean-up cut, and for the worst of both ways where the face was not indicated. */
    readonly cleanUp: number;
    readonly worstOfBoth: number | null;
    /** The thinnest wall that would reach the confidence. */
    readonly fromMm: number;
  } | null;
  readonly cutsLeft: Answer | null;
  readonly unbalance: ReturnType<typeof unbalance>;
  readonly releaseAfter: Answer | null;
  /** Advice; it judges nothing. */
  readonly heatMarks: readonly HeatMarkRow[];
}

/** Index of the smallest value; of equal ones the first. */
function firstLeast(values: readonly number[]): number {
  let found = 0;
  for (const [index, value] of values.entries()) if (value < values[found]! - TOLERANCE_MM) found = index;
  return found;
}

function acrossWays(ways: readonly FaceCut[], pick: (way: FaceCut) => readonly number[]): readonly number[] {
  return pick(ways[0]!).map((_, index) => Math.max(...ways.map((way) => pick(way)[index]!)));
}

/** Everything worked out of a cover’s readings; nothing is judged yet. */
export function coverNumbers(input: CoverCheckInput): CoverNumbers {
  const { cover, criteria } = input;
  const stations = measuredStations(input.stations);
  const marks = input.marks.map((mark) => ({ ...mark, ...betweenStations(mark, stations) }));
  const allowanceMm = criteria?.cleanUpAllowanceMm ?? USUAL.cleanUpAllowanceMm;
  const confidence = criteria?.confidence ?? USUAL.confidence;
  const minimum = governingMinimum({
    makerMm: input.makerMinimumWallMm,
    makerSource: input.makerMinimumWallSource,
    shopMm: criteria?.minimumWallMm ?? null,
    shopSource: criteria?.minimumWallSource ?? null,
    shopWorking: criteria?.minimumWallWorking ?? null,
  });
  const ways = faceLies(stations, marks).map((lie) =>
    faceCut(lie, { allowanceMm, plannedCutMm: input.plannedCutMm }),
  );
  const measured = ways.length === 1;
  const facing = facingOf(input, stations, ways);
  const { cut, least, cleanUp } = facing;
  const uncertainty = wallUncertainty({
    gauge: input.gauge,
    walls: input.stations.map(({ wallMm }) => wallMm),
    indicated: measured,
    station: least.station,
    confidence,
  });
  const typicalCutMm = criteria?.typicalCutMm ?? null;
  return {
    input,
    stations,
    marks,
    allowanceMm,
    confidence,
    usual: usualIn(input),
    minimum,
    coverage: coverage(stations, cover.studCount),
    ways,
    ...facing,
    ...(measured ? faceAsRead(stations, cover.trackOuterDiameterMm) : NOT_INDICATED),
    dialledIn: measured ? tiltToGain(input, stations, marks, allowanceMm) : null,
    uncertainty,
    sure:
      uncertainty && minimum
        ? sureness(uncertainty, minimum.mm, confidence, {
            after: cut.wallsAfterMm,
            cleanUp: stations.map((_, i) => Math.min(...ways.map((way) => way.cleanUp.wallsMm[i]!))),
            worstOfBoth: measured ? null : stations.map((s) => s.wallMm - cleanUp.dialledMm),
          })
        : null,
    cutsLeft:
      minimum && typicalCutMm !== null
        ? cutsLeft({ leastWallMm: least.wallMm, minimumWallMm: minimum.mm, typicalCutMm })
        : null,
    unbalance: unbalanceOf(input, stations, ways),
    releaseAfter:
      input.releaseClearanceMm === null
        ? null
        : releaseClearance({ beforeMm: input.releaseClearanceMm, dialledMm: cut.dialledMm }),
    heatMarks: heatMarks({ stations, marks, studCount: cover.studCount }),
  };
}

function usualIn({ cover, criteria }: CoverCheckInput): CoverNumbers['usual'] {
  return {
    allowance: (criteria?.cleanUpAllowanceMm ?? null) === null,
    confidence: (criteria?.confidence ?? null) === null,
    density: cover.densityKgPerM3 === null,
  };
}

/** The cut in all the ways the face may lie: the way that asks for the deepest is dialled, the lowest wall judged. */
function facingOf(
  { plannedCutMm }: CoverCheckInput,
  stations: readonly MeasuredStation[],
  ways: readonly FaceCut[],
): Pick<CoverNumbers, 'cleanUp' | 'cut' | 'worstOfBothMm' | 'leastBeforeMm' | 'least'> {
  const deepest = ways.reduce((a, b) => (b.cleanUp.dialled.value! > a.cleanUp.dialled.value! ? b : a));
  const cleanUp = {
    plane: deepest.cleanUp.plane,
    dialled: deepest.cleanUp.dialled,
    dialledMm: deepest.cleanUp.dialled.value!,
    leastWallMm: Math.min(...ways.map((way) => way.cleanUp.leastWallMm)),
  };
  const wallsAfterMm = stations.map((_, i) => Math.min(...ways.map((way) => way.wallsAfterMm[i]!)));
  const dirty = (pick: (way: FaceCut) => readonly number[]) =>
    [...new Set(ways.flatMap(pick))].sort((a, b) => a - b);
  const station = firstLeast(wallsAfterMm);
  const leastBeforeMm = Math.min(...stations.map(({ wallMm }) => wallMm));
  return {
    cleanUp,
    cut: {
      dialledMm: plannedCutMm ?? cleanUp.dialledMm,
      toolPlaneMm: deepest.toolPlaneMm,
      dirtyStations: dirty((way) => way.dirtyStations),
      dirtyMarks: dirty((way) => way.dirtyMarks),
      cutsMm: acrossWays(ways, (way) => way.cutsMm),
      wallsAfterMm,
      markCutsMm: acrossWays(ways, (way) => way.markCutsMm),
    },
    worstOfBothMm: ways.length === 1 ? null : leastBeforeMm - cleanUp.dialledMm,
    leastBeforeMm,
    least: { station, wallMm: wallsAfterMm[station]! },
  };
}

type AsRead = Pick<CoverNumbers, 'runout' | 'indicator' | 'flatness' | 'minimumZone' | 'dish'>;

const NOT_INDICATED: AsRead = {
  runout: null,
  indicator: null,
  flatness: null,
  minimumZone: null,
  dish: null,
};

/** The face as the indicator read it. */
function faceAsRead(stations: readonly MeasuredStation[], trackOuterDiameterMm: number): AsRead {
  const face = stations.map(({ xMm, yMm, faceMm }) => ({ xMm, yMm, zMm: faceMm! }));
  return {
    runout: tiltOverTrack(face, trackOuterDiameterMm),
    indicator: indicatorReading(face.map(({ zMm }) => zMm)),
    flatness: flatnessLeastSquares(face),
    minimumZone: flatnessMinimumZone(face),
    dish: dish(stations),
  };
}

/** Without indicator readings the face is taken as flat, which leaves the worse unbalance; a flat pad side leaves none. */
function unbalanceOf(
  { cover }: CoverCheckInput,
  stations: readonly MeasuredStation[],
  ways: readonly FaceCut[],
): ReturnType<typeof unbalance> {
  const { wallsAfterMm } = ways.find((way) => way.name === 'face-flat') ?? ways[0]!;
  return unbalance({
    walls: stations.map(({ xMm, yMm }, i) => ({ xMm, yMm, zMm: wallsAfterMm[i]! })),
    trackInnerDiameterMm: cover.trackInnerDiameterMm,
    trackOuterDiameterMm: cover.trackOuterDiameterMm,
    densityKgPerM3: cover.densityKgPerM3 ?? USUAL.densityKgPerM3,
  });
}

function tiltToGain(
  { cover, criteria, chucking }: CoverCheckInput,
  stations: readonly MeasuredStation[],
  marks: readonly MeasuredMark[],
  allowanceMm: number,
): DialledIn | null {
  const runoutLimitMm = criteria?.faceRunoutLimitMm ?? null;
  if (runoutLimitMm === null || chucking === 'side-wall-jaws') return null;
  return dialledIn({
    places: [
      ...stations.map((s) => ({ ...s, heightMm: s.faceMm! })),
      ...marks.map((m) => ({
        ...placeOnFace(m.angleDeg, m.radiusMm),
        heightMm: m.faceMm!,
        depthMm: m.depthMm,
        wallMm: null,
      })),
    ],
    allowanceMm,
    runoutLimitMm,
    trackOuterDiameterMm: cover.trackOuterDiameterMm,
    studCount: cover.studCount,
    studCircleDiameterMm: cover.studCircleDiameterMm,
  });
}

function sureness(
  { commonMm, ownMm, missing }: WallUncertainty,
  minimumMm: number,
  confidence: number,
  walls: {
    readonly after: readonly number[];
    readonly cleanUp: readonly number[];
    readonly worstOfBoth: readonly number[] | null;
  },
): CoverNumbers['sure'] {
  const margins = (wallsMm: readonly number[]) => wallsMm.map((wallMm) => wallMm - minimumMm);
  const all = (wallsMm: readonly number[]) =>
    conformanceProbability({ marginsMm: margins(wallsMm), commonMm, ownMm });
  const value = all(walls.after);
  return {
    all: {
      symbol: 'P',
      value,
      unit: '',
      how: [
        {
          formula: 'P = ∫ φ(x) Π Φ((mᵢ − u_c·x)/uᵢ) dx',
          numbers: `${walls.after.length} stations, least margin ${printNumber(Math.min(...margins(walls.after)), 4)} mm, u_c ${printNumber(commonMm, 5)} mm, uᵢ up to ${printNumber(Math.max(...ownMm), 5)} mm: P = ${printNumber(value, 6)}`,
          source: 'JCGM 106:2012, with the common error integrated out; decision rule of ISO 14253-1',
        },
      ],
      warnings:
        missing.length > 0
          ? [{ code: 'not-given', text: `Not entered, so counted as zero: ${missing.join(', ')}.` }]
          : [],
    },
    eachStation: margins(walls.after).map((margin, i) =>
      conformanceProbability({ marginsMm: [margin], commonMm, ownMm: [ownMm[i]!] }),
    ),
    cleanUp: all(walls.cleanUp),
    worstOfBoth: walls.worstOfBoth && all(walls.worstOfBoth),
    fromMm: minimumMm + sureMargin({ marginsMm: margins(walls.after), commonMm, ownMm, confidence }),
  };
}

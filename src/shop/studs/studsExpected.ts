import { readThread } from '../../../shared/quantity/readThread.ts';
import type { CatalogueStack } from '../../../shared/words/catalogue.ts';
import type { CALIPER } from '../../../shared/words/fields/caliper.ts';
import type { FLEXPLATE_SEEN, GAP } from '../../../shared/words/fields/gap.ts';
import type { JOINT } from '../../../shared/words/fields/joint.ts';
import type {
  CATALOGUE_STACK,
  CATALOGUE_STUD,
  CATALOGUE_WASHER,
  LAYER,
  NUT,
  STACK,
  STUD,
} from '../../../shared/words/fields/stud.ts';
import type { REPLACED_STUD, RETORQUE } from '../../../shared/words/fields/studWork.ts';
import type { ThreadSpec } from '../../../shared/words/stud/thread.ts';
import { tensileStressArea } from '../../calc/stud/thread/tensileStressArea.ts';
import { about, type Expected, type FigureExpected, ofAnySize, WHOLE } from '../doubts/expectedFigures.ts';
import { expectedGapMm } from './gap.ts';
import { layerKind } from './layers.ts';

/**
 * What figures of studs, nuts, flexplates and joints are at all, so that a slipped decimal or the wrong unit is asked
 * about: common practice, no source. Nothing is judged by them.
 */

/** What is known beside the figure. */
export interface About {
  /** Of stud or nut, as typed. */
  readonly thread?: string;
  /** The vehicle maker’s, where the catalog has it. */
  readonly makerTorqueNm?: number | null | undefined;
}

/** What a stack says of the torque of its nuts. */
export function aboutStack(stack: CatalogueStack | null): About {
  return { thread: stack?.nut?.thread?.designation ?? '', makerTorqueNm: stack?.makerTorqueNm };
}

const STOCK = 'one shop has 0.01 in and another 0.1 in of it';
/** Small lengths of any size, of which only the wrong unit can be told. */
const anySize = (least: number, most: number) => ofAnySize(least, most, STOCK);

const TOLERANCE = anySize(0.1, 0.3);
export const SHIM = anySize(0.1, 5);
const CHAMFER = anySize(0.4, 1.2);
const FILLET = anySize(1.5, 4.5);
const OFF = anySize(0.05, 1.2);

/** Of the trade’s plates and castings. */
const LAYER_MM = { plate: about(3.5), casting: about(9), shim: SHIM } as const;

const USUAL_THREAD_MM = 9.5;

function threadOf(callout: string): ThreadSpec | null {
  const read = readThread(callout, 'internal');
  return read.ok ? read.thread : null;
}

function majorMm(thread: ThreadSpec | null): number {
  if (thread === null) return USUAL_THREAD_MM;
  return thread.system === 'unified' ? thread.majorInch * 25.4 : thread.majorMm;
}

/** Nut and bolt steels, from grade 2 to class 12.9. */
const TENSILE: FigureExpected = { least: 300, most: 1600 };
const PROOF: FigureExpected = { least: 220, most: 1300 };
const NUT_STRESS: FigureExpected = { least: 300, most: 1500 };

export function studExpected({ thread = '' }: About): Expected<typeof STUD> {
  const d = majorMm(threadOf(thread));
  return {
    threadStartMm: { least: 0.5, most: 9, anyDecimal: true, notTold: 'it begins at the pad, or 6 mm off it' },
    threadEndMm: about(22),
    projectionMm: about(26),
    lengthToleranceMm: TOLERANCE,
    pilotDiameterMm: about(0.85 * d),
    tensileMPa: TENSILE,
    proofMPa: PROOF,
    filletMm: FILLET,
    pitchDiameterMeasuredMm: about(0.93 * d),
  };
}

export function nutExpected({ thread = '' }: About): Expected<typeof NUT> {
  const d = majorMm(threadOf(thread));
  return {
    heightMm: about(0.85 * d),
    toleranceMm: TOLERANCE,
    countersinkMm: CHAMFER,
    washerMm: anySize(1.1, 3.3),
    bearingOuterDiameterMm: about(1.45 * d),
    proofMPa: NUT_STRESS,
    tensileMPa: NUT_STRESS,
  };
}

/** Of a layer of this name and kind. */
export function layerExpected(
  layer: Parameters<typeof layerKind>[0],
  { thread = '' }: About,
): Expected<typeof LAYER> {
  return {
    thicknessMm: LAYER_MM[layerKind(layer)],
    toleranceMm: TOLERANCE,
    holeDiameterMm: about(usualHoleMm(thread)),
    chamferMm: CHAMFER,
  };
}

/** What the hole for a thread measures. */
export function usualHoleMm(thread: string): number {
  return 1.08 * majorMm(threadOf(thread));
}

export const BOLT_CIRCLE = about(285);

export function stackExpected(): Expected<typeof STACK> {
  return {
    holeCount: WHOLE,
    holeCircleDiameterMm: BOLT_CIRCLE,
    tipRoomMm: about(33),
    leastPullForwardMm: gapTypedExpected(null),
    mostPullForwardMm: gapTypedExpected(null),
  };
}

/** A gap is about the stack’s own; without one, about the middle of the usual. */
export function gapTypedExpected(ofStackMm: number | null): FigureExpected {
  return about(expectedGapMm(ofStackMm));
}

export function entryStackExpected({ thread = '' }: About): Expected<typeof CATALOGUE_STACK> {
  return { pullForwardMm: gapTypedExpected(null), makerTorqueNm: tighteningExpected({ thread }) };
}

/** Of what only is counted. */
export function stockExpected(): Expected<Pick<typeof CATALOGUE_STUD, 'stock'>> {
  return { stock: { any: 'a shop may have one or a thousand' } };
}

export function washerExpected(): Expected<typeof CATALOGUE_WASHER> {
  return {
    innerDiameterMm: about(10.3),
    outerDiameterMm: about(21),
    thicknessMm: SHIM,
    toleranceMm: TOLERANCE,
    ...stockExpected(),
  };
}

export function gapExpected(): Expected<typeof GAP> {
  return {
    padDepthMm: about(28),
    flexplateStandsOutMm: {
      least: 3,
      most: 80,
      signed: true,
      anyDecimal: true,
      notTold: 'it may be flush, or 80 mm off',
    },
    separatorPlateMm: { least: 0.6, most: 6 },
    hubEngagementMm: about(17),
    hubEngagementLeastMm: about(17),
    leastGapMm: gapTypedExpected(null),
    mostGapMm: gapTypedExpected(null),
    shimsMm: SHIM,
    shimMm: SHIM,
  };
}

export function seenExpected({ thread = '' }: About): Expected<typeof FLEXPLATE_SEEN> {
  return {
    totalMm: about(10),
    withinMm: anySize(0.02, 0.6),
    nutHeightMm: about(0.85 * majorMm(threadOf(thread))),
    holeCount: WHOLE,
  };
}

/** About the middle of what studs of converters have, M8 to 1/2-13. */
const USUAL_PITCH_MM = 1.3;

export function caliperExpected(pitches: number): Expected<typeof CALIPER> {
  return {
    majorMm: about(USUAL_THREAD_MM),
    overMm: about(pitches * USUAL_PITCH_MM),
    pitches: WHOLE,
    majorWithinMm: anySize(0.025, 0.075),
    overWithinMm: anySize(0.1, 0.3),
  };
}

/**
 * Preload over stress area to which studs of converters are tightened, as if K were 0.2 [MPa]: three quarters of the
 * proof stress, grade 5 lubricated (586 MPa, K 0.15) to grade 8 dry (827 MPa, K 0.2) and grade 5 black (K 0.3).
 *   Source: proof stress SAE J429; 75 % for a joint used again Shigley, 9th ed., eq. 8-31; K its table 8-15, 0.15 from
 *   memory; that studs are of grade 5 to 8 common practice, no source
 */
const TIGHTENED_MPA = { least: 330, most: 660 } as const;
/** N·m and lb·ft are 1.356 apart: so near to the maker’s figure another unit is no question. */
const NEAR_MAKERS = 1.16;
const FAR = 2.4;

/** What a nut of this thread is tightened with: near the vehicle maker’s torque, where the catalog has it. */
export function tighteningExpected({ thread = '', makerTorqueNm = null }: About): FigureExpected {
  if (makerTorqueNm !== null)
    return { least: makerTorqueNm / NEAR_MAKERS, most: makerTorqueNm * NEAR_MAKERS };
  const of = threadOf(thread);
  if (of === null)
    return { least: 12, most: 150, notTold: 'without its thread, 27 and 37 N·m are both usual' };
  const nm = (mpa: number) => (0.2 * majorMm(of) * tensileStressArea(of).value * mpa) / 1000;
  const likely = { least: nm(TIGHTENED_MPA.least), most: nm(TIGHTENED_MPA.most) };
  const notTold = 'grade 5 lubricated and grade 8 dry are further apart than N·m and lb·ft';
  return { least: likely.least / FAR, most: likely.most * FAR, likely, notTold };
}

const ENGINES = 'engines make from 80 to 2000 N·m; asked where the other torque is typed in another unit';
export const ENGINE_TORQUE: FigureExpected = { least: 80, most: 2000, notTold: ENGINES };

export function jointExpected(of: About): Expected<typeof JOINT> {
  return {
    torqueNm: tighteningExpected(of),
    engineTorqueNm: ENGINE_TORQUE,
    serviceFactor: { least: 1, most: 5 },
    nutFactor: { least: 0.08, most: 0.4 },
    scatter: { least: 0.05, most: 0.5 },
    friction: { least: 0.05, most: 0.5 },
    studCount: WHOLE,
    studCircleDiameterMm: BOLT_CIRCLE,
    prevailingNm: { least: 1, most: 12, notTold: 'locking nuts turn with anything from 1 to 12 N·m' },
    youngMPa: { least: 60_000, most: 230_000, notTold: 'it has no box' },
  };
}

export const PROVED: FigureExpected = { least: 12, most: 200, notTold: 'its thread is not known there' };

export function replacedExpected(): Expected<typeof REPLACED_STUD> {
  return {
    stud: WHOLE,
    leanMm: OFF,
    leanAtMm: about(20),
    offMm: OFF,
    filletMm: FILLET,
    provedNm: PROVED,
  };
}

export function retorqueExpected(of: About): Expected<typeof RETORQUE> {
  return { torqueNm: tighteningExpected(of) };
}

import type { Answer } from '../../../shared/words/answer.ts';
import {
  type CoverCheck,
  type CoverCheckInput,
  isLost,
  type MeasuredCheck,
} from '../../../shared/words/cover.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import { coverReason } from '../judge/coverReason.ts';
import { cutFindings, isClean } from '../judge/cutFindings.ts';
import { dialledInFinding } from '../judge/dialledInFinding.ts';
import { faceFindings } from '../judge/faceFindings.ts';
import { gaugeFindings } from '../judge/gaugeFindings.ts';
import { knockOnFindings } from '../judge/knockOnFindings.ts';
import { lostUnmeasured } from '../judge/lostUnmeasured.ts';
import { masterFindings } from '../judge/masterFindings.ts';
import { holdingFindings, readingFindings } from '../judge/readingFindings.ts';
import { soundnessFindings } from '../judge/soundnessFindings.ts';
import { sureFinding } from '../judge/sureFinding.ts';
import { verdict } from '../judge/verdict.ts';
import { wallFindings } from '../judge/wallFindings.ts';
import { weigh } from '../judge/weigh.ts';
import { type CoverNumbers, coverNumbers } from './coverNumbers.ts';
import { refuseImpossible } from './refuseImpossible.ts';

/** Kept with every decision; raised whenever a calculation gives another number. */
export const COVER_CALC_VERSION = 'cover-1';

/**
 * A cover’s readings against its minimum wall: what to cut, what that leaves, and what to do.
 * `further`: findings on limits the shop has set elsewhere, such as `stiffness` and `stiffness-with-ring`.
 * Throws: a Refusal that names each field it cannot work with (refuseImpossible.ts).
 */
export function checkCover(
  input: CoverCheckInput,
  unit: LengthUnit = 'mm',
  further: readonly Finding[] = [],
): MeasuredCheck {
  return judgeCover(workOutCover(input), unit, further);
}

/**
 * The same of a cover of which perhaps no wall was measured: one that is lost needs none to be judged.
 * Throws: a Refusal that names each field it cannot work with (refuseImpossible.ts).
 */
export function checkWhatIsThere(
  input: CoverCheckInput,
  unit: LengthUnit = 'mm',
  further: readonly Finding[] = [],
): CoverCheck {
  return input.stations.length === 0 && isLost(input)
    ? lostUnmeasured(input)
    : checkCover(input, unit, further);
}

/**
 * The numbers of a cover, before anything is judged.
 * Throws: a Refusal that names each field it cannot work with (refuseImpossible.ts).
 */
export function workOutCover(input: CoverCheckInput): CoverNumbers {
  refuseImpossible(input);
  return coverNumbers(input);
}

/** Numbers worked out before, set against their limits; what is found elsewhere is judged along with them. */
export function judgeCover(
  numbers: CoverNumbers,
  unit: LengthUnit,
  further: readonly Finding[] = [],
): MeasuredCheck {
  const findings = findingsOf(numbers, unit, further);
  const judged = verdict(findings);
  const { cut, cleanUp, minimum, ways, unbalance, sure } = numbers;
  const toJudge = further.find(({ status }) => status === 'caution');
  return {
    verdict: judged.verdict,
    ...coverReason(judged, numbers, unit, toJudge),
    face: {
      runoutMm: numbers.runout?.value ?? null,
      indicatorReadingMm: numbers.indicator?.value ?? null,
      flatnessLeastSquaresMm: numbers.flatness?.value ?? null,
      flatnessMinimumZoneMm: numbers.minimumZone?.value ?? null,
      dishMm: numbers.dish?.value ?? null,
    },
    cut: {
      dialledMm: cut.dialledMm,
      toolPlaneMm: cut.toolPlaneMm,
      cleansUp: isClean(numbers),
      cleanUpMm: cleanUp.dialledMm,
    },
    dialledIn: dialledInOf(numbers),
    leastWall: leastWallOf(numbers),
    minimumWall: minimum && { mm: minimum.mm, source: minimum.source, from: minimum.from },
    conformanceProbability: sure?.all.value ?? null,
    cutsLeft: numbers.cutsLeft?.value ?? null,
    stations: stationsOf(numbers),
    marks: numbers.marks.map((mark, i) => ({ ...mark, cutMm: cut.markCutsMm[i]! })),
    bounds: ways.length === 1 ? null : { padSideFlat: boundOf(ways[0]!), faceFlat: boundOf(ways[1]!) },
    unbalance:
      unbalance.value === null ? null : { gmm: unbalance.value, heavySideDeg: unbalance.heavySideDeg },
    releaseClearanceAfterMm: numbers.releaseAfter?.value ?? null,
    heatMarks: numbers.heatMarks,
    findings,
    answers: answersOf(numbers, findings),
  };
}

/** Every finding, in the order they are shown. */
function findingsOf(
  numbers: CoverNumbers,
  unit: LengthUnit,
  further: readonly Finding[],
): readonly Finding[] {
  const { input } = numbers;
  const found = [
    ...soundnessFindings(input),
    ...wallFindings(numbers, unit),
    ...readingFindings(numbers),
    ...cutFindings(numbers, unit),
    sureFinding(numbers, unit),
    dialledInFinding(numbers, unit),
    ...further,
    ...holdingFindings(numbers),
    ...gaugeFindings(input),
    ...masterFindings(input, unit),
    ...knockOnFindings(input, numbers.allowanceMm, unit),
    ...faceFindings(numbers, unit),
  ];
  return weigh(found, input.criteria?.whatStops);
}

function leastWallOf({ least, leastBeforeMm, uncertainty, sure }: CoverNumbers): MeasuredCheck['leastWall'] {
  return {
    beforeMm: leastBeforeMm,
    afterMm: least.wallMm,
    station: least.station,
    standardUncertaintyMm: uncertainty?.standard.value ?? null,
    expandedUncertaintyMm: uncertainty?.expanded.value ?? null,
    degreesOfFreedom: uncertainty?.degreesOfFreedom ?? null,
    sureFromMm: sure?.fromMm ?? null,
  };
}

function stationsOf({ input, stations, cut, minimum, sure }: CoverNumbers): CoverCheck['stations'] {
  return stations.map((station, i) => ({
    angleDeg: input.stations[i]!.angleDeg,
    radiusMm: station.radiusMm,
    wallMm: station.wallMm,
    faceMm: station.faceMm,
    markDepthMm: station.depthMm,
    cutMm: cut.cutsMm[i]!,
    wallAfterMm: cut.wallsAfterMm[i]!,
    marginMm: minimum && cut.wallsAfterMm[i]! - minimum.mm,
    conformanceProbability: sure?.eachStation[i] ?? null,
  }));
}

function boundOf({ cleanUp }: CoverNumbers['ways'][number]) {
  return { dialledMm: cleanUp.dialled.value!, leastWallMm: cleanUp.leastWallMm };
}

function dialledInOf({ dialledIn }: CoverNumbers): CoverCheck['dialledIn'] {
  if (dialledIn === null) return null;
  const { answer: _, ...shown } = dialledIn;
  return shown;
}

/** The working behind the numbers, by the name each has in the answer. */
function answersOf(numbers: CoverNumbers, findings: readonly Finding[]): Record<string, Answer> {
  const { heavySideDeg: _, ...unbalanceGmm } = numbers.unbalance;
  const named: Record<string, Answer | null> = {
    runoutMm: numbers.runout,
    indicatorReadingMm: numbers.indicator,
    flatnessLeastSquaresMm: numbers.flatness,
    flatnessMinimumZoneMm: numbers.minimumZone,
    dishMm: numbers.dish,
    cleanUpPlaneMm: numbers.cleanUp.plane,
    cleanUpMm: numbers.cleanUp.dialled,
    leastWallAfterMm: findings.find(({ id }) => id === 'wall-left')?.answer ?? null,
    minimumWallMm: numbers.minimum?.answer ?? null,
    standardUncertaintyMm: numbers.uncertainty?.standard ?? null,
    expandedUncertaintyMm: numbers.uncertainty?.expanded ?? null,
    conformanceProbability: numbers.sure?.all ?? null,
    wallGainedMm: numbers.dialledIn?.answer ?? null,
    cutsLeft: numbers.cutsLeft,
    unbalanceGmm,
    releaseClearanceAfterMm: numbers.releaseAfter,
  };
  return Object.fromEntries(
    Object.entries(named).flatMap(([name, answer]) => (answer ? [[name, answer]] : [])),
  );
}

import type { CoverCheck, CoverCheckInput } from '../../../shared/words/cover.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import { VERDICT_WORD } from '../../../shared/words/verdicts.ts';
import { governingMinimum } from '../cover/governingMinimum.ts';
import { soundnessFindings } from './soundnessFindings.ts';
import { verdict } from './verdict.ts';

/**
 * A cover with a crack, or a fault beyond repair, of which no wall was measured: it is replaced for that alone, and
 * nothing is claimed of its thickness.
 */
export function lostUnmeasured(input: CoverCheckInput): CoverCheck {
  const findings = [...soundnessFindings(input), NOT_MEASURED];
  const judged = verdict(findings);
  const minimum = governingMinimum({
    makerMm: input.makerMinimumWallMm,
    makerSource: input.makerMinimumWallSource,
    shopMm: input.criteria?.minimumWallMm ?? null,
    shopSource: input.criteria?.minimumWallSource ?? null,
    shopWorking: input.criteria?.minimumWallWorking ?? null,
  });
  return {
    verdict: judged.verdict,
    headline: `${VERDICT_WORD[judged.verdict]}.`,
    because: `${judged.decidedBy?.sentence ?? ''} No wall was measured.`.trim(),
    face: {
      runoutMm: null,
      indicatorReadingMm: null,
      flatnessLeastSquaresMm: null,
      flatnessMinimumZoneMm: null,
      dishMm: null,
    },
    cut: null,
    dialledIn: null,
    leastWall: null,
    minimumWall: minimum && { mm: minimum.mm, source: minimum.source, from: minimum.from },
    conformanceProbability: null,
    cutsLeft: null,
    stations: [],
    marks: [],
    bounds: null,
    unbalance: null,
    releaseClearanceAfterMm: null,
    heatMarks: [],
    findings,
    answers: {},
  };
}

const NOT_MEASURED: Finding = {
  id: 'wall-measured',
  title: 'Wall',
  status: 'not-checked',
  value: null,
  limit: null,
  unit: '',
  sentence: 'No wall was measured, so its thickness is not checked.',
  source: 'the readings of this cover',
  answer: null,
};

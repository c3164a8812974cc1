import { checkCover } from '../../src/calc/cover/checkCover.ts';
import { coverAnswersOtherwise } from '../../src/calc/judge/answersOtherwise.ts';
import { verdict } from '../../src/calc/judge/verdict.ts';
import { verifyCut } from '../../src/calc/judge/verifyCut.ts';
import { coverInput, SHAPE } from './coverSets.ts';
import { type Example, shown, worked } from './worked.ts';

const VERDICTS = {
  face: 'face it',
  'face-if-sound': 'face it if it is sound',
  'face-and-ring': 'face it and weld a ring',
  replace: 'replace it',
  'measure-again': 'measure again',
  'plan-again': 'plan again',
  'advice-only': 'advice only',
};

/** By the file each belongs to. */
export const judgeExamples: Readonly<Record<string, Example>> = {
  answersOtherwise: shown('a kept decision with 4.500 mm least wall, worked out again at 4.470 mm', () => {
    const kept = checkCover(coverInput());
    const now = { ...kept, leastWall: { ...kept.leastWall, afterMm: 4.47 } };
    return coverAnswersOtherwise(kept, now, VERDICTS, 'mm').map(
      (one) => `${one.what}: kept ${one.kept}, now ${one.now}`,
    );
  }),
  verdict: shown(
    'twelve stations on two rings against a minimum of 4.3 mm, a clean-up cut of 0.42 mm; then the same with a crack, and against 4.6 mm',
    () =>
      [
        coverInput(),
        coverInput({ crackTest: 'found' }),
        coverInput({ criteria: { ...coverInput().criteria!, minimumWallMm: 4.6 } }),
      ].map((input) => {
        const check = checkCover(input);
        const decided = verdict(check.findings);
        return `${VERDICTS[decided.verdict]}, decided by ${decided.decidedBy?.title.toLowerCase() ?? 'nothing'}: ${check.headline}`;
      }),
  ),
  verifyCut: worked(
    verifyCut,
    [
      {
        cover: SHAPE,
        stations: [0, 90, 180, 270].map((angleDeg) => ({
          angleDeg,
          radiusMm: 110,
          wallMm: 4.5,
          faceMm: 0,
          markLeftMm: 0,
          plannedWallMm: 4.5,
          wallBeforeMm: 4.92,
        })),
        measuredBefore: [0, 90, 180, 270].map((angleDeg) => ({ angleDeg, radiusMm: 110 })),
        minimumWall: { mm: 4.3, source: 'the shop' },
        faceRunoutLimitMm: 0.1,
        cleanUpAllowanceMm: 0.05,
        dialledMm: 0.42,
        plannedMm: 0.42,
      },
      'mm',
    ],
    'four stations measured again after a cut of 0.42 mm: 4.50 mm everywhere, as planned; minimum 4.3 mm',
  ),
};

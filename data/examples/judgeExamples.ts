import type { BendingCase } from '../../shared/words/bending/bending.ts';
import { STATUS_WORD } from '../../shared/words/finding.ts';
import { checkCover } from '../../src/calc/cover/checkCover.ts';
import { coverAnswersOtherwise } from '../../src/calc/judge/answersOtherwise.ts';
import { expectedCost } from '../../src/calc/judge/expectedCost.ts';
import { gaugeFindings } from '../../src/calc/judge/gaugeFindings.ts';
import { knockOnFindings } from '../../src/calc/judge/knockOnFindings.ts';
import { masterFindings } from '../../src/calc/judge/masterFindings.ts';
import { nextPass } from '../../src/calc/judge/nextPass.ts';
import { stiffnessFindings } from '../../src/calc/judge/stiffnessFindings.ts';
import { verdict } from '../../src/calc/judge/verdict.ts';
import { verifyCut } from '../../src/calc/judge/verifyCut.ts';
import { weigh } from '../../src/calc/judge/weigh.ts';
import { coverInput, NOT_GIVEN, SHAPE } from './coverSets.ts';
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
  gaugeFindings: worked(
    gaugeFindings,
    [
      coverInput({
        gaugesUsed: [{ name: 'bench micrometer', dueOn: '2026-03-01' }],
        measuredOn: '2026-03-02',
      }),
    ],
    'a bench micrometer due for calibration on 2026-03-01, used on 2026-03-02',
  ),
  weigh: shown('calibration overdue, where the shop chose that this stops', () => {
    const found = gaugeFindings(
      coverInput({
        gaugesUsed: [{ name: 'bench micrometer', dueOn: '2026-03-01' }],
        measuredOn: '2026-03-02',
      }),
    );
    return weigh(found, { 'gauge-due': 'stop' }).map(
      ({ status, sentence }) => `${STATUS_WORD[status]}: ${sentence}`,
    );
  }),
  masterFindings: worked(
    masterFindings,
    [
      {
        gaugesUsed: [
          {
            name: 'bench micrometer',
            dueOn: null,
            masterChecks: {
              everyDays: 30,
              lastOn: '2026-03-01',
              lastOffMm: 0.006,
              nextOn: null,
              nextOffMm: null,
              limitMm: 0.005,
              driftsOutOn: null,
            },
          },
        ],
        measuredOn: '2026-03-02',
      },
      'mm',
    ],
    'a bench micrometer that read 0.006 mm over its master on 2026-03-01, 0.005 mm allowed, used on 2026-03-02',
  ),
  knockOnFindings: worked(
    knockOnFindings,
    [
      coverInput({ knockOn: { ...NOT_GIVEN, padHeightsMm: [0, 0.05, 0.11], padsCoplanarWithinMm: 0.1 } }),
      0.05,
      'mm',
    ],
    'three pads at 0, 0.05 and 0.11 mm, to be in one plane within 0.1 mm',
  ),
  nextPass: shown(
    'decided on walls of 4.9 mm dark to 0.35 mm; 0.25 of 0.40 mm cut, and still dark; minimum 4.3 mm',
    () => {
      const stations = coverInput().stations.map((one) => ({
        ...one,
        wallMm: [4.9],
        faceMm: 0,
        markDepthMm: 0.35,
      }));
      const decided = coverInput({ stations });
      const next = nextPass({ decided, plannedMm: 0.4, cutMm: 0.25, look: 'dark', after: [] }, 'mm');
      return [next.headline, next.because];
    },
  ),
  stiffnessFindings: shown(
    'a limit of 1.06 times the new cover’s pressure peak; peaks of 3.66 and 1.23 times the mean when new, 3.80 and 1.32 after the cut, 3.46 and 1.17 with a ring joined to the pads, unbonded',
    () => {
      const one = (id: BendingCase['id'], rigid: number, conforming: number): BendingCase => ({
        id,
        trackWallMm: 3.5,
        ring:
          id === 'ring-unbonded'
            ? {
                innerDiameterMm: 212,
                outerDiameterMm: 270,
                thicknessMm: 5,
                bonded: false,
                joinedToPads: true,
              }
            : null,
        peakOverMean: { rigid, conforming },
        rippleMm: { rigid: 0.01, conforming: 0.01 },
        bossDeflectionMm: { rigid: 0.7, conforming: 0.9 },
        greatestStressMPa: { rigid: 190, conforming: 230 },
        beyondYield: null,
        heat: null,
      });
      return stiffnessFindings({
        limits: { peakOverNew: 1.06, rippleOverNew: null },
        bending: {
          cases: [one('new', 3.66, 1.23), one('after', 3.8, 1.32), one('ring-unbonded', 3.46, 1.17)],
          welded: false,
          base: { wallMm: 4.4, yieldMPa: null },
        },
        why: null,
        ringAllowed: true,
        unit: 'mm',
      }).map(({ title, status, sentence }) => `${title}, ${status}: ${sentence}`);
    },
  ),
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
          cutWallMm: 4.5,
        })),
        heights: [0, 90, 180, 270].map((angleDeg) => ({ angleDeg, radiusMm: 110, faceMm: 0 })),
        truedAgain: true,
        marksLeft: [],
        doubtful: [],
        sureness: { share: 0.98, wanted: 0.95 },
        measuredBefore: [0, 90, 180, 270].map((angleDeg) => ({ angleDeg, radiusMm: 110 })),
        minimumWall: { mm: 4.3, source: 'the shop' },
        minimumTodayMm: 4.3,
        faceRunoutLimitMm: 0.1,
        cleanUpAllowanceMm: 0.05,
        dialledMm: 0.42,
        plannedMm: 0.42,
        look: 'gone',
      },
      'mm',
    ],
    'four stations measured again after a cut of 0.42 mm: 4.50 mm everywhere, as planned; minimum 4.3 mm',
  ),
  expectedCost: worked(
    expectedCost,
    [{ cost: 120, comeback: 900, chance: 0.05 }],
    'facing 120, a comeback 900, 5 % come back',
  ),
};

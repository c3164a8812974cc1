import { calibrationUncertainty } from '../../src/calc/measure/calibrationUncertainty.ts';
import { conformanceProbability } from '../../src/calc/measure/conformanceProbability.ts';
import { coverageFactor } from '../../src/calc/measure/coverageFactor.ts';
import { effectiveDegreesOfFreedom } from '../../src/calc/measure/effectiveDegreesOfFreedom.ts';
import { fisherShare } from '../../src/calc/measure/fisherShare.ts';
import { gaugeStudy } from '../../src/calc/measure/gaugeStudy.ts';
import { heightUncertainty } from '../../src/calc/measure/heightUncertainty.ts';
import { integral } from '../../src/calc/measure/integral.ts';
import { leastSquaresPlane } from '../../src/calc/measure/leastSquaresPlane.ts';
import { linearProgramme } from '../../src/calc/measure/linearProgramme.ts';
import { masterDrift } from '../../src/calc/measure/masterDrift.ts';
import { masterLimit } from '../../src/calc/measure/masterLimit.ts';
import { meanOfRepeats } from '../../src/calc/measure/meanOfRepeats.ts';
import { minimumZone } from '../../src/calc/measure/minimumZone.ts';
import { normalShare } from '../../src/calc/measure/normalShare.ts';
import { pooledRepeatability } from '../../src/calc/measure/pooledRepeatability.ts';
import { sureMargin } from '../../src/calc/measure/sureMargin.ts';
import { wilsonInterval } from '../../src/calc/measure/wilsonInterval.ts';
import { STUDY_READINGS } from './studyReadings.ts';
import { type Example, figure, shown, worked } from './worked.ts';

const TWISTED = [
  { xMm: 100, yMm: 0, zMm: 0.01 },
  { xMm: 0, yMm: 100, zMm: -0.01 },
  { xMm: -100, yMm: 0, zMm: 0.01 },
  { xMm: 0, yMm: -100, zMm: -0.01 },
  { xMm: 60, yMm: 60, zMm: 0.004 },
];
/** From an independent second implementation (not published), and Φ(1.6) from tables. */
export const SURE = [
  { marginsMm: [0.02, 0.03, 0.05], commonMm: 0.01, ownMm: [0.01, 0.01, 0.01] },
  { marginsMm: [0.02], commonMm: 0, ownMm: [0.0125] },
  { marginsMm: [0.02], commonMm: 0.01, ownMm: [0.0075] },
  {
    marginsMm: Array.from({ length: 12 }, () => 0.01465),
    commonMm: 0.01,
    ownMm: Array.from({ length: 12 }, () => 0.0003),
  },
] as const;

/** By the file each belongs to. */
export const measureExamples: Readonly<Record<string, Example>> = {
  calibrationUncertainty: worked(
    calibrationUncertainty,
    [{ expandedMm: 0.004, coverageFactor: 2 }],
    'U 0.004 mm, k 2',
  ),
  conformanceProbability: shown(
    'margins 0.02, 0.03, 0.05 mm, both errors 0.01 mm; one margin of 0.02 mm, shared out two ways; twelve margins of 0.01465 mm, common 0.01 and own 0.0003 mm.',
    () => SURE.map((one) => `P = ${conformanceProbability(one).toFixed(5)}`),
  ),
  coverageFactor: worked(coverageFactor, [0.9545, 16], 'confidence 95.45 %, 16 degrees of freedom'),
  effectiveDegreesOfFreedom: worked(effectiveDegreesOfFreedom, [
    [
      { name: 'repeats', standardUncertaintyMm: 0.003, degreesOfFreedom: 9 },
      { name: 'calibration', standardUncertaintyMm: 0.002, degreesOfFreedom: null },
    ],
  ]),
  fisherShare: worked(fisherShare, [3.71, [3, 10]], 'F 3.71, 3 and 10 degrees of freedom'),
  gaugeStudy: worked(
    gaugeStudy,
    [STUDY_READINGS],
    'ten parts, three people, three rounds (Measurement Systems Analysis, 4th ed., from memory); any one unit, shown as mm',
  ),
  heightUncertainty: worked(
    heightUncertainty,
    [{ calibration: { expandedMm: 0.004, coverageFactor: 2 }, stepMm: 0.01, repeatabilityMm: 0.002 }],
    'U 0.004 mm with k 2, a step of 0.01 mm, a spread of 0.002 mm',
  ),
  integral: shown('x² from 0 to 3, and the normal density from −1.96 to 1.96', () => [
    figure(integral((x) => x * x, [0, 3])),
    figure(integral((x) => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI), [-1.96, 0, 1.96])),
  ]),
  leastSquaresPlane: worked(
    leastSquaresPlane,
    [TWISTED],
    'five points of a twisted face: 0.010, −0.010, 0.010, −0.010 mm at radius 100 mm, 0.004 mm between',
  ),
  linearProgramme: worked(
    linearProgramme,
    [
      {
        goal: { x: 3, y: 2 },
        direction: 'maximize',
        limits: [
          { of: { x: 1, y: 1 }, atMost: 4 },
          { of: { x: 1 }, atMost: 3 },
          { of: { x: 1 }, atLeast: 0 },
          { of: { y: 1 }, atLeast: 0 },
        ],
      },
    ],
    'most of 3x + 2y with x + y ≤ 4, 0 ≤ x ≤ 3, y ≥ 0: by hand x 3, y 1',
  ),
  masterDrift: worked(
    masterDrift,
    [
      [0, 1, 2, 3, 4].map((um, i) => ({ day: 10 * i, offMm: um / 1000 })),
      { limitMm: 0.005, stepMm: 0.001, nextDay: 70 },
    ],
    'read 0, 0.001, 0.002, 0.003, 0.004 mm over on days 0, 10, 20, 30, 40; limit 0.005 mm, resolution 0.001 mm, next check on day 70',
  ),
  masterLimit: worked(
    masterLimit,
    [{ calibration: { expandedMm: 0.004, coverageFactor: 2 }, stepMm: 0.001, repeatabilityMm: 0.0015 }],
    'U 0.004 mm, k 2, resolution 0.001 mm, repeatability 0.0015 mm',
  ),
  meanOfRepeats: worked(meanOfRepeats, [[4.52, 4.53, 4.528]]),
  minimumZone: worked(minimumZone, [TWISTED], 'the five points of the twisted face'),
  normalShare: worked(normalShare, [1.96]),
  pooledRepeatability: worked(pooledRepeatability, [
    [
      [4.52, 4.526],
      [4.61, 4.604, 4.607],
    ],
  ]),
  sureMargin: worked(
    (given: Parameters<typeof sureMargin>[0]) => ({ marginMm: sureMargin(given) }),
    [{ marginsMm: [0.5], commonMm: 0.01, ownMm: [0], confidence: 0.95 }],
  ),
  wilsonInterval: worked(wilsonInterval, [15, 148], '15 counted of 148'),
};

import { checkStud, fitOf } from '../../src/calc/stud/checkStud.ts';
import { neededEngagement } from '../../src/calc/stud/engaged/neededEngagement.ts';
import { nutClamps } from '../../src/calc/stud/engaged/nutClamps.ts';
import { nutProof } from '../../src/calc/stud/engaged/nutProof.ts';
import { nutThread } from '../../src/calc/stud/engaged/nutThread.ts';
import { protrusion } from '../../src/calc/stud/engaged/protrusion.ts';
import { threadEngagement } from '../../src/calc/stud/engaged/threadEngagement.ts';
import { filletClearsChamfer } from '../../src/calc/stud/holes/filletClearsChamfer.ts';
import { holeCircle } from '../../src/calc/stud/holes/holeCircle.ts';
import { holes } from '../../src/calc/stud/holes/holes.ts';
import { nutSeat } from '../../src/calc/stud/holes/nutSeat.ts';
import { pilotLinesUp } from '../../src/calc/stud/holes/pilotLinesUp.ts';
import { replacedStud } from '../../src/calc/stud/holes/replacedStud.ts';
import { bearingPressure } from '../../src/calc/stud/joint/bearingPressure.ts';
import { clampedResilience } from '../../src/calc/stud/joint/clampedResilience.ts';
import { embeddingLoss } from '../../src/calc/stud/joint/embeddingLoss.ts';
import { NUT_FACTORS } from '../../src/calc/stud/joint/jointFigures.ts';
import { preload } from '../../src/calc/stud/joint/preload.ts';
import { proofShare } from '../../src/calc/stud/joint/proofShare.ts';
import { retorque } from '../../src/calc/stud/joint/retorque.ts';
import { slipTorque } from '../../src/calc/stud/joint/slipTorque.ts';
import { studResilience } from '../../src/calc/stud/joint/studResilience.ts';
import { studShear } from '../../src/calc/stud/joint/studShear.ts';
import { bestFirst } from '../../src/calc/stud/match/bestFirst.ts';
import { bestStuds } from '../../src/calc/stud/match/bestStuds.ts';
import { nearestStuds } from '../../src/calc/stud/match/nearestStuds.ts';
import { sameBut } from '../../src/calc/stud/match/sameBut.ts';
import { studTolerances } from '../../src/calc/stud/match/studTolerances.ts';
import { studWanted } from '../../src/calc/stud/match/studWanted.ts';
import { toleranceRows } from '../../src/calc/stud/match/toleranceRows.ts';
import { whatWouldMend } from '../../src/calc/stud/match/whatWouldMend.ts';
import { lengthMargin } from '../../src/calc/stud/numbers/lengthMargin.ts';
import { stackSum } from '../../src/calc/stud/numbers/stackSum.ts';
import { stacksByThickness } from '../../src/calc/stud/numbers/stacksByThickness.ts';
import { studNumbers } from '../../src/calc/stud/numbers/studNumbers.ts';
import { wornThread } from '../../src/calc/stud/numbers/wornThread.ts';
import { gapWanted } from '../../src/calc/stud/reach/gapWanted.ts';
import { onResurfacedPads } from '../../src/calc/stud/reach/onResurfacedPads.ts';
import { pilotEntersHole } from '../../src/calc/stud/reach/pilotEntersHole.ts';
import { pilotPassesNut } from '../../src/calc/stud/reach/pilotPassesNut.ts';
import { pullForward } from '../../src/calc/stud/reach/pullForward.ts';
import { reach } from '../../src/calc/stud/reach/reach.ts';
import { recommendShims } from '../../src/calc/stud/reach/recommendShims.ts';
import { tipClearance } from '../../src/calc/stud/reach/tipClearance.ts';
import { nutClass } from '../../src/calc/stud/thread/nutClass.ts';
import { preferredR40 } from '../../src/calc/stud/thread/preferredR40.ts';
import { strengthClass } from '../../src/calc/stud/thread/strengthClass.ts';
import { tensileStressArea } from '../../src/calc/stud/thread/tensileStressArea.ts';
import { threadGeometry } from '../../src/calc/stud/thread/threadGeometry.ts';
import { threadMeasured } from '../../src/calc/stud/thread/threadMeasured.ts';
import { threadShearAreas } from '../../src/calc/stud/thread/threadShearAreas.ts';
import { wrongNut } from '../../src/calc/stud/thread/wrongNut.ts';
import { EXAMPLE, layer, metric, NUT, STACK, STUD, unified } from './studExample.ts';
import { type Example, figure, shown, worked } from './worked.ts';

const SAID =
  'a 3/8-24 UNF-2A stud, thread from 1 to 20 mm, 23 mm long with its pilot, in a plate of 3.2 mm under a nut of 8.3 mm, gap 4 mm';
const numbers = studNumbers(EXAMPLE);
const [external, internal] = [threadGeometry(STUD.thread), threadGeometry(NUT.thread!)];
const fromCheck = (...keys: readonly string[]) =>
  worked(() => Object.fromEntries(keys.map((key) => [key, checkStud(EXAMPLE).answers[key]])), [], SAID);
const LENGTHS = {
  padDepthMm: 28,
  flexplateStandsOutMm: 22,
  separatorPlateMm: 0,
  hubEngagementMm: 20,
  hubEngagementLeastMm: 12,
  makersGapMm: null,
};
const CLAMPED = {
  bearingOuterDiameterMm: 14,
  slices: [{ thicknessMm: 3.2, holeDiameterMm: 10.3 }],
  youngMPa: 205_000,
};
const STRETCHED = { diameterMm: 9.525, minorMm: 8.265, threadStartMm: 1, gripMm: 3.2, youngMPa: 205_000 };
const diameters = (spec: Parameters<typeof threadGeometry>[0]) => {
  const { pitchDiameterMm, majorMm, tensileStressAreaMm2 } = threadGeometry(spec);
  return {
    majorMm: [majorMm.max, majorMm.min],
    pitchDiameterMm: [pitchDiameterMm.max, pitchDiameterMm.min],
    tensileStressAreaMm2,
  };
};
const COARSE = { ...STUD, threadStartMm: 2.5 };

const FITS_SHOWN = { yes: 'fits', 'with-care': 'fits with care', no: 'does not fit' } as const;

/** By the file each belongs to. */
export const studExamples: Readonly<Record<string, Example>> = {
  bearingPressure: worked(bearingPressure, [
    { mostN: 24_279, bearingOuterDiameterMm: 14, holeDiameterMm: 10.3 },
    'mm',
  ]),
  bestFirst: shown(`${SAID}; beside it the same with its thread only to 9 mm`, () => {
    const { stud, ...shared } = EXAMPLE;
    const studs = [
      { id: 'thread to 9 mm', stud: { ...stud, threadEndMm: 9 } },
      { id: 'thread to 20 mm', stud },
    ];
    const ranked = studs.map(({ id, stud: one }) => ({ id, fit: fitOf({ ...shared, stud: one }, 'mm') }));
    return bestFirst(ranked).map(
      ({ id, fit }, place) => `${place + 1}: ${id}, ${FITS_SHOWN[fit.judged.fits]}`,
    );
  }),
  bestStuds: shown(`${SAID}, its thread to 9, 16, 20 and 24 mm; the best two of the four`, () => {
    const { stud, ...shared } = EXAMPLE;
    const studs = [9, 16, 20, 24].map((threadEndMm) => ({
      id: `thread to ${threadEndMm} mm`,
      stud: { ...stud, threadEndMm, projectionMm: threadEndMm + 3 },
    }));
    return bestStuds({ ...shared, studs }, 2).map(
      ({ id, fits }, place) => `${place + 1}: ${id}, ${FITS_SHOWN[fits]}`,
    );
  }),
  clampedResilience: worked(clampedResilience, [CLAMPED]),
  embeddingLoss: worked(
    embeddingLoss,
    [
      {
        interfaces: 1,
        studMmPerN: studResilience(STRETCHED).mmPerN,
        clampedMmPerN: clampedResilience(CLAMPED)!.mmPerN,
        steps: [studResilience(STRETCHED).step, clampedResilience(CLAMPED)!.step],
      },
    ],
    SAID,
  ),
  filletClearsChamfer: worked(
    () =>
      filletClearsChamfer(
        studNumbers({
          ...EXAMPLE,
          stud: { ...STUD, filletMm: 0.8 },
          stack: { ...STACK, layers: [layer(3.2, { chamferMm: 0.5 })] },
        }),
        'mm',
      ),
    [],
    'a fillet of 0.8 mm at the stud’s foot, a chamfer of 0.5 mm in the plate',
  ),
  fits: shown(SAID, () => [checkStud(EXAMPLE).headline]),
  fixedFastenerPosition: fromCheck('positionToleranceMm'),
  holeCircle: shown(`${SAID}; cover and plate both drilled on Ø 286`, () => {
    const { count, circle } = holeCircle(
      { ...numbers, input: { ...EXAMPLE, coverStudCount: 6, coverStudCircleDiameterMm: 286 } },
      'mm',
    );
    return [count.finding.sentence, circle.finding.sentence];
  }),
  gapWanted: worked(
    (gapMm: number) =>
      gapWanted(
        {
          input: {
            ...EXAMPLE,
            pullForwardMm: gapMm,
            criteria: { ...EXAMPLE.criteria, leastPullForwardMm: 3.175, mostPullForwardMm: 4.7625 },
          },
        },
        'mm',
      ),
    [5],
    'gap 5 mm; 3.175 to 4.7625 mm wanted',
  ),
  holes: worked(holes, [numbers, 'mm'], SAID),
  jointFigures: shown('the table itself', () =>
    NUT_FACTORS.map(({ says, value }) => `${says}: K ${figure(value)}`),
  ),
  lengthMargin: worked(lengthMargin, [{ marginMm: 0.3, tolerancesMm: [0.2, 0.15] }]),
  metricGeometry: worked(() => diameters(metric(10, 1.5, '6g')), [], 'M10 × 1.5, 6g: greatest and least'),
  nearestStuds: worked(
    nearestStuds,
    [
      { projectionMm: 24.1, threadEndMm: null, threadStartMm: null, pilotDiameterMm: null },
      [
        { id: 'short', stud: { ...STUD, projectionMm: 24.003 } },
        { id: 'long', stud: { ...STUD, projectionMm: 30.353 } },
      ],
    ],
    '24.10 mm from the pad; 24.003 and 30.353 mm in the catalog',
  ),
  neededEngagement: worked(
    neededEngagement,
    [{ stud: external, nut: internal, studTensileMPa: 827, nutTensileMPa: 827 }],
    '3/8-24 UNF, 2A in 2B, 827 MPa both',
  ),
  nutClamps: worked(nutClamps, [numbers, 'mm'], SAID),
  nutProof: worked(nutProof, [{ mostN: 24_279, nutProofMPa: 827, areaMm2: 56.663 }, 'mm']),
  nutSeat: worked(nutSeat, [numbers, 'mm'], SAID),
  nutThread: worked(nutThread, [numbers], SAID),
  onResurfacedPads: worked(
    (takenOffMm: number) => {
      const { threadStartMm, threadEndMm, projectionMm } = onResurfacedPads(STUD, takenOffMm);
      return { threadStartMm, threadEndMm, projectionMm };
    },
    [0.5],
    'thread from 1 to 20 mm, 23 mm long; 0.5 mm off the pad',
  ),
  pilotEntersHole: worked(pilotEntersHole, [numbers, 'mm'], SAID),
  pilotLinesUp: worked(
    (projectionMm: number) => {
      const layers = [layer(3.2), layer(9.5, { name: 'casting', kind: 'casting' })];
      const stack = { ...EXAMPLE.stack, style: 'two-piece' as const, layers };
      const stud = { ...STUD, projectionMm };
      return pilotLinesUp(studNumbers({ ...EXAMPLE, stack, stud }), 'mm');
    },
    [27.35],
    'thread to 20 mm, 27.35 mm long; plate 3.2 mm, casting 9.5 mm',
  ),
  pilotPassesNut: worked(pilotPassesNut, [numbers, 'mm'], SAID),
  preferredR40: worked(preferredR40, [{ valueUm: 150 }]),
  preload: worked(preload, [{ torqueNm: 37, nutFactor: 0.2, diameterMm: 9.525, scatter: 0.25 }]),
  proofShare: worked(proofShare, [{ mostN: 24_279, proofMPa: 586, areaMm2: 56.663 }]),
  protrusion: worked(protrusion, [numbers, NUT, 'mm'], SAID),
  pullForward: worked(
    pullForward,
    [{ ...LENGTHS, shimMm: 1.5 }, 'mm'],
    'pads 28 mm deep, flexplate stands out 22 mm, shim 1.5 mm, hub engaged 20 mm',
  ),
  nutClass: worked(nutClass, [{ name: '8', diameterMm: 10 }], 'class 8, M10'),
  reach: worked(reach, [
    {
      projectionMm: 23,
      threadEndMm: 20,
      stackMm: 3.2,
      gapMm: 4,
      pitchMm: 25.4 / 24,
      startThreads: 2,
      prevailing: false,
    },
  ]),
  recommendShims: worked(
    recommendShims,
    [LENGTHS, [0.5, 1, 2]],
    'gap 6 mm bare, limits 3.2 to 4.8 mm; shims of 0.5, 1 and 2 mm',
  ),
  replacedStud: worked(replacedStud, [
    {
      leanMm: 0.2,
      leanAtMm: 20,
      offMm: 0.1,
      stackMm: 12.7,
      tightestHoleMm: 10.3,
      studMostMm: 9.5,
      provedNm: 45,
      heldIt: true,
      how: 'welded',
      limits: { leanAt25Mm: 0.3, offMm: 0.2, proofNm: 40 },
    },
    'mm',
  ]),
  retorque: worked(
    retorque,
    [{ on: '2026-11-24', torqueNm: 37, makerAllows: 'yes', threadLocker: false, note: '' }, 37, 'mm'],
    '37 N·m the first time and again, allowed by the maker, no thread-locker',
  ),
  sameBut: worked(
    sameBut,
    [STUD, [{ id: 'the long one', stud: { ...STUD, projectionMm: STUD.projectionMm + 6.35 } }]],
    'the stud of these examples, and one 6.35 mm longer in its pilot',
  ),
  slipTorque: worked(slipTorque, [{ friction: 0.15, studCount: 6, preloadN: 7300, radiusMm: 143 }]),
  stackSum: worked(
    stackSum,
    [[layer(3.2), layer(8, { name: 'casting', toleranceMm: 0.15 })]],
    '3.2 ± 0.1 and 8.0 ± 0.15 mm',
  ),
  stacksByThickness: worked(
    stacksByThickness,
    [
      {
        measuredMm: 12.9,
        toleranceMm: 0.3,
        stacks: [
          {
            id: 'plate and casting',
            stack: { ...STACK, layers: [layer(3.2), layer(9.5, { toleranceMm: 0.15 })] },
          },
        ],
      },
    ],
    '12.9 ± 0.3 mm measured; 3.2 ± 0.1 and 9.5 ± 0.15 mm in the catalog',
  ),
  strengthClass: worked(strengthClass, [{ name: 'grade 5', diameterMm: 9.525 }]),
  stripOrBreak: fromCheck('breakingLoadN'),
  studResilience: worked(studResilience, [STRETCHED]),
  studShear: worked(studShear, [
    { torqueNm: 700, studCount: 6, radiusMm: 143, areaMm2: 71.3, tensileMPa: 827 },
    'mm',
  ]),
  studTolerances: worked(studTolerances, [EXAMPLE, { draws: 10_000 }], `${SAID}; 10 000 draws`),
  studWanted: worked(studWanted, [EXAMPLE], SAID),
  tensileStressArea: shown('M10 × 1.5, and 3/8-24 UNF', () =>
    [metric(10, 1.5, '6g'), unified(0.375, 24, '2A')].map((spec) => {
      const { how, value } = tensileStressArea(spec);
      return `${how.at(-1)?.numbers ?? ''} (${figure(value)} mm²)`;
    }),
  ),
  threadEngagement: worked(threadEngagement, [
    {
      threadStartMm: 1,
      threadEndMm: 20,
      lengthToleranceMm: 0.25,
      gripMm: 3.2,
      layerTolerancesMm: [0.1],
      nutHeightMm: 8.3,
      nutToleranceMm: 0.2,
      countersinkMm: 0.1,
    },
  ]),
  threadShearAreas: worked(
    threadShearAreas,
    [{ stud: external, nut: internal, lengthMm: 9.525 }],
    '3/8-24 UNF, 2A in 2B, over one diameter',
  ),
  threadMeasured: shown('0.373 in, and 10 pitches over 0.417 in; 3/8-24 UNF-2A and 3/8-16 UNC-2A', () =>
    threadMeasured(
      {
        majorMm: 0.373 * 25.4,
        majorWithinMm: 0.05,
        pitches: 10,
        overMm: 0.417 * 25.4,
        overWithinMm: 0.2,
      },
      [external, threadGeometry(unified(0.375, 16, '2A', 'UNC'))].map((geometry) => ({ geometry })),
    ).map(
      ({ of, offMajorMm, offPitchMm, within }) =>
        `${of.geometry.designation}: diameter ${figure(offMajorMm)}, pitch ${figure(offPitchMm ?? 0)} mm off; ${within ? 'it may be this one' : 'not this one'}.`,
    ),
  ),
  tipClearance: worked(tipClearance, [numbers, 'mm'], `${SAID}; 40 mm of room`),
  toleranceRows: shown(`${SAID}; 100 000 draws`, () =>
    toleranceRows(EXAMPLE).rows.map(
      ({ id, nominalMm, rssMm, worstMm, failShare }) =>
        `${id}: ${figure(nominalMm)} mm to spare, RSS ${figure(rssMm)}, worst ${figure(worstMm)}; ${figure(100 * failShare)} % fail`,
    ),
  ),
  torqueWindow: fromCheck('torqueEnoughNm', 'torqueMostNm'),
  unifiedGeometry: worked(() => diameters(STUD.thread), [], '3/8-24 UNF-2A: greatest and least'),
  reusedParts: shown(`${SAID}; studs used before`, () =>
    checkStud({ ...EXAMPLE, joint: { ...EXAMPLE.joint!, studsUsedBefore: true } })
      .findings.filter(({ id }) => id === 'joint-studs-used')
      .map(({ sentence }) => sentence),
  ),
  whatWouldMend: worked(
    whatWouldMend,
    [{ ...EXAMPLE, stud: COARSE }],
    `${SAID}; its thread only from 2.5 mm on`,
  ),
  wornThread: worked(
    (measuredMm: number) => ({ tensileStressAreaMm2: wornThread(external, measuredMm).tensileStressAreaMm2 }),
    [external.pitchDiameterMm.min! - 0.1],
    '3/8-24 UNF-2A, pitch diameter 0.10 mm below its least',
  ),
  wrongNut: worked(
    wrongNut,
    [threadGeometry(unified(0.3125, 24, '2A')), threadGeometry(metric(8, 1, '6H'))],
    'an M8×1-6H nut on a 5/16-24 UNF-2A stud',
  ),
};

import { heatMarksInWords } from '../../shared/words/heatMarks.ts';
import { betweenStations } from '../../src/calc/cover/betweenStations.ts';
import { checkCover } from '../../src/calc/cover/checkCover.ts';
import { coverage } from '../../src/calc/cover/coverage.ts';
import { coverNumbers } from '../../src/calc/cover/coverNumbers.ts';
import { cutPlan } from '../../src/calc/cover/cutting/cutPlan.ts';
import { cutsLeft } from '../../src/calc/cover/cutting/cutsLeft.ts';
import { deepestCut } from '../../src/calc/cover/cutting/deepestCut.ts';
import { facingTime } from '../../src/calc/cover/cutting/facingTime.ts';
import { spindleSpeed } from '../../src/calc/cover/cutting/spindleSpeed.ts';
import { theoreticalRoughness } from '../../src/calc/cover/cutting/theoreticalRoughness.ts';
import { cutDialled } from '../../src/calc/cover/face/cutDialled.ts';
import { dish } from '../../src/calc/cover/face/dish.ts';
import { faceLies } from '../../src/calc/cover/face/faceLies.ts';
import { flatnessLeastSquares } from '../../src/calc/cover/face/flatnessLeastSquares.ts';
import { flatnessMinimumZone } from '../../src/calc/cover/face/flatnessMinimumZone.ts';
import { indicatorReading } from '../../src/calc/cover/face/indicatorReading.ts';
import { tiltOverTrack } from '../../src/calc/cover/face/tiltOverTrack.ts';
import { cleanUpToolPlane } from '../../src/calc/cover/face/toolPlane.ts';
import { wallsLeftBy } from '../../src/calc/cover/face/wallsLeftBy.ts';
import { gaugeThatSettles } from '../../src/calc/cover/gaugeThatSettles.ts';
import { governingMinimum } from '../../src/calc/cover/governingMinimum.ts';
import { knockOnLengths } from '../../src/calc/cover/knockOnLengths.ts';
import { heatMarks } from '../../src/calc/cover/marks/heatMarks.ts';
import { marksRound } from '../../src/calc/cover/marks/marksRound.ts';
import { measuredStations, placeOnFace } from '../../src/calc/cover/measuredStations.ts';
import { permissibleUnbalance } from '../../src/calc/cover/permissibleUnbalance.ts';
import { isAt } from '../../src/calc/cover/placeNames.ts';
import { releaseClearance } from '../../src/calc/cover/releaseClearance.ts';
import { rings } from '../../src/calc/cover/rings.ts';
import { stationLayout } from '../../src/calc/cover/stationLayout.ts';
import { unbalance } from '../../src/calc/cover/unbalance.ts';
import { wallUncertainty } from '../../src/calc/cover/wallUncertainty.ts';
import { type Doubt, whatWouldSettle } from '../../src/calc/cover/whatWouldSettle.ts';
import { coverInput, NOT_GIVEN, SET_ONE, SET_TWO } from './coverSets.ts';
import { type Example, figure, shown, worked } from './worked.ts';

const ONE =
  'twelve stations on two rings, with an indicator: walls 4.79 to 4.93 mm, marks to 0.25 mm deep, allowance 0.05 mm';
const TWO =
  'eight stations at radius 120 mm: walls 4.78 to 4.95 mm, marks to 0.22 mm deep, allowance 0.05 mm, runout allowed 0.10 mm over Ø 264';
const stations = measuredStations(SET_ONE);
const face = stations.map(({ xMm, yMm, faceMm }) => ({ xMm, yMm, zMm: faceMm ?? 0 }));
const heights = stations.map(({ faceMm }) => faceMm ?? 0);
const places = stations.map(({ faceMm, depthMm }) => ({ heightMm: faceMm ?? 0, depthMm }));
const LATHE = {
  trackInnerDiameterMm: 214,
  trackOuterDiameterMm: 264,
  roughingLimitMm: 0.2,
  finishingCutMm: 0.1,
  roughingFeedMm: 0.15,
  finishingFeedMm: 0.1,
  cuttingSpeedMPerMin: 150,
  noseRadiusMm: 0.8,
  leastRpm: 40,
  mostRpm: 1200,
};
const DOUBT: Doubt = {
  marginsMm: [0.01],
  confidence: 0.95,
  calibrationMm: 0,
  cutSettingMm: 0,
  indicatorMm: 0,
  resolutionMm: 0,
  repeatabilityMm: 0.012,
  readings: [1],
};
const WEDGE = [0, 90, 180, 270].map((angleDeg) => {
  const [xMm, yMm] = [132 * Math.sin((angleDeg * Math.PI) / 180), 132 * Math.cos((angleDeg * Math.PI) / 180)];
  return { xMm, yMm, zMm: 4.5 + (0.01 * yMm) / 132 };
});

/** Behind four studs and between them, in turn. */
const eightPlaces = (behindMm: number, betweenMm: number) =>
  Array.from({ length: 8 }, (_, i) => ({
    angleDeg: 45 * i,
    radiusMm: 110,
    depthMm: i % 2 === 0 ? behindMm : betweenMm,
  }));

/** By the file each belongs to. */
export const coverExamples: Readonly<Record<string, Example>> = {
  betweenStations: worked(
    betweenStations,
    [{ angleDeg: 22.5, radiusMm: 110 }, stations],
    'halfway between stations 1 and 2 of the first set, 4.92 and 4.90 mm',
  ),
  coverage: worked(coverage, [SET_ONE, 4], `${ONE}; four studs`),
  cutDialled: worked(cutDialled, [{ heightsMm: heights, toolPlaneMm: -0.35 }]),
  cutPlan: worked(cutPlan, [{ totalCutMm: 0.42, ...LATHE }]),
  cutsLeft: worked(cutsLeft, [{ leastWallMm: 4.8, minimumWallMm: 4.3, typicalCutMm: 0.25 }]),
  deepestCut: worked(
    deepestCut,
    [
      {
        wallsMm: stations.map(({ wallMm }) => wallMm),
        ways: coverNumbers(coverInput()).ways,
        minimumMm: 4.3,
        uncertainty: null,
        confidence: 0.95,
      },
    ],
    `${ONE}; minimum 4.3 mm, nothing known of the gauge`,
  ),
  dialledIn: worked(
    (input: ReturnType<typeof coverInput>) => {
      const { dialledIn, cut } = checkCover(input);
      return `As chucked, the depth of cut is ${figure(cut.dialledMm)} mm. Indicated in, with shims, the least wall is ${figure(dialledIn!.leastWallMm)} mm, ${figure(dialledIn!.wallGainedMm)} mm more, at a tilt of ${figure(dialledIn!.tiltMm)} mm toward ${figure(dialledIn!.tiltDirectionDeg!)}°; shims ${dialledIn!.shimsMm.map((mm) => mm.toFixed(3)).join(', ')} mm.`;
    },
    [
      coverInput({
        stations: SET_TWO,
        criteria: { ...coverInput().criteria!, faceRunoutLimitMm: 0.1 },
      }),
    ],
    TWO,
  ),
  dish: worked(dish, [stations], ONE),
  faceCut: worked(
    () => {
      const { cut, leastWall } = checkCover(coverInput());
      return `Tool plane ${figure(cut.toolPlaneMm)} mm, depth of cut ${figure(cut.dialledMm)} mm, least wall left ${figure(leastWall.afterMm)} mm at station ${leastWall.station + 1}.`;
    },
    [],
    ONE,
  ),
  wallsLeftBy: worked(
    () =>
      `Walls left ${wallsLeftBy(
        [
          { angleDeg: 0, radiusMm: 110, wallMm: [4.9], faceMm: 0.1, markDepthMm: null },
          { angleDeg: 180, radiusMm: 110, wallMm: [4.8], faceMm: 0, markDepthMm: null },
        ],
        0.25,
      )
        .map((wallMm) => `${figure(wallMm)} mm`)
        .join(' and ')}.`,
    [],
    'two stations of 4.90 and 4.80 mm, indicator 0.10 and 0 mm, cut 0.25 mm',
  ),
  faceLies: shown('two stations of 4.92 and 4.80 mm, face not indicated', () =>
    faceLies(
      measuredStations([
        { angleDeg: 0, radiusMm: 110, wallMm: [4.92], faceMm: null, markDepthMm: 0.2 },
        { angleDeg: 180, radiusMm: 110, wallMm: [4.8], faceMm: null, markDepthMm: 0 },
      ]),
      [],
    ).map(
      ({ name, stations: lying }) =>
        `${name.replaceAll('-', ' ')}: heights ${lying.map(({ heightMm }) => figure(heightMm)).join(' and ')} mm`,
    ),
  ),
  facingTime: worked(facingTime, [
    { trackInnerDiameterMm: 214, trackOuterDiameterMm: 264, feedMm: 0.1, spindleRpm: 200 },
  ]),
  flatnessLeastSquares: worked(flatnessLeastSquares, [face], ONE),
  flatnessMinimumZone: worked(flatnessMinimumZone, [face], ONE),
  gaugeThatSettles: worked(gaugeThatSettles, [
    DOUBT,
    [
      { name: 'finer gauge', standardUncertaintyMm: 0.001, resolutionMm: 0.001, repeatabilityMm: 0.003 },
      { name: 'present gauge', standardUncertaintyMm: null, resolutionMm: null, repeatabilityMm: null },
    ],
  ]),
  governingMinimum: worked(governingMinimum, [
    { makerMm: 4.1, makerSource: 'the maker', shopMm: 4.3, shopSource: 'the shop' },
  ]),
  indicatorReading: worked(indicatorReading, [heights]),
  knockOnLengths: worked(
    knockOnLengths,
    [
      {
        ...NOT_GIVEN,
        padsResurfacedMm: 0.5,
        shimsMm: 1,
        padThicknessMm: 9,
        pullForwardMm: 4,
        hubEngagementMm: 12,
        pilotEngagedMm: 8,
      },
    ],
    '0.5 mm off the pads, 1 mm of shims under them; pad 9 mm, gap 4 mm, hub engaged 12 mm, pilot 8 mm',
  ),
  heatMarks: worked(
    () =>
      heatMarksInWords(heatMarks({ stations: eightPlaces(0.2, 0.05), marks: [], studCount: 4 }), 'mm').join(
        ' ',
      ),
    [],
    'eight stations at radius 110 mm, four studs: marks 0.2 mm deep behind each stud, 0.05 mm between',
  ),
  marksRound: worked(
    () => {
      const { meanMm, behindStudsMm } = marksRound(eightPlaces(0.2, 0), 4)!;
      return `d₀ ${figure(meanMm)} mm, c ${figure(behindStudsMm)} mm.`;
    },
    [],
    'eight places, four studs: marks 0.2 mm deep behind each stud, none between',
  ),
  measuredStations: worked(placeOnFace, [45, 100], 'angle 45°, radius 100 mm'),
  permissibleUnbalance: worked(permissibleUnbalance, [{ gradeMmPerS: 6.3, massKg: 1, speedRpm: 3000 }]),
  placeNames: shown('four studs, stud 2 at 90°', () =>
    [101.25, 101.26].map(
      (deg) => `A station at ${deg}° ${isAt(deg, 90, 4) ? 'counts' : 'does not count'} as behind stud 2.`,
    ),
  ),
  releaseClearance: worked(releaseClearance, [{ beforeMm: 0.8, dialledMm: 0.42 }]),
  rings: worked(rings, [[{ radiusMm: 110 }, { radiusMm: 128 }, { radiusMm: 110.4 }]]),
  spindleSpeed: worked(spindleSpeed, [
    { cuttingSpeedMPerMin: 150, diameterMm: 264, leastRpm: 40, mostRpm: 1200 },
  ]),
  stationLayout: worked(stationLayout, [
    { studCount: 4, trackInnerDiameterMm: 214, trackOuterDiameterMm: 264 },
  ]),
  theoreticalRoughness: worked(theoreticalRoughness, [{ feedMm: 0.2, noseRadiusMm: 0.8 }]),
  tiltOverTrack: worked(tiltOverTrack, [face, 264], `${ONE}; over Ø 264`),
  toolPlane: worked(cleanUpToolPlane, [places, 0.05], ONE),
  unbalance: worked(
    unbalance,
    [{ walls: WEDGE, trackInnerDiameterMm: 214, trackOuterDiameterMm: 264, densityKgPerM3: 7870 }],
    'a wall 0.02 mm thicker on one side over Ø 264, friction surface Ø 214 to 264, 7870 kg/m³',
  ),
  wallUncertainty: worked(
    wallUncertainty,
    [
      {
        gauge: {
          standardUncertaintyMm: 0.005,
          resolutionMm: 0.001,
          repeatabilityMm: 0.003,
          faceStandardUncertaintyMm: 0.002,
          cutSettingStandardUncertaintyMm: 0.005,
        },
        walls: [[4.5, 4.502]],
        indicated: true,
        station: 0,
        confidence: 0.95,
      },
    ],
    'u_cal 0.005, resolution 0.001, s 0.003 over two readings, indicator 0.002, cut setting 0.005 mm',
  ),
  whatWouldSettle: worked(whatWouldSettle, [DOUBT]),
};

const stack = {
  style: 'two-piece',
  layers: [
    { name: 'plate', thicknessMm: 3.2, toleranceMm: 0.1, holeDiameterMm: 10.3 },
    { name: 'casting', thicknessMm: 6.4, toleranceMm: 0.2, holeDiameterMm: 10.5 },
  ],
  holeCount: 4,
  holeCircleDiameterMm: 286,
  tipRoomMm: 45,
};
const nut = {
  heightMm: 8.3,
  toleranceMm: 0.2,
  thread: '3/8-24 UNF-2B',
  proofMPa: 827,
  tensileMPa: 1000,
  countersinkMm: 0.1,
  bearingOuterDiameterMm: 14,
  washerMm: 0,
  prevailing: false,
};
const joint = {
  torqueNm: 41,
  nutFactor: 0.2,
  scatter: 0.25,
  friction: 0.15,
  engineTorqueNm: 350,
  serviceFactor: 2,
  studCount: 4,
  studCircleDiameterMm: 286,
};
const surroundings = {
  stack,
  nut,
  pullForwardMm: 4,
  criteria: { protrusionThreads: 1, startThreads: 2 },
  joint,
  coverStudCount: 4,
  coverStudCircleDiameterMm: 286,
};
const longStud = {
  thread: '3/8-24 UNF-2A',
  threadStartMm: 6,
  threadEndMm: 20,
  projectionMm: 29.5,
  lengthToleranceMm: 0.25,
  pilotDiameterMm: 8,
  tensileMPa: 1035,
  proofMPa: 827,
};
const shortStud = { ...longStud, threadStartMm: 1, threadEndMm: 14, projectionMm: 17 };

const station = (angleDeg: number, radiusMm: number, wall: number, faceMm: number, markDepthMm: number) => ({
  angleDeg,
  radiusMm,
  wallMm: [wall],
  faceMm,
  markDepthMm,
});

const cover = {
  cover: {
    studCount: 4,
    studCircleDiameterMm: 286,
    trackInnerDiameterMm: 214,
    trackOuterDiameterMm: 264,
    nominalWallMm: 5,
    densityKgPerM3: 7870,
  },
  stations: [
    station(0, 110, 4.92, 0.06, 0.2),
    station(45, 110, 4.9, 0.05, 0),
    station(90, 110, 4.86, 0.01, 0.12),
    station(135, 110, 4.83, -0.02, 0),
    station(180, 110, 4.8, -0.05, 0.25),
    station(225, 110, 4.81, -0.04, 0),
    station(270, 110, 4.85, 0, 0.1),
    station(315, 110, 4.9, 0.04, 0),
    station(0, 128, 4.93, 0.07, 0.1),
    station(90, 128, 4.86, 0.01, 0.05),
    station(180, 128, 4.79, -0.06, 0.15),
    station(270, 128, 4.85, 0, 0.05),
  ],
  marks: [{ angleDeg: 10, radiusMm: 120, depthMm: 0.15 }],
  gauge: {
    standardUncertaintyMm: 0.005,
    resolutionMm: 0.001,
    repeatabilityMm: 0.003,
    faceStandardUncertaintyMm: 0.002,
    cutSettingStandardUncertaintyMm: 0.005,
  },
  criteria: {
    minimumWallMm: 4.3,
    minimumWallSource: 'set by the owner, 2026',
    faceRunoutLimitMm: 0.13,
    cleanUpAllowanceMm: 0.05,
    confidence: 0.95,
    typicalCutMm: 0.25,
  },
  chucking: 'pads-and-pilot-trued',
  crackTest: 'none-found',
  releaseClearanceMm: 0.9,
};

const stiffness = {
  bossDiameterMm: 90,
  rimDiameterMm: 300,
  trackInnerDiameterMm: 214,
  trackOuterDiameterMm: 264,
  studCircleDiameterMm: 286,
  padDiameterMm: 24,
  padThicknessMm: 10,
  studCount: 4,
  wallMm: 5,
  trackWallMm: 4.5,
  sideWallMm: 4,
  pistonSealDiameterMm: 80,
  hubDiameterMm: 48,
  pressureMPa: 0.7,
  liningModulusMPaPerMm: 60,
  piston: 'conforming',
  youngMPa: 206_000,
  poisson: 0.29,
  yieldMPa: 330,
  peakLimit: 1.35,
};
const heat = {
  fluxWPerM2: 2_000_000,
  slipTimeS: 0.6,
  thicknessMm: 4.5,
  conductivityWPerMK: 51.9,
  densityKgPerM3: 7870,
  specificHeatJPerKgK: 486,
  pressurePeak: 1.33,
  startTemperatureC: 110,
};

interface ApiExample {
  readonly request: Record<string, unknown>;
  /** What makes it one that is refused. */
  readonly spoiltBy: Record<string, unknown>;
}

/** Requests shown in the interface document, by path. Invented; a test sends each and compares the answer. */
export const apiExamples: Readonly<Record<string, ApiExample>> = {
  '/cover/check': { request: cover, spoiltBy: { plannedCutMm: -0.1 } },
  '/cover/stiffness': { request: stiffness, spoiltBy: { padDiameterMm: 0 } },
  '/cover/heat': { request: heat, spoiltBy: { slipTimeS: -0.6 } },
  '/stud/check': { request: { stud: longStud, ...surroundings }, spoiltBy: { pullForwardMm: -4 } },
  '/stud/match': {
    request: {
      ...surroundings,
      studs: [
        { id: 'short', ...shortStud },
        { id: 'long', ...longStud },
      ],
    },
    spoiltBy: { studs: [] },
  },
  '/thread': { request: { thread: '7/16-20 UNF-2A' }, spoiltBy: { thread: '7/16-20 UNC' } },
};

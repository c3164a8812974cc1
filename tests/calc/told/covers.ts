import fc from 'fast-check';
import type {
  CoverCheckInput,
  CrackTest,
  Gauge,
  KnockOn,
  WithinLimits,
} from '../../../shared/words/cover.ts';
import type { Finding, Status } from '../../../shared/words/finding.ts';
import { CRITERIA, coverInput, NO_GAUGE, NOT_GIVEN, SHAPE } from '../cover/sets.ts';

const mm = (least: number, most: number) =>
  fc.integer({ min: Math.round(least * 1000), max: Math.round(most * 1000) }).map((n) => n / 1000);
const maybe = <T>(one: fc.Arbitrary<T>): fc.Arbitrary<T | null> => fc.option(one, { nil: null, freq: 2 });

const GAUGE: Gauge = {
  standardUncertaintyMm: 0.005,
  resolutionMm: 0.001,
  repeatabilityMm: 0.003,
  faceStandardUncertaintyMm: 0.002,
  cutSettingStandardUncertaintyMm: 0.005,
};
const GAUGES: readonly (Gauge | null)[] = [
  null,
  NO_GAUGE,
  GAUGE,
  { ...GAUGE, standardUncertaintyMm: 0.03 },
  { ...GAUGE, cutSettingStandardUncertaintyMm: 0.06 },
  { ...GAUGE, repeatabilityMm: 0.06, cutSettingStandardUncertaintyMm: null },
  { ...NO_GAUGE, resolutionMm: 0.1 },
];

const criteria = fc
  .record({
    minimumWallMm: fc.constantFrom(null, 4.0, 4.3, 4.5),
    minimumWallWorking: fc.constantFrom(
      null,
      null,
      '0.9 × 4.8 mm',
      'The formula asks for the side wall, which is not given.',
    ),
    cleanUpAllowanceMm: fc.constantFrom(null, 0.05, 0.1),
    confidence: fc.constantFrom(null, 0.9, 0.95, 0.99),
    typicalCutMm: fc.constantFrom(null, 0.1, 0.25),
    faceRunoutLimitMm: fc.constantFrom(null, 0.05, 0.12),
    sourced: fc.constantFrom(true, true, false),
  })
  .map(({ sourced, ...own }) => ({
    ...CRITERIA,
    ...own,
    minimumWallSource: sourced ? CRITERIA.minimumWallSource : null,
    ...(own.minimumWallWorking === null ? {} : { minimumWallFormula: '0.9 wall' }),
  }));

const within: fc.Arbitrary<WithinLimits> = fc.record({
  mm: mm(9.8, 10.2),
  leastMm: maybe(fc.constant(9.9)),
  mostMm: maybe(fc.constant(10.1)),
});
const knockOn: fc.Arbitrary<KnockOn> = fc
  .record({
    clampedFaceMm: maybe(mm(-0.1, 0.1)),
    releasedFaceMm: maybe(mm(-0.1, 0.1)),
    padsResurfacedMm: maybe(mm(0, 0.5)),
    shimsMm: maybe(mm(0, 1)),
    padThicknessMm: maybe(mm(9, 10)),
    leastPadThicknessMm: maybe(fc.constant(9.3)),
    padHeightsMm: fc.constantFrom<readonly number[]>([], [0, 0.05, 0.11], [0, 0.01, 0.02]),
    padsCoplanarWithinMm: maybe(fc.constant(0.1)),
    pullForwardMm: maybe(mm(1, 4)),
    leastPullForwardMm: maybe(fc.constant(1.5)),
    mostPullForwardMm: maybe(fc.constant(4.5)),
    hubEngagementMm: maybe(mm(10, 16)),
    leastHubEngagementMm: maybe(fc.constant(11)),
    crankPilotMm: maybe(mm(44.8, 45)),
    crankBoreMm: maybe(mm(44.9, 45.1)),
    mostPilotClearanceMm: maybe(fc.constant(0.15)),
    pilotEngagedMm: maybe(mm(4, 9)),
    leastPilotEngagedMm: maybe(fc.constant(6)),
    pilotRoomMm: maybe(mm(7, 9)),
    sideWallHeightMm: maybe(within),
    overallHeightMm: maybe(within),
    endPlayMm: maybe(within),
  })
  .map((some) => ({ ...NOT_GIVEN, ...some }));

const familyLimits = fc.constantFrom(null, {
  leastPadThicknessMm: 9.4,
  padsCoplanarWithinMm: 0.08,
  leastPullForwardMm: 1.6,
  mostPullForwardMm: 4.0,
  leastHubEngagementMm: 12,
  mostPilotClearanceMm: 0.12,
  leastPilotEngagedMm: 5,
  leastSideWallHeightMm: 9.95,
  mostSideWallHeightMm: 10.05,
  leastOverallHeightMm: 9.95,
  mostOverallHeightMm: null,
  leastEndPlayMm: null,
  mostEndPlayMm: 10.05,
  source: 'the maker’s sheet, invented for this test',
});

export const gaugesUsed = fc.array(
  fc.record({
    name: fc.constantFrom('Micrometer M1', 'Depth gauge D2'),
    dueOn: fc.constantFrom(null, '2026-03-01', '2026-03-02', '2026-06-01'),
    masterChecks: maybe(
      fc.record({
        everyDays: fc.constantFrom(null, 1, 30),
        lastOn: fc.constantFrom(null, '2026-01-15', '2026-02-28', '2026-03-02'),
        lastOffMm: fc.constantFrom(-0.006, 0, 0.004, 0.00498, 0.00504, 0.006),
        nextOn: fc.constantFrom(null, '2026-03-09'),
        nextOffMm: fc.constantFrom(-0.009, 0.001),
        limitMm: fc.constantFrom(null, 0.005),
        driftsOutOn: fc.constantFrom(null, '2026-03-01', '2026-04-01'),
      }),
    ).map((checks) =>
      checks === null
        ? null
        : {
            ...checks,
            lastOffMm: checks.lastOn === null ? null : checks.lastOffMm,
            nextOffMm: checks.nextOn === null ? null : checks.nextOffMm,
          },
    ),
  }),
  { maxLength: 2 },
);

const status = fc.constantFrom<Status>('pass', 'fail', 'caution', 'not-checked');
const further: fc.Arbitrary<readonly Finding[]> = fc
  .option(fc.tuple(status, status), { nil: null, freq: 2 })
  .map((both) =>
    both === null
      ? []
      : (['stiffness', 'stiffness-with-ring'] as const).map((id, i) => ({
          id,
          title: id === 'stiffness' ? 'Bending' : 'Bending with a ring',
          status: both[i]!,
          value: 1.2,
          limit: 1.1,
          unit: '',
          sentence: `${id} is ${both[i]!}.`,
          source: 'this test',
          answer: null,
        })),
  );

/** Nothing stands against facing it but, perhaps, that nobody tested for cracks, or how it bends. */
const calmed = ({
  crackTest,
  tilt,
  planned,
}: {
  crackTest: CrackTest;
  tilt: number;
  planned: number | null;
}) => ({
  rings: 2,
  dropped: 0,
  wall: 4.95,
  spread: 0.01,
  tilt: Math.min(tilt, 0.03),
  dark: 0.15,
  read: true,
  planned: planned === null ? null : 0.35,
  crackTest: crackTest === 'found' ? ('not-done' as const) : crackTest,
  failures: [],
  doubtful: [],
  chucking: 'pads-and-pilot-trued' as const,
});

/** A cover of one kind or another, with everything that may be found of it. */
export const anyCover: fc.Arbitrary<{ input: CoverCheckInput; further: readonly Finding[] }> = fc
  .record({
    studCount: fc.constantFrom(3, 4, 6),
    rings: fc.constantFrom(1, 2, 2),
    wall: fc.constantFrom(4.2, 4.6, 4.85, 4.85, 4.9),
    spread: fc.constantFrom(0.005, 0.02, 0.06),
    tilt: fc.constantFrom(0, 0.03, 0.12),
    dark: fc.constantFrom(0, 0.15, 0.3),
    repeats: fc.constantFrom(1, 1, 3),
    dropped: fc.constantFrom(0, 0, 0, 1, 3),
    read: fc.constantFrom(true, true, false),
    noise: fc.array(mm(-1, 1), { minLength: 72, maxLength: 72 }),
    density: fc.constantFrom(null, 7870),
    marks: fc.array(fc.record({ angleDeg: mm(0, 359), radiusMm: fc.constant(118), depthMm: mm(0, 0.4) }), {
      maxLength: 2,
    }),
    gauge: fc.constantFrom(...GAUGES),
    criteria: fc.option(criteria, { nil: null, freq: 7 }),
    maker: fc.constantFrom(null, null, 4.2, 4.4),
    chucking: fc.constantFrom(
      null,
      'pads-and-pilot-trued' as const,
      'pads-and-pilot-trued' as const,
      'side-wall-jaws' as const,
    ),
    planned: fc.constantFrom(null, null, 0.1, 0.35, 0.5, 0.8, 5),
    crackTest: fc.constantFrom(
      'none-found' as const,
      'none-found' as const,
      'none-found' as const,
      'not-done' as const,
      'found' as const,
    ),
    release: fc.constantFrom(null, 0.6),
    failures: fc.constantFrom(
      [],
      [],
      [],
      [{ item: 'Pilot', final: false }],
      [
        { item: 'Hub', final: true },
        { item: 'Pilot', final: false },
      ],
    ),
    notInspected: fc.constantFrom(undefined, ['the weld'], ['the weld', 'the hub']),
    doubtful: fc.constantFrom([], [], ['wall at station 3'], ['wall at station 3', 'face at station 4']),
    gaugesUsed,
    measuredOn: fc.constantFrom(null, '2026-03-02'),
    atHand: fc.constantFrom(undefined, [
      { name: 'Micrometer M2', standardUncertaintyMm: 0.002, resolutionMm: 0.001, repeatabilityMm: 0.001 },
    ]),
    balance: fc.constantFrom(
      null,
      { gradeMmPerS: 6.3, massKg: 12, speedRpm: 3000 },
      { gradeMmPerS: 0.4, massKg: 2, speedRpm: 6000 },
    ),
    knockOn: maybe(knockOn),
    familyLimits,
    further,
    calm: fc.boolean(),
  })
  .map(({ calm, ...any }) => (calm ? { ...any, ...calmed(any) } : any))
  .map((drawn) => {
    const { studCount, noise } = drawn;
    const places = [110, 128].slice(0, drawn.rings).flatMap((radiusMm, ring) =>
      Array.from({ length: ring === 0 ? 2 * studCount : studCount }, (_, i) => ({
        angleDeg: (i * 180 * (ring + 1)) / studCount,
        radiusMm,
      })),
    );
    const stations = places.slice(drawn.dropped).map((place, i) => ({
      ...place,
      wallMm: Array.from(
        { length: drawn.repeats },
        (_, k) => drawn.wall + drawn.spread * noise[i]! + 0.004 * (k === 0 ? 0 : noise[(i + 7 * k) % 72]!),
      ),
      faceMm: drawn.read
        ? drawn.tilt * Math.cos((place.angleDeg * Math.PI) / 180) + 0.01 * noise[i + 36]!
        : null,
      markDepthMm: Math.max(0, drawn.dark * noise[i + 18]!),
    }));
    const input = coverInput({
      cover: { ...SHAPE, studCount, densityKgPerM3: drawn.density },
      stations,
      marks: drawn.marks,
      gauge: drawn.gauge,
      criteria: drawn.criteria,
      makerMinimumWallMm: drawn.maker,
      makerMinimumWallSource: drawn.maker === null ? null : 'the maker’s sheet, invented for this test',
      chucking: drawn.chucking,
      plannedCutMm: drawn.planned,
      crackTest: drawn.crackTest,
      releaseClearanceMm: drawn.release,
      inspectionFailures: drawn.failures,
      ...(drawn.notInspected === undefined ? {} : { notInspected: drawn.notInspected }),
      doubtfulReadings: drawn.doubtful,
      gaugesUsed: drawn.gaugesUsed,
      measuredOn: drawn.measuredOn,
      ...(drawn.atHand === undefined ? {} : { gaugesAtHand: drawn.atHand }),
      balance: drawn.balance,
      knockOn: drawn.knockOn,
      familyLimits: drawn.familyLimits,
    });
    return { input, further: drawn.further };
  });

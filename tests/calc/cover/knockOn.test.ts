import { describe, expect, it } from 'vitest';
import { fitLimitsSchema, knockOnSchema } from '../../../shared/schemas/knockOn.ts';
import type { FitLimits, KnockOn } from '../../../shared/words/cover.ts';
import { nothingOf } from '../../../shared/words/fields/field.ts';
import { FIT_LIMITS, KNOCK_ON } from '../../../shared/words/fields/knockOn.ts';
import { checkCover } from '../../../src/calc/cover/checkCover.ts';
import { knockOnLengths } from '../../../src/calc/cover/knockOnLengths.ts';
import { coverInput, SET_ONE } from './sets.ts';

const GIVEN = 'the limit entered here; the maker’s figure comes first';
const given = (some: Partial<KnockOn>): KnockOn => ({ ...knockOnSchema.parse({}), ...some });
const findings = (some: Partial<KnockOn>) =>
  Object.fromEntries(
    checkCover({ ...coverInput({ stations: SET_ONE }), knockOn: given(some) }).findings.map((one) => [
      one.id,
      one,
    ]),
  );

describe('lengths after the pads are resurfaced and shimmed', () => {
  it('lengths after resurfacing and shimming are those of the comment’s example, by hand', () => {
    const lengths = knockOnLengths(
      given({
        padsResurfacedMm: 0.5,
        shimsMm: 1,
        padThicknessMm: 9,
        pullForwardMm: 4,
        hubEngagementMm: 12,
        pilotEngagedMm: 8,
      }),
    );
    expect(lengths.padThickness?.value).toBeCloseTo(8.5, 12);
    expect(lengths.pullForward?.value).toBeCloseTo(3.5, 12);
    expect(lengths.hubEngagement?.value).toBeCloseTo(8.5, 12);
    expect(lengths.pilotEngaged?.value).toBeCloseTo(7.5, 12);
  });

  it('resurfaced pads open the gap and let the hub out, and shims do the reverse', () => {
    const base = { pullForwardMm: 4, hubEngagementMm: 12, pilotEngagedMm: 8, padThicknessMm: 9 };
    const at = (padsResurfacedMm: number, shimsMm: number) => {
      const { pullForward, hubEngagement, pilotEngaged } = knockOnLengths(
        given({ ...base, padsResurfacedMm, shimsMm }),
      );
      return [pullForward!.value!, hubEngagement!.value!, pilotEngaged!.value!];
    };
    const [gap, hub, pilot] = at(0, 0);
    expect(at(0.3, 0)).toEqual([gap! + 0.3, hub! - 0.3, pilot! + 0.3].map((mm) => expect.closeTo(mm, 9)));
    expect(at(0, 0.3)).toEqual([gap! - 0.3, hub! + 0.3, pilot! - 0.3].map((mm) => expect.closeTo(mm, 9)));
  });
});

describe('knock-on findings', () => {
  it('other dimensions that were not given have no finding, and none decides the verdict', () => {
    const bare = checkCover(coverInput({ stations: SET_ONE }));
    const whole = checkCover({ ...coverInput({ stations: SET_ONE }), knockOn: given({}) });
    expect(whole.findings).toEqual(bare.findings);
    const bad = checkCover({
      ...coverInput({ stations: SET_ONE }),
      knockOn: given({ crankPilotMm: 45, crankBoreMm: 44, endPlayMm: { mm: 3, leastMm: 0.1, mostMm: 0.6 } }),
    });
    expect(bad.verdict).toBe(bare.verdict);
  });

  it.each<[string, Partial<KnockOn>, Partial<KnockOn>]>([
    [
      'chucking-difference',
      { clampedFaceMm: 0.08, releasedFaceMm: 0.03 },
      { clampedFaceMm: 0.09, releasedFaceMm: 0.03 },
    ],
    [
      'pad-thickness',
      { padThicknessMm: 9, padsResurfacedMm: 1, leastPadThicknessMm: 8 },
      { padThicknessMm: 9, padsResurfacedMm: 1.1, leastPadThicknessMm: 8 },
    ],
    [
      'pads-coplanar',
      { padHeightsMm: [0, 0.05, 0.1], padsCoplanarWithinMm: 0.1 },
      { padHeightsMm: [0, 0.05, 0.11], padsCoplanarWithinMm: 0.1 },
    ],
    [
      'pull-forward',
      { pullForwardMm: 4, padsResurfacedMm: 0.8, mostPullForwardMm: 4.8 },
      { pullForwardMm: 4, padsResurfacedMm: 0.9, mostPullForwardMm: 4.8 },
    ],
    [
      'hub-engagement',
      { pullForwardMm: 4, hubEngagementMm: 12, leastHubEngagementMm: 8 },
      { pullForwardMm: 4, hubEngagementMm: 11.9, leastHubEngagementMm: 8 },
    ],
    [
      'pilot-engaged',
      { pilotEngagedMm: 6, padsResurfacedMm: 1, pilotRoomMm: 7 },
      { pilotEngagedMm: 6, padsResurfacedMm: 1.1, pilotRoomMm: 7 },
    ],
    [
      'pilot-clearance',
      { crankPilotMm: 44, crankBoreMm: 44.05, mostPilotClearanceMm: 0.05 },
      { crankPilotMm: 44.06, crankBoreMm: 44.05, mostPilotClearanceMm: 0.05 },
    ],
    [
      'side-wall-height',
      { sideWallHeightMm: { mm: 50, leastMm: 50, mostMm: null } },
      { sideWallHeightMm: { mm: 49.9, leastMm: 50, mostMm: null } },
    ],
    [
      'overall-height',
      { overallHeightMm: { mm: 120, leastMm: null, mostMm: 120 } },
      { overallHeightMm: { mm: 120.1, leastMm: null, mostMm: 120 } },
    ],
    [
      'end-play',
      { endPlayMm: { mm: 0.6, leastMm: 0.1, mostMm: 0.6 } },
      { endPlayMm: { mm: 0.61, leastMm: 0.1, mostMm: 0.6 } },
    ],
  ])('%s passes at its limit and is a caution beyond it', (id, good, bad) => {
    expect(findings(good)[id]?.status).toBe('pass');
    expect(findings(bad)[id]?.status).toBe('caution');
  });

  it('a length without a limit is shown and not judged', () => {
    const { 'hub-engagement': hub } = findings({ pullForwardMm: 4, hubEngagementMm: 12 });
    expect(hub?.status).toBe('not-checked');
    expect(hub?.sentence).toBe(
      'Pulled forward, the impeller hub engages the pump 8.000 mm. No limit is set, so it is not judged.',
    );
  });
});

describe('the family’s figures', () => {
  const limits = (some: Partial<FitLimits>): FitLimits => ({
    ...fitLimitsSchema.parse({ source: 'drawing, note 3' }),
    ...some,
  });
  const held = (some: Partial<KnockOn>, familyLimits: FitLimits) =>
    Object.fromEntries(
      checkCover({
        ...coverInput({ stations: SET_ONE }),
        knockOn: given(some),
        familyLimits,
      }).findings.map(({ id, status, limit, source }) => [id, [status, limit, source]]),
    );
  const endPlay = (mm: number, mostMm: number | null = null) => ({
    endPlayMm: { mm, leastMm: null, mostMm },
  });

  it.each([
    ['too much', endPlay(0.7), 'end-play', ['caution', 0.6, 'drawing, note 3']],
    ['just within', endPlay(0.6), 'end-play', ['pass', 0.3, 'drawing, note 3']],
    [
      'a limit typed comes first, and each has its own source',
      endPlay(0.7, 0.8),
      'end-play',
      ['pass', 0.3, `drawing, note 3; ${GIVEN}`],
    ],
    ['the least is still the family’s', endPlay(0.2, 0.8), 'end-play', ['caution', 0.3, 'drawing, note 3']],
    ['the most is the typed one', endPlay(0.9, 0.8), 'end-play', ['caution', 0.8, GIVEN]],
    [
      'a pilot that would bottom',
      { pilotEngagedMm: 6, pilotRoomMm: 5 },
      'pilot-engaged',
      ['caution', 5, 'the crank bore depth'],
    ],
    [
      'a pilot larger than its bore',
      { crankPilotMm: 45, crankBoreMm: 44 },
      'pilot-clearance',
      ['caution', 0, 'first principles'],
    ],
    [
      'a pilot that goes in, with no limit on its clearance',
      { crankPilotMm: 44, crankBoreMm: 45 },
      'pilot-clearance',
      ['not-checked', null, 'none set'],
    ],
    [
      'thin pads',
      { padThicknessMm: 8, padsResurfacedMm: 0.5 },
      'pad-thickness',
      ['caution', 7.6, 'drawing, note 3'],
    ],
    ['pads apart', { padHeightsMm: [0, 0.2] }, 'pads-coplanar', ['caution', 0.1, 'drawing, note 3']],
    ['hub', { pullForwardMm: 4, hubEngagementMm: 12 }, 'hub-engagement', ['caution', 9, 'drawing, note 3']],
  ] as const)('the family’s figure is the limit: %s', (_, some, id, expected) => {
    const family = limits({
      leastEndPlayMm: 0.3,
      mostEndPlayMm: 0.6,
      leastPadThicknessMm: 7.6,
      padsCoplanarWithinMm: 0.1,
      leastHubEngagementMm: 9,
    });
    expect(held(some, family)[id]).toEqual(expected);
  });

  it('a least figure above its greatest is refused', () => {
    expect(fitLimitsSchema.safeParse({ source: 'x', leastEndPlayMm: 0.6, mostEndPlayMm: 0.3 }).success).toBe(
      false,
    );
  });
});

describe('every field of the other dimensions has a say', () => {
  const within = { mm: 40.5, leastMm: 40, mostMm: 41 };
  const values = Object.entries(KNOCK_ON).map(([key, { kind }]) => {
    if (kind === 'part') return [key, within];
    return [key, kind === 'lengths' ? [0, 0.02] : key.startsWith('most') ? 1.4 : 1.5];
  });
  const full = { ...given(Object.fromEntries(values)), crankBoreMm: 1.6 };
  const told = (knockOn: KnockOn, familyLimits: FitLimits | null = null) =>
    checkCover({ ...coverInput({ stations: SET_ONE }), knockOn, familyLimits }).findings;

  const noLimits = Object.fromEntries(
    Object.entries(full).map(([key, value]) => [
      key,
      key in FIT_LIMITS ? null : value === within ? { ...within, leastMm: null, mostMm: null } : value,
    ]),
  ) as unknown as KnockOn;
  const own = Object.keys(KNOCK_ON).filter((key) => key in FIT_LIMITS);
  it.each(own)('%s typed with the measurement is a limit that something is held against', (key) => {
    expect(told({ ...noLimits, [key]: 0.777 }).map(({ limit }) => limit)).toContain(0.777);
  });

  it.each(Object.keys(KNOCK_ON).filter((key) => !own.includes(key)))(
    '%s left out changes what is found',
    (key) => {
      const without = { ...full, [key]: KNOCK_ON[key as keyof KnockOn].kind === 'lengths' ? [] : null };
      expect(told(without)).not.toEqual(told(full));
    },
  );

  it.each(Object.keys(FIT_LIMITS).filter((key) => key !== 'source'))(
    '%s of a cover type is a limit that something is held against',
    (key) => {
      const limits = { ...nothingOf(FIT_LIMITS), source: 'drawing, note 3', [key]: 0.777 };
      expect(told(noLimits, limits).map(({ limit }) => limit)).toContain(0.777);
    },
  );
});

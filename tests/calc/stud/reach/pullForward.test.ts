import { describe, expect, it } from 'vitest';
import { pullForward } from '../../../../src/calc/stud/reach/pullForward.ts';

const INPUT = {
  padDepthMm: 28,
  flexplateStandsOutMm: 22,
  separatorPlateMm: 0,
  shimMm: 1.5,
  hubEngagementMm: 20,
  hubEngagementLeastMm: 12,
  makersGapMm: null,
};
const status = (change: Partial<Parameters<typeof pullForward>[0]>, id = 'pull-forward') =>
  pullForward({ ...INPUT, ...change }).findings.find((one) => one.id === id)!.status;

describe('gap, stack and hub together (first principles)', () => {
  it('a shim takes from the gap, adds to the stack, deepens the hub', () => {
    expect(pullForward(INPUT)).toMatchObject({
      bareGapMm: 6,
      gapMm: 4.5,
      addedToStackMm: 1.5,
      hubEngagementAfterMm: 15.5,
    });
    expect(pullForward({ ...INPUT, shimMm: 0 })).toMatchObject({ gapMm: 6, hubEngagementAfterMm: 14 });
  });
  it('a separator plate and a flexplate that lies deep both add to the gap', () => {
    expect(pullForward({ ...INPUT, separatorPlateMm: 2 }).bareGapMm).toBe(8);
    expect(pullForward({ ...INPUT, padDepthMm: 4, flexplateStandsOutMm: -1 }).bareGapMm).toBe(5);
  });
  it('the pull-forward answer names the shims that would do', () => {
    const shims = pullForward(INPUT).shimsMm!;
    expect(shims.least).toBeCloseTo(1.2, 9);
    expect(shims.most).toBeCloseTo(2.8, 9);
    expect(pullForward({ ...INPUT, padDepthMm: 25 }).shimsMm).toBeNull();
  });
  it('the hub narrows the shims to a gap of at most 20 − 16.2, and none where that is below the least gap', () => {
    const found = pullForward({ ...INPUT, hubEngagementLeastMm: 16.2 });
    expect(found.hubAllowsGapMm).toBeCloseTo(3.8, 9);
    expect(found.shimsMm!.least).toBeCloseTo(2.2, 9);
    expect(found.shimsMm!.most).toBeCloseTo(2.8, 9);
    expect(pullForward({ ...INPUT, hubEngagementLeastMm: 17 }).shimsMm).toBeNull();
    expect(pullForward({ ...INPUT, hubEngagementLeastMm: null }).hubAllowsGapMm).toBeNull();
  });
});

describe('judged', () => {
  // About 3.2 to 4.8 mm: common practice, no source, from memory.
  it.each([
    [1.2, 'pass'],
    [2.8, 'pass'],
    [1.1, 'caution'],
    [2.9, 'caution'],
    [6, 'fail'],
  ])('a shim of %f is %s', (shimMm, expected) => {
    expect(status({ shimMm })).toBe(expected);
  });
  it('the maker’s gap is used instead of the usual one', () => {
    expect(status({ shimMm: 0, makersGapMm: { least: 5, most: 7 } })).toBe('pass');
    expect(pullForward({ ...INPUT, makersGapMm: { least: 5, most: 7 } }).findings[0]!.source).toBe(
      'the maker’s figure',
    );
  });
  it('the hub’s engagement is judged against its least figure', () => {
    expect(status({}, 'hub-engagement')).toBe('pass');
    expect(status({ hubEngagementMm: 16 }, 'hub-engagement')).toBe('fail');
    expect(status({ hubEngagementMm: null }, 'hub-engagement')).toBe('not-checked');
    expect(status({ hubEngagementLeastMm: null }, 'hub-engagement')).toBe('not-checked');
  });
  it('impossible depths are refused', () => {
    expect(() => pullForward({ ...INPUT, shimMm: -1 })).toThrow(
      'The shim is -1 mm; it must be 0 mm or more.',
    );
    expect(() => pullForward({ ...INPUT, padDepthMm: Number.NaN })).toThrow(
      'The depth to the pads is not a number; give it in mm.',
    );
  });
});

import { describe, expect, it } from 'vitest';
import { masterDrift } from '../../../src/calc/measure/masterDrift.ts';
import { masterLimit } from '../../../src/calc/measure/masterLimit.ts';

describe('how far off its master a gauge may read', () => {
  it('is made of uncertainty, resolution and repeatability', () => {
    const given = {
      calibration: { expandedMm: 0.004, coverageFactor: 2 },
      stepMm: 0.001,
      repeatabilityMm: 0.0015,
    };
    // 16 + 4 (1/12 + 2.25) = 25.33 µm²
    expect(masterLimit(given)!.value).toBeCloseTo(Math.sqrt(25 + 1 / 3) / 1000, 12);
  });
  it('counts what is not given as nothing; null where nothing is', () => {
    const none = { calibration: null, stepMm: null, repeatabilityMm: null };
    expect(masterLimit({ ...none, repeatabilityMm: 0.002 })!.value).toBeCloseTo(0.004, 12);
    expect(masterLimit(none)).toBeNull();
  });
});

describe('a drift', () => {
  const on = (...offUm: number[]) => offUm.map((um, i) => ({ day: 10 * i, offMm: um / 1000 }));
  const limit = { limitMm: 0.005, stepMm: null, nextDay: 60 };
  it('along a straight line passes its limit on the day worked out by hand', () => {
    const drift = masterDrift(on(0, 1, 2, 3, 4), limit)!;
    expect([drift.mmPerDay, drift.lastMm].map((one) => one.toFixed(7))).toEqual(['0.0001000', '0.0040000']);
    expect([drift.sure, drift.outOn]).toEqual([true, 51]);
    expect(masterDrift(on(0, -1, -2, -3, -4), limit)!.outOn).toBe(51);
  });
  it('that leads past the limit only after the next check says no day', () =>
    expect(masterDrift(on(0, 1, 2, 3, 4), { ...limit, nextDay: 50 })).toMatchObject({
      sure: true,
      outOn: null,
    }));
  it('of less than the scatter is none', () =>
    expect(masterDrift(on(0, 3, -2, 2, 1), limit)).toMatchObject({ sure: false, outOn: null }));
  it('within the steps of the gauge is none', () => {
    expect(masterDrift(on(0, 0, 0.4, 0.8, 1), limit)!.sure).toBe(true);
    expect(masterDrift(on(0, 0, 0.4, 0.8, 1), { ...limit, stepMm: 0.01 })!.sure).toBe(false);
  });
  it('has the uncertainty of a fitted line (JCGM 100:2008, H.3, from memory)', () => {
    const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
    const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
    const errors = t.map((day, i) => ({ day, offMm: b[i]! }));
    const line = masterDrift(errors, { limitMm: 1, stepMm: null, nextDay: 0 })!;
    expect([line.mmPerDay.toFixed(5), line.standardMmPerDay.toFixed(5)]).toEqual(['0.00218', '0.00067']);
  });
  it('needs five checks on three days', () => {
    expect(masterDrift(on(0, 1, 2, 3), limit)).toBeNull();
    expect(
      masterDrift(
        on(0, 1, 2, 3, 4).map((one, i) => ({ ...one, day: i % 2 })),
        limit,
      ),
    ).toBeNull();
  });
});

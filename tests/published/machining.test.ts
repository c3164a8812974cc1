import { describe, expect, it } from 'vitest';
import { facingTime } from '../../src/calc/cover/cutting/facingTime.ts';
import { spindleSpeed } from '../../src/calc/cover/cutting/spindleSpeed.ts';
import { theoreticalRoughness } from '../../src/calc/cover/cutting/theoreticalRoughness.ts';

describe('theoretical turned surface (independent second implementation, not published)', () => {
  it.each([
    [0.2, 0.8, '6.25', '1.60'],
    [0.1, 0.8, '1.56', '0.40'],
    [0.25, 0.8, '9.77', '2.51'],
    [0.3, 1.2, '9.38', '2.41'],
    [0.1, 0.4, '3.13', '0.80'],
  ])('a feed of %s with nose radius %s leaves Rt %s µm and Ra %s µm', (feedMm, noseRadiusMm, rt, ra) => {
    const found = theoreticalRoughness({ feedMm, noseRadiusMm });
    expect((found.rt.value! + 1e-9).toFixed(2)).toBe(rt);
    expect(found.ra.value!.toFixed(2)).toBe(ra);
  });
  it('Ra is near 0.0321 f²/r (from memory of turning handbooks)', () => {
    expect(theoreticalRoughness({ feedMm: 1, noseRadiusMm: 1 }).ra.value!).toBeCloseTo(32.1, 1);
  });
});

describe('spindle speed', () => {
  const range = { leastRpm: 1, mostRpm: 10_000 };
  it('spindle speed is about 3.82 V/D in ft/min and inches (Machinery’s Handbook, from memory)', () => {
    const { value } = spindleSpeed({ cuttingSpeedMPerMin: 500 * 0.3048, diameterMm: 10 * 25.4, ...range });
    expect(value).toBeCloseTo(3.82 * 50, 0);
  });
  it('spindle speed is 1000 V/(π D)', () => {
    const { value } = spindleSpeed({ cuttingSpeedMPerMin: 150, diameterMm: 264, ...range });
    expect(value).toBeCloseTo(180.86, 2);
  });
  it('spindle speed stays in the lathe’s range and says so', () => {
    const slow = spindleSpeed({ cuttingSpeedMPerMin: 150, diameterMm: 264, leastRpm: 200, mostRpm: 900 });
    expect(slow.value).toBe(200);
    expect(slow.warnings.map(({ code }) => code)).toEqual(['faster-than-asked']);
    const fast = spindleSpeed({ cuttingSpeedMPerMin: 150, diameterMm: 264, leastRpm: 20, mostRpm: 100 });
    expect(fast.value).toBe(100);
    expect(fast.warnings.map(({ code }) => code)).toEqual(['slower-than-asked']);
  });
});

describe('facing time', () => {
  it('facing time is (r_o − r_i)/(f N)', () => {
    const { value } = facingTime({
      trackInnerDiameterMm: 214,
      trackOuterDiameterMm: 264,
      feedMm: 0.1,
      spindleRpm: 200,
    });
    expect(value).toBeCloseTo(75, 9);
  });
});

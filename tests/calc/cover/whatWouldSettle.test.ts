import { describe, expect, it } from 'vitest';
import { type Doubt, whatWouldSettle } from '../../../src/calc/cover/whatWouldSettle.ts';

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

describe('what would settle a doubt (arithmetic: Φ⁻¹(0.95) = 1.645)', () => {
  it('a doubt of spread is settled by 4 repeats: 0.012/√n ≤ 0.01/1.645', () => {
    expect(whatWouldSettle(DOUBT)).toEqual({ by: 'repeats', readings: 4 });
  });
  it('a doubt of calibration is settled by a gauge of 60 % the uncertainty: k·0.01 ≤ 0.01/1.645', () => {
    const found = whatWouldSettle({ ...DOUBT, calibrationMm: 0.01, repeatabilityMm: 0 });
    expect(found.by).toBe('gauge');
    expect(found.by === 'gauge' && found.share).toBeCloseTo(1 / 1.645, 2);
  });
  it('a doubt is settled by nothing where the setting of the cut alone is too coarse', () => {
    expect(whatWouldSettle({ ...DOUBT, cutSettingMm: 0.01 })).toEqual({ by: 'nothing' });
  });
  it('a doubt is settled by nothing where there is no margin', () => {
    expect(whatWouldSettle({ ...DOUBT, marginsMm: [0] })).toEqual({ by: 'nothing' });
  });
});

import { describe, expect, it } from 'vitest';
import { integral } from '../../../src/calc/measure/integral.ts';

describe('integral (closed forms)', () => {
  it('the integral of eˣ from 0 to 1 is e − 1', () =>
    expect(integral(Math.exp, [0, 1])).toBeCloseTo(Math.E - 1, 12));
  it('the integral adds stretches laid end to end', () => {
    expect(integral(Math.abs, [-2, 0, 3])).toBeCloseTo(6.5, 12);
  });
  it('the integral halves until a sharp step is found', () => {
    expect(integral((x) => 1 / (1 + Math.exp(-(x - 0.3) / 1e-4)), [0, 1], 1e-10)).toBeCloseTo(0.7, 9);
  });
  it('the integral ends on noise it cannot resolve', () => {
    expect(integral((x) => 1 + 1e-16 * Math.sin(1e9 * x), [0, 1], 0)).toBeCloseTo(1, 12);
  });
});

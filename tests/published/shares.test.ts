import { describe, expect, it } from 'vitest';
import { wilsonInterval } from '../../src/calc/measure/wilsonInterval.ts';

/** Newcombe, Statist. Med. 17 (1998), 857, table I, method 3 (score, without continuity correction); from memory. */
describe('score intervals at 95 % as Newcombe prints them', () => {
  it.each([
    [81, 263, '0.2553', '0.3662'],
    [15, 148, '0.0624', '0.1605'],
    [0, 20, '0.0000', '0.1611'],
    [1, 29, '0.0061', '0.1718'],
  ])('%i of %i', (x, n, low, high) => {
    const interval = wilsonInterval(x, n);
    expect([interval.low.toFixed(4), interval.high.toFixed(4)]).toEqual([low, high]);
  });

  it('holds the share, and narrows as more are counted', () => {
    const few = wilsonInterval(1, 10);
    const many = wilsonInterval(100, 1000);
    expect(few.low).toBeLessThan(0.1);
    expect(many.high - many.low).toBeLessThan((few.high - few.low) / 5);
  });

  it('mirrors: what did not come back is one less what did', () => {
    const back = wilsonInterval(3, 40);
    const not = wilsonInterval(37, 40);
    expect(not.low).toBeCloseTo(1 - back.high, 12);
    expect(not.high).toBeCloseTo(1 - back.low, 12);
  });

  it.each([
    [0, 0],
    [3, 2],
    [-1, 5],
    [0.5, 5],
  ])('%f of %i is refused', (x, n) => {
    expect(() => wilsonInterval(x, n)).toThrow(RangeError);
  });
});

import { describe, expect, it } from 'vitest';
import { padHeightDoubt } from '../../../src/shop/doubts/padHeightDoubt.ts';

const asked = (...heights: number[]) => {
  const found = padHeightDoubt(
    heights.map((valueMm) => ({ valueMm, typed: String(valueMm), unit: 'mm', decimalSign: 'point' })),
  );
  return found && [found.index, found.doubt.meantMm];
};

describe('pad heights', () => {
  it('one that a slip would bring back among the others is asked about', () => {
    expect(asked(30.02, 30.01, 3.002, 30.03)).toEqual([2, 30.02]);
    expect(asked(0.02, 0.01, 0.3, 0.03)).toEqual([2, 0.03]);
    expect(asked(0.5, -0.5, 0.49, 0.5)).toEqual([1, 0.5]);
  });
  it('pads that differ as pads do are not, nor one that no slip explains', () => {
    expect(asked(0, -0.02, 0.03, 0.01)).toBeNull();
    expect(asked(0, 0.02, 1.7, 0.01)).toBeNull();
    expect(asked(12, 12, 12, 12)).toBeNull();
  });
  it('two heights tell nothing of one another', () => expect(asked(30, 3)).toBeNull());
});

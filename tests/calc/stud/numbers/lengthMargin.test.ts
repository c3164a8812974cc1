import { describe, expect, it } from 'vitest';
import { lengthMargin, spreadInWords } from '../../../../src/calc/stud/numbers/lengthMargin.ts';

describe('a length against its limit, three ways (first principles)', () => {
  // tolerances 0.20 and 0.15: RSS 0.25, sum 0.35.
  it.each([
    [0.36, 'pass', 0],
    [0.35, 'pass', 0],
    [0.3, 'caution', 0.05],
    [0.25, 'caution', 0.1],
    [0.24, 'fail', 0.01],
    [-0.1, 'fail', 0.35],
  ])('a margin of %f is %s, short by %f', (marginMm, status, missMm) => {
    const found = lengthMargin({ marginMm, tolerancesMm: [0.2, 0.15] });
    expect(found.status).toBe(status);
    expect(found.missMm).toBeCloseTo(missMm, 9);
  });

  it('a length check names which of nominal, RSS and worst case failed', () => {
    const said = (marginMm: number) =>
      spreadInWords(lengthMargin({ marginMm, tolerancesMm: [0.2, 0.15] }), 'mm', 'one pitch');
    expect(said(0.4)).toBe('');
    expect(said(0.3)).toBe(' Worst case: 0.05 mm short of one pitch.');
    expect(said(0.2)).toBe(' Likely spread of sizes (RSS): 0.05 mm short of one pitch.');
    expect(said(-0.1)).toBe('');
  });
});

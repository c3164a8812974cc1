import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readQuantity } from '../../shared/quantity/readQuantity.ts';
import { writeLength } from '../../shared/quantity/writeLength.ts';

describe('a stored length goes back into its box', () => {
  test.each<[number, 'mm' | 'in', 'point' | 'comma', string]>([
    [4.7625, 'mm', 'point', '4.7625'],
    [4.7625, 'in', 'point', '0.1875'],
    [23, 'mm', 'point', '23'],
    [23, 'in', 'point', '23 mm'],
    [4.92, 'in', 'comma', '4,92 mm'],
    [-0.06, 'mm', 'comma', '-0,06'],
    [0, 'in', 'point', '0'],
  ])('%d mm in a box for %s with a decimal %s is %s', (mm, unit, sign, typed) => {
    expect(writeLength(mm, unit, sign)).toBe(typed);
  });

  test('law: what is written reads back to the same number', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -4_000_000, max: 4_000_000 }),
        fc.constantFrom<'mm' | 'in'>('mm', 'in'),
        fc.constantFrom<'mm' | 'in'>('mm', 'in'),
        fc.constantFrom<'point' | 'comma'>('point', 'comma'),
        (tenthousandths, typedIn, unit, decimalSign) => {
          const dot = (tenthousandths / 10_000).toFixed(4);
          const typed = decimalSign === 'comma' ? dot.replace('.', ',') : dot;
          const first = readQuantity({ field: 'L', typed, kind: 'length', unit: typedIn, decimalSign });
          if (!first.ok) throw new Error(first.message);
          const again = writeLength(first.value, unit, decimalSign);
          const second = readQuantity({ field: 'L', typed: again, kind: 'length', unit, decimalSign });
          expect(second).toMatchObject({ ok: true, value: first.value });
        },
      ),
    );
  });
});

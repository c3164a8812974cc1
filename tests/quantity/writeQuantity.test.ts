import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BARE_UNIT, kindOf, type TypedKind } from '../../shared/quantity/bareUnit.ts';
import { readQuantity } from '../../shared/quantity/readQuantity.ts';
import { writeLength, writeQuantity } from '../../shared/quantity/writeQuantity.ts';

describe('a stored length goes back into its box', () => {
  test.each<[number, 'mm' | 'in', 'point' | 'comma', string]>([
    [4.7625, 'mm', 'point', '4.7625'],
    [4.7625, 'in', 'point', '0.1875'],
    [23, 'mm', 'point', '23'],
    [23, 'in', 'point', '23 mm'],
    [4.92, 'in', 'comma', '4,92 mm'],
    [-0.06, 'mm', 'comma', '-0,06'],
    [0, 'in', 'point', '0'],
  ])('a length of %d mm in a box for %s with a decimal %s is %s', (mm, unit, sign, typed) => {
    expect(writeLength(mm, unit, sign)).toBe(typed);
  });

  test('a length that is written reads back to the same number', () => {
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

  test.each<[number, TypedKind, 'mm' | 'in', 'point' | 'comma', string]>([
    [0.0004, 'length', 'mm', 'comma', '0,0004'],
    [0.02, 'length', 'mm', 'comma', '0,02'],
    [4e-7, 'length', 'mm', 'point', '0.0000004'],
    [37, 'torque', 'in', 'point', '37 N·m'],
    [13.558179483314005, 'torque', 'in', 'point', '10'],
    [0.7, 'pressure', 'in', 'comma', '0,7 MPa'],
    [0.95, 'share', 'mm', 'point', '95'],
    [0.999, 'share', 'mm', 'comma', '99,9'],
    [206000, 'stress', 'in', 'point', '206000 MPa'],
    [6, 'count', 'in', 'point', '6'],
    [0.29, 'number', 'mm', 'comma', '0,29'],
  ])('the value %d as a %s, with lengths in %s and a decimal %s, is %s', (value, kind, unit, sign, typed) => {
    expect(writeQuantity(value, kind, BARE_UNIT[kind][unit], sign)).toBe(typed);
  });

  test('a number of any kind is written so that it reads back to the same', () => {
    fc.assert(
      fc.property(
        fc
          .double({ min: -1e6, max: 1e6, noNaN: true })
          .filter((value) => value === 0 || Math.abs(value) > 1e-9),
        fc.constantFrom(...(Object.keys(BARE_UNIT) as TypedKind[]).filter((kind) => kind !== 'count')),
        fc.constantFrom<'mm' | 'in'>('mm', 'in'),
        fc.constantFrom<'point' | 'comma'>('point', 'comma'),
        (value, typedAs, lengthUnit, decimalSign) => {
          const unit = BARE_UNIT[typedAs][lengthUnit];
          const typed = writeQuantity(value, typedAs, unit, decimalSign);
          const read = readQuantity({ field: 'L', typed, kind: kindOf(typedAs), unit, decimalSign });
          expect(read).toMatchObject({ ok: true, value: value === 0 ? 0 : value });
        },
      ),
    );
  });
});

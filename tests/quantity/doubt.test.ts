import { describe, expect, test } from 'vitest';
import { doubt } from '../../shared/quantity/doubt.ts';
import type { DecimalSign } from '../../shared/quantity/plainNumber.ts';
import { readQuantity } from '../../shared/quantity/readQuantity.ts';
import type { UnitName } from '../../shared/quantity/units.ts';

function doubted(typed: string, unit: UnitName, expectedMm: number, decimalSign: DecimalSign = 'point') {
  const read = readQuantity({ field: 'Wall', typed, kind: 'length', unit, decimalSign });
  if (!read.ok) throw new Error(read.message);
  return doubt({ valueMm: read.value, expectedMm, typed, unit: read.unit, decimalSign });
}

// Expected 4.75 mm (0.187 in): "0.0187 in? Did you mean 0.187 in?".
describe('a value far from what is expected is asked about', () => {
  test.each<[string, UnitName, string, number]>([
    ['0.0187', 'in', '0.0187 in? Did you mean 0.187 in?', 4.7498],
    ['0.0187 in', 'mm', '0.0187 in? Did you mean 0.187 in?', 4.7498],
    ['1.87', 'in', '1.87 in? Did you mean 0.187 in?', 4.7498],
    ['187', 'in', '187 in? Did you mean 0.187 in?', 4.7498],
    ['47.5', 'mm', '47.5 mm? Did you mean 4.75 mm?', 4.75],
    ['475', 'mm', '475 mm? Did you mean 4.75 mm?', 4.75],
    ['0.475', 'mm', '0.475 mm? Did you mean 4.75 mm?', 4.75],
    ['0.187', 'mm', '0.187 mm? Did you mean 0.187 in?', 4.7498],
    ['4.75', 'in', '4.75 in? Did you mean 4.75 mm?', 4.75],
    ['3/16', 'in', '', 0],
    ['1 7/8', 'in', '1 7/8 in? Did you mean 0.1875 in?', 4.7625],
    ['4.2', 'mm', '', 0],
    ['3.1', 'mm', '', 0],
    ['6.9', 'mm', '', 0],
  ])('the value %s in a box for %s gets the question "%s"', (typed, unit, question, meantMm) => {
    const asked = doubted(typed, unit, 4.75);
    if (question === '') {
      expect(asked).toBeNull();
      return;
    }
    expect(asked?.question).toBe(question);
    expect(asked?.meantMm).toBeCloseTo(meantMm, 9);
  });

  test('the value meant goes into the box and is not doubted again', () => {
    const asked = doubted('0,475', 'mm', 4.75, 'comma');
    expect(asked).toEqual({
      question: '0,475 mm? Did you mean 4,75 mm?',
      meantMm: 4.75,
      meantTyped: '4,75 mm',
    });
    expect(doubted(asked?.meantTyped ?? '', 'mm', 4.75, 'comma')).toBeNull();
  });

  test('a value no slip explains is asked about all the same, with nothing put in its place', () => {
    expect(doubted('12', 'mm', 4.75)).toEqual({
      question: '12 mm? About 4.75 mm is expected here. Measure again, or confirm it.',
      meantMm: null,
      meantTyped: null,
    });
    expect(doubted('0', 'mm', 4.75)?.meantMm).toBeNull();
    expect(doubted('-4.75', 'mm', 4.75)?.meantMm).toBeNull();
  });

  test('a value is not doubted where nothing is expected', () => {
    expect(doubted('47.5', 'mm', 0)).toBeNull();
    expect(doubted('47.5', 'mm', Number.NaN)).toBeNull();
  });

  test('every slip of every wall between half and one and a half times the expected is caught', () => {
    for (let wall = 2.4; wall <= 7.1; wall += 0.1) {
      for (const slip of [10, 100, 1000, 0.1, 0.01, 0.001, 25.4, 1 / 25.4]) {
        const asked = doubt({
          valueMm: wall * slip,
          expectedMm: 4.75,
          typed: String(wall * slip),
          unit: 'mm',
          decimalSign: 'point',
        });
        expect(asked, `${wall} × ${slip}`).not.toBeNull();
      }
    }
  });
});

import { describe, expect, it } from 'vitest';
import { permissibleUnbalance } from '../../src/calc/cover/permissibleUnbalance.ts';

describe('ISO 21940-11 permissible unbalance', () => {
  it('permissible unbalance is 9549 G·m/n', () => {
    const { value } = permissibleUnbalance({ gradeMmPerS: 1, massKg: 1, speedRpm: 1 });
    expect(value).toBeCloseTo(9549.3, 1);
  });
  it('permissible unbalance is 6.015 G·W/N in ounce-inches and pounds', () => {
    const pound = 0.45359237;
    const ounceInch = (28.349523125 * 25.4) / 1;
    const { value } = permissibleUnbalance({ gradeMmPerS: 1, massKg: pound, speedRpm: 1 });
    expect(value! / ounceInch).toBeCloseTo(6.0153, 4);
  });
  it('grade G 6.3 at 3000 rpm permits 20.05 g·mm per kg', () => {
    const { value } = permissibleUnbalance({ gradeMmPerS: 6.3, massKg: 1, speedRpm: 3000 });
    expect(value).toBeCloseTo(20.05, 2);
  });
});

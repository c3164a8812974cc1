import { expect, it } from 'vitest';
import { inReadersUnit } from '../../shared/quantity/inReadersUnit.ts';

const inches = { lengthUnit: 'in', decimalSign: 'point' } as const;

it('a refusal of a schema says its figures in the units of an inch shop', () => {
  const said = (sentence: string) => inReadersUnit(sentence, inches);
  expect(said('The wall is 127 mm; it must be at most 254 mm.')).toBe(
    'The wall is 5 in; it must be at most 10 in.',
  );
  // 1 ksi is 6.894757 MPa, 1 psi a thousandth of it (NIST SP 811).
  expect(said('Yield strength is 6.894757 MPa')).toBe('Yield strength is 1000 psi');
  expect(said('it must be at least 206842.72 MPa and')).toBe('it must be at least 30000 ksi and');
  expect(said('at least -100 °C and at most 100 °C.')).toBe('at least −148 °F and at most 212 °F.');
  expect(said('40 N·m')).toBe('29.502 lb·ft');
  expect(said('the bolt circle; give it in mm.')).toBe('the bolt circle; give it in inches.');
  expect(said('25 mm² stays')).toBe('25 mm² stays');
});

it('a refusal of a schema is left as it is for a metric shop', () => {
  expect(inReadersUnit('at most 254 mm', { lengthUnit: 'mm', decimalSign: 'point' })).toBe('at most 254 mm');
});

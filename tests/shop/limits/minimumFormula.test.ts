import { describe, expect, it } from 'vitest';
import { formulaTold } from '../../../shared/quantity/formulaSign.ts';
import { minimumByFormula, readFormula } from '../../../src/shop/limits/minimumFormula.ts';

const COVER = {
  nominalWallMm: 4.826,
  studCount: 6,
  studCircleDiameterMm: 286,
  trackInnerDiameterMm: 200,
  trackOuterDiameterMm: 260,
};

const IN = 25.4;

/** Worked by hand. */
const GIVES: readonly (readonly [formula: string, mm: number, working: string])[] = [
  ['max(0.165 in, 85 % of new wall)', 0.165 * IN, 'max(0.165 in, 0.85 × 0.190 in) = 0.165 in'],
  ['max(4.0 mm, 85 % of new wall)', 4.1021, 'max(4.0 mm, 0.85 × 4.826 mm) = 4.1021 mm'],
  [
    'if stud count >= 6 then 0.160 in else 0.165 in',
    0.16 * IN,
    '(if 6 >= 6 then 0.160 in else 0.165 in) = 0.160 in',
  ],
  [
    'IF Stud  Count > 6 THEN 0.160 in ELSE 0.165 in',
    0.165 * IN,
    '(if 6 > 6 then 0.160 in else 0.165 in) = 0.165 in',
  ],
  ['if new wall = 0.190 in then 4 mm else 5 mm', 4, '(if 4.826 mm = 0.190 in then 4 mm else 5 mm) = 4.00 mm'],
  ['if bolt circle < 12 in then 4 mm else 5 mm', 4, '(if 286.00 mm < 12 in then 4 mm else 5 mm) = 4.00 mm'],
  ['if bolt circle <= 11 in then 4 mm else 5 mm', 5, '(if 286.00 mm <= 11 in then 4 mm else 5 mm) = 5.00 mm'],
  ['1-3/16 in', 1.1875 * IN, '1-3/16 in = 1.1875 in'],
  ['1 3/16 in', 1.1875 * IN, '1 3/16 in = 1.1875 in'],
  ['2 in - 1-3/16 in', 0.8125 * IN, '2 in − 1-3/16 in = 0.8125 in'],
  ['2 in-3/16 in', 1.8125 * IN, '2 in − 3/16 in = 1.8125 in'],
  ['2 × 3/16 in', 0.375 * IN, '2 × 3/16 in = 0.375 in'],
  ['1 in ÷ (1/2 in) × 1 mm', 2, '1 in ÷ (1/2 in) × 1 mm = 0.07874 in'],
  ['new wall * 85 / 100', 4.1021, '0.190 in × 85 ÷ 100 = 0.1615 in'],
  ['new wall − 20 thou', 4.318, '0.190 in − 20 thou = 0.170 in'],
  ['50 % of 50 % of new wall', 1.2065, '0.5 × 0.5 × 0.190 in = 0.0475 in'],
  ['85 % of (new wall - 1 mm) + 1 mm', 0.85 * 3.826 + 1, '0.85 × (4.826 mm − 1 mm) + 1 mm = 4.2521 mm'],
  ['10 mm - 4 mm - 1 mm', 5, '10 mm − 4 mm − 1 mm = 5.00 mm'],
  ['1 mm + 2 × 3 mm', 7, '1 mm + 2 × 3 mm = 7.00 mm'],
  [
    '(friction surface outside - friction surface inside) / 15',
    4,
    '(10.23622 in − 7.87402 in) ÷ 15 = 0.15748 in',
  ],
  [
    'min(5 mm, if stud count = 6 then 4 mm else 3 mm)',
    4,
    'min(5 mm, if 6 = 6 then 4 mm else 3 mm) = 4.00 mm',
  ],
  ['4.0 mm + 0.010"', 4.254, '4.0 mm + 0.010" = 4.254 mm'],
];

describe('a minimum wall by formula', () => {
  it.each(GIVES)('%s', (formula, mm, working) => {
    const gives = minimumByFormula(formula, COVER, 'in');
    expect(gives.mm).toBeCloseTo(mm, 10);
    expect(gives.working).toBe(working);
  });

  it.each([
    ['1 mm / (stud count - 6)', '1 mm ÷ (6 − 6) is no length above zero'],
    ['0 mm / (stud count - 6)', '0 mm ÷ (6 − 6) is no length above zero'],
    ['new wall - 0.2 in', '0.190 in − 0.2 in = −0.010 in is no length above zero'],
    ['0 mm', '0 mm = 0.00 mm is no length above zero'],
  ])('%s gives none, and says why', (formula, working) => {
    expect(minimumByFormula(formula, COVER, 'in')).toEqual({ mm: null, working });
  });

  it('is kept with a point and shown with the shop’s sign', () => {
    const read = readFormula('  max(4,2 mm;  85,5 % of new wall) ', 'comma');
    expect(read).toMatchObject({ ok: true, kept: 'max(4.2 mm, 85.5 % of new wall)' });
    expect(formulaTold('max(4.2 mm, 85.5 % of new wall)', 'comma')).toBe('max(4,2 mm; 85,5 % of new wall)');
    expect(formulaTold('max(4.2 mm, 85.5 % of new wall)', 'point')).toBe('max(4.2 mm, 85.5 % of new wall)');
    expect(readFormula('max(1 mm; 2 mm)', 'point')).toMatchObject({ ok: true, kept: 'max(1 mm, 2 mm)' });
  });
});

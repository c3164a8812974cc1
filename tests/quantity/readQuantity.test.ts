import { unit } from 'mathjs';
import { describe, expect, test } from 'vitest';
import type { DecimalSign } from '../../shared/quantity/plainNumber.ts';
import { readQuantity } from '../../shared/quantity/readQuantity.ts';
import type { Kind, UnitName } from '../../shared/quantity/units.ts';
import { UNITS } from '../../shared/quantity/units.ts';

const FIELD = 'Wall at station 3';

function read(typed: string, kind: Kind, unitName: UnitName, decimalSign: DecimalSign = 'point') {
  return readQuantity({ field: FIELD, typed, kind, unit: unitName, decimalSign });
}

// 4.4482216152605 N × 0.3048 m
const LB_FT = 1.3558179483314003;

// Factors: NIST SP 811 appendix B (inch, pound, standard gravity are exact by definition).
describe('a length comes out in mm, exactly', () => {
  test.each<[string, UnitName, number]>([
    ['0.187', 'in', 4.7498],
    ['.187', 'in', 4.7498],
    ['3/16', 'in', 4.7625],
    ['1 3/16', 'in', 30.1625],
    ['1-3/16', 'in', 30.1625],
    ['1–3/16', 'in', 30.1625],
    ['3/16 in', 'mm', 4.7625],
    ['3/16"', 'mm', 4.7625],
    ['3/16″', 'mm', 4.7625],
    ['3/16”', 'mm', 4.7625],
    ['3/16 in.', 'mm', 4.7625],
    ['1 ½ in', 'mm', 38.1],
    ['1½ in', 'mm', 38.1],
    ['⅜ in', 'mm', 9.525],
    ['3⁄16 in', 'mm', 4.7625],
    ['19/16', 'in', 30.1625],
    ['12 in', 'mm', 304.8],
    ['12', 'in', 304.8],
    ['0.1 inch', 'mm', 2.54],
    ['4.92', 'mm', 4.92],
    ['4.92mm', 'in', 4.92],
    ['4.92 MM', 'in', 4.92],
    ['00004.92', 'mm', 4.92],
    ['187 thou', 'mm', 4.7498],
    ['187', 'thou', 4.7498],
    ['0.492 cm', 'mm', 4.92],
    ['4920 µm', 'mm', 4.92],
    ['4920 μm', 'mm', 4.92],
    ['4920um', 'mm', 4.92],
    ['7', 'mm', 7],
    ['  4.92  ', 'mm', 4.92],
    ['4.92\u00a0mm', 'mm', 4.92],
    ['-0.06', 'mm', -0.06],
    ['−0.06', 'mm', -0.06],
    ['+0.06', 'mm', 0.06],
    ['-1-3/16', 'in', -30.1625],
    ['-0', 'mm', 0],
  ])('the text %s in a box for %s is %d mm', (typed, unitName, mm) => {
    const answer = read(typed, 'length', unitName);
    expect(answer).toMatchObject({ ok: true, value: mm, typed: typed.trim() });
  });

  test('a quantity keeps its text, the unit read and the unit typed', () => {
    expect(read(' 3/16" ', 'length', 'mm')).toEqual({
      ok: true,
      value: 4.7625,
      typed: '3/16"',
      unit: 'in',
      unitTyped: '"',
    });
    expect(read('4.92', 'length', 'mm')).toMatchObject({ unit: 'mm', unitTyped: null });
  });
});

describe('other kinds', () => {
  test.each<[string, Kind, UnitName, number]>([
    // 1 lbf·ft = 4.4482216152605 N × 0.3048 m, 1 lbf·in a twelfth of it (NIST SP 811).
    ['1 lb-ft', 'torque', 'N·m', LB_FT],
    ['1 ft-lb', 'torque', 'N·m', LB_FT],
    ['1 lbf·ft', 'torque', 'N·m', LB_FT],
    ['1 lbf-ft', 'torque', 'N·m', LB_FT],
    ['1 lbf⋅ft', 'torque', 'N·m', LB_FT],
    ['1 lb ft', 'torque', 'N·m', LB_FT],
    ['1 ft-lbs', 'torque', 'N·m', LB_FT],
    ['12 in-lb', 'torque', 'N·m', LB_FT],
    ['12 lbf·in', 'torque', 'N·m', LB_FT],
    ['1', 'torque', 'lb·ft', LB_FT],
    ['37 N·m', 'torque', 'lb·ft', 37],
    ['37 Nm', 'torque', 'lb·ft', 37],
    ['37 N-m', 'torque', 'lb·ft', 37],
    ['37 N m', 'torque', 'lb·ft', 37],
    ['37', 'torque', 'N·m', 37],
    // 1 psi = 6894.757293168361… Pa (NIST SP 811: 6.894757 E+03).
    ['1000 psi', 'pressure', 'MPa', 6.894757293168361],
    ['120 ksi', 'pressure', 'MPa', 827.3708751802034],
    ['700 kPa', 'pressure', 'MPa', 0.7],
    ['7 bar', 'pressure', 'MPa', 0.7],
    ['0.7 MPa', 'pressure', 'psi', 0.7],
    ['827 N/mm²', 'pressure', 'psi', 827],
    ['206 GPa', 'pressure', 'MPa', 206000],
    ['250 rpm', 'speed', 'rpm', 250],
    ['100 ft/min', 'cutting-speed', 'm/min', 30.48],
    ['100 sfm', 'cutting-speed', 'm/min', 30.48],
    ['0.006 in/rev', 'feed', 'mm/rev', 0.1524],
    ['22 1/2', 'angle', 'deg', 22.5],
    ['22.5°', 'angle', 'deg', 22.5],
    ['7.87 g/cm3', 'density', 'kg/m³', 7870],
    ['32 °F', 'temperature', '°C', 0],
    ['212', 'temperature', '°F', 100],
    ['-40 F', 'temperature', '°C', -40],
    ['51.9 W/(m K)', 'conductivity', 'Btu/(h·ft·°F)', 51.9],
    ['10 lb', 'mass', 'kg', 4.5359237],
    ['600 g', 'mass', 'kg', 0.6],
    ['2 min', 'time', 's', 120],
    ['15 %', 'ratio', '', 0.15],
    ['15', 'ratio', '%', 0.15],
    ['0.15', 'ratio', '', 0.15],
    ['1/8', 'ratio', '', 0.125],
    ['1.5', 'number', '', 1.5],
    ['6', 'count', '', 6],
  ])('the text %s is read as %s', (typed, kind, unitName, value) => {
    expect(read(typed, kind, unitName)).toMatchObject({ ok: true, value });
  });
});

describe('what cannot be taken is refused by the name of its field, with what was typed and what would do', () => {
  const plain = (typed: string) =>
    `${FIELD}: "${typed}" is not a plain number. Type a length, such as 4.92 mm.`;
  test.each<[string, string]>([
    ['', `${FIELD}: nothing was typed. Type a length, such as 4.92 mm.`],
    ['   ', `${FIELD}: nothing was typed. Type a length, such as 4.92 mm.`],
    ['about five', plain('about five')],
    ['0x10', plain('0x10')],
    ['1e3', plain('1e3')],
    ['1e-3', plain('1e-3')],
    ['1E3', plain('1E3')],
    ['Infinity', plain('Infinity')],
    ['-Infinity', plain('-Infinity')],
    ['NaN', plain('NaN')],
    ['--1', plain('--1')],
    ['+-1', plain('+-1')],
    ['1 -3/16', plain('1 -3/16')],
    ['3/16/2', plain('3/16/2')],
    ['4.9.2', plain('4.9.2')],
    ['4 92', plain('4 92')],
    ['/16', plain('/16')],
    ['3/', plain('3/')],
    ['1.5/2', plain('1.5/2')],
    ['.', plain('.')],
    ['mm', plain('mm')],
    ['٤٫٩', plain('٤٫٩')],
    [
      '4.',
      `${FIELD}: "4." ends in a decimal point or comma; digits are missing. Type a length, such as 4.92 mm.`,
    ],
    ['3/0', `${FIELD}: "3/0" divides by zero. Type a length, such as 4.92 mm.`],
    ['1 0/0 in', `${FIELD}: "1 0/0 in" divides by zero. Type a length, such as 4.92 mm.`],
    [
      '1 19/16 in',
      `${FIELD}: "1 19/16 in" has a fraction of one or more after a whole number. Type a length, such as 4.92 mm.`,
    ],
    [
      '3/15 in',
      `${FIELD}: "3/15 in" has 15 under the line; a fraction of an inch has 2, 4, 8, 16, 32, 64 or 128. Type a decimal, such as 0.187 in.`,
    ],
    [
      '4.9 psi',
      `${FIELD}: "4.9 psi" cannot be used. psi is a unit of pressure or stress, and this is a length; use mm, cm, µm, in or thou.`,
    ],
    [
      '4.9 furlong',
      `${FIELD}: "4.9 furlong" cannot be used. "furlong" is not a unit for a length; use mm, cm, µm, in or thou.`,
    ],
    [
      '4.9 m m',
      `${FIELD}: "4.9 m m" cannot be used. "m m" is not a unit for a length; use mm, cm, µm, in or thou.`,
    ],
  ])('the text %j is refused by the name of its field', (typed, message) => {
    expect(read(typed, 'length', 'mm')).toEqual({ ok: false, message });
  });

  test('a page of text is cut short in the sentence', () => {
    const answer = read('9'.repeat(5000), 'length', 'mm');
    expect(answer).toMatchObject({
      ok: false,
      message: expect.stringContaining(`"${'9'.repeat(40)}…" is too long`),
    });
  });

  test('a torque in units of length, a count with a half and a number with a unit are refused', () => {
    expect(read('4.9 mm', 'torque', 'N·m')).toMatchObject({
      message: `${FIELD}: "4.9 mm" cannot be used. mm is a unit of length, and this is a torque; use N·m, lb·ft or lb·in.`,
    });
    expect(read('4.5', 'count', '')).toMatchObject({
      message: `${FIELD}: "4.5" is not a whole number. Type a count, such as 6.`,
    });
    expect(read('2 mm', 'number', '')).toMatchObject({
      message: `${FIELD}: "2 mm" cannot be used. mm is a unit of length, and this is a number; type the number without a unit.`,
    });
  });

  test('a unit that is none of the field’s is a fault of the program, not of the person', () => {
    expect(() => read('4.9', 'length', 'psi')).toThrow(/no unit of a length/);
  });
});

describe('the decimal sign of the shop', () => {
  test.each<[string, DecimalSign, UnitName, string, string]>([
    ['4,92', 'point', 'mm', '4.92', 'has a comma, and this shop writes decimals with a point'],
    ['-0,06 mm', 'point', 'mm', '-0.06 mm', 'has a comma, and this shop writes decimals with a point'],
    [',187', 'point', 'in', '0.187', 'has a comma, and this shop writes decimals with a point'],
    ['1,250', 'point', 'mm', '1.250', 'has a comma, and this shop writes decimals with a point'],
    ['4.92', 'comma', 'mm', '4,92', 'has a point, and this shop writes decimals with a comma'],
    ['4.92 mm', 'comma', 'in', '4,92 mm', 'has a point, and this shop writes decimals with a comma'],
    ['1,250.5', 'point', 'mm', '1250.5', 'has a thousands separator'],
    ['1.250,5', 'point', 'mm', '1250.5', 'has a thousands separator'],
    ['1,250.5', 'comma', 'mm', '1250,5', 'has a thousands separator'],
    ['1.250,5', 'comma', 'mm', '1250,5', 'has a thousands separator'],
    ['1 250', 'point', 'mm', '1250', 'has a thousands separator'],
    ['1\u202f250,5', 'comma', 'mm', '1250,5', 'has a thousands separator'],
    ['3/16', 'point', 'mm', '3/16 in', 'is a fraction of mm; only inches are read in fractions'],
    ['1 3/16 mm', 'point', 'in', '1 3/16 in', 'is a fraction of mm; only inches are read in fractions'],
  ])(
    'the text %s with a decimal %s in a box for %s is refused, and %s is offered',
    (typed, sign, unitName, meant, why) => {
      expect(read(typed, 'length', unitName, sign)).toEqual({
        ok: false,
        message: `${FIELD}: "${typed.trim()}" ${why}. Did you mean ${meant}?`,
        meant,
      });
      expect(read(meant, 'length', unitName, sign).ok).toBe(true);
    },
  );

  test('a comma decimal is read where the comma is set', () => {
    expect(read('4,92', 'length', 'mm', 'comma')).toMatchObject({ ok: true, value: 4.92 });
    expect(read('3/16 in', 'length', 'mm', 'comma')).toMatchObject({ ok: true, value: 4.7625 });
    expect(read('', 'length', 'mm', 'comma')).toMatchObject({ message: expect.stringContaining('4,92 mm') });
  });
});

test('every unit’s factor agrees with mathjs', () => {
  const spelled: Partial<Record<UnitName, [string, string]>> = {
    cm: ['cm', 'mm'],
    µm: ['um', 'mm'],
    in: ['in', 'mm'],
    thou: ['mil', 'mm'],
    lb·ft: ['lbf ft', 'N m'],
    lb·in: ['lbf in', 'N m'],
    GPa: ['GPa', 'MPa'],
    kPa: ['kPa', 'MPa'],
    bar: ['bar', 'MPa'],
    psi: ['psi', 'MPa'],
    ksi: ['kip/in^2', 'MPa'],
    'ft/min': ['ft/minute', 'm/minute'],
    'in/rev': ['in', 'mm'],
    g: ['g', 'kg'],
    lb: ['lbm', 'kg'],
    'g/cm³': ['g/cm^3', 'kg/m^3'],
    min: ['minute', 's'],
    'lb/in³': ['lbm/in^3', 'kg/m^3'],
    'psi/in': ['psi/in', 'MPa/mm'],
    'Btu/(h·ft·°F)': ['BTU/(hour ft degF)', 'W/(m K)'],
    'Btu/(lb·°F)': ['BTU/(lbm degF)', 'J/(kg K)'],
  };
  let compared = 0;
  for (const row of UNITS) {
    const names = spelled[row.name];
    if (!names || row.name === '') continue;
    const [from, to] = names;
    const theirs = from.startsWith('kip')
      ? 1000 * unit(1, 'psi').toNumber('MPa')
      : unit(1, from).toNumber(to);
    const ours = Number(row.factor.num) / Number(row.factor.den);
    expect(Math.abs(ours / theirs - 1), row.name).toBeLessThan(1e-9);
    compared += 1;
  }
  expect(compared).toBe(Object.keys(spelled).length);
});

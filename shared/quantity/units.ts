import { type Ratio, ratioOf, times } from './ratio.ts';

/** What can be typed, the unit the program keeps it in, and an example for either kind of shop. */
export const KINDS = {
  length: { name: 'a length', keptIn: 'mm', example: '4.92 mm', inInches: '0.187 in' },
  torque: { name: 'a torque', keptIn: 'N·m', example: '37 N·m', inInches: '27 lb·ft' },
  pressure: { name: 'a pressure or stress', keptIn: 'MPa', example: '0.7 MPa', inInches: '100 psi' },
  speed: { name: 'a turning speed', keptIn: 'rpm', example: '250 rpm', inInches: '250 rpm' },
  'cutting-speed': { name: 'a cutting speed', keptIn: 'm/min', example: '120 m/min', inInches: '460 ft/min' },
  feed: { name: 'a feed', keptIn: 'mm/rev', example: '0.15 mm/rev', inInches: '0.006 in/rev' },
  angle: { name: 'an angle', keptIn: 'deg', example: '45 deg', inInches: '45 deg' },
  mass: { name: 'a mass', keptIn: 'kg', example: '6.2 kg', inInches: '6.5 lb' },
  density: { name: 'a density', keptIn: 'kg/m³', example: '7870 kg/m³', inInches: '0.284 lb/in³' },
  temperature: { name: 'a temperature', keptIn: '°C', example: '90 °C', inInches: '200 °F' },
  'lining-modulus': {
    name: 'a lining modulus',
    keptIn: 'MPa/mm',
    example: '60 MPa/mm',
    inInches: '220000 psi/in',
  },
  conductivity: {
    name: 'a thermal conductivity',
    keptIn: 'W/(m·K)',
    example: '51.9 W/(m·K)',
    inInches: '30 Btu/(h·ft·°F)',
  },
  'specific-heat': {
    name: 'a specific heat',
    keptIn: 'J/(kg·K)',
    example: '486 J/(kg·K)',
    inInches: '0.116 Btu/(lb·°F)',
  },
  time: { name: 'a time', keptIn: 's', example: '0.6 s', inInches: '0.6 s' },
  ratio: { name: 'a ratio', keptIn: '', example: '0.15', inInches: '0.15' },
  number: { name: 'a number', keptIn: '', example: '1.5', inInches: '1.5' },
  count: { name: 'a count', keptIn: '', example: '6', inInches: '6' },
} as const;
export type Kind = keyof typeof KINDS;

export type UnitName =
  | 'mm'
  | 'cm'
  | 'µm'
  | 'in'
  | 'thou'
  | 'N·m'
  | 'lb·ft'
  | 'lb·in'
  | 'MPa'
  | 'GPa'
  | 'kPa'
  | 'bar'
  | 'psi'
  | 'ksi'
  | 'rpm'
  | 'm/min'
  | 'ft/min'
  | 'mm/rev'
  | 'in/rev'
  | 'deg'
  | 'kg'
  | 'g'
  | 'lb'
  | 'kg/m³'
  | 'g/cm³'
  | 'lb/in³'
  | '°C'
  | '°F'
  | 'MPa/mm'
  | 'psi/in'
  | 'W/(m·K)'
  | 'Btu/(h·ft·°F)'
  | 'J/(kg·K)'
  | 'Btu/(lb·°F)'
  | 's'
  | 'min'
  | '%'
  | '';

export interface UnitRow {
  readonly name: UnitName;
  readonly kind: Kind;
  /** Spellings as `plainUnit` makes them; of a torque without its product sign: `lbf·ft` is `lbfft`. */
  readonly spelled: readonly string[];
  /** How many of the kept unit one of these is, exactly. */
  readonly factor: Ratio;
  /** What zero of it is in the kept unit, where that is not zero: 0 °F is −160/9 °C. */
  readonly zero?: Ratio;
  /** Whether people write `3/16` of it. A fraction of a millimeter is a slip. */
  readonly fractions: boolean;
}

const INCH_MM = ratioOf('25.4');
const ONE = ratioOf('1');
// International pound 0.45359237 kg and standard gravity 9.80665 m/s² (NIST SP 811, both exact).
const POUND_KG = ratioOf('0.45359237');
const POUND_FORCE_N = times(POUND_KG, ratioOf('9.80665'));
const POUND_INCH_NM = times(POUND_FORCE_N, ratioOf('0.0254'));
const POUND_FOOT_NM = times(POUND_FORCE_N, ratioOf('0.3048'));
const PSI_MPA: Ratio = {
  num: POUND_FORCE_N.num * ratioOf('645.16').den,
  den: POUND_FORCE_N.den * ratioOf('645.16').num,
};
const POUND_FOOT = ['lbft', 'ftlb', 'lbfft', 'ftlbf', 'ftlbs', 'lbsft'];
const POUND_INCH = ['inlb', 'lbin', 'inlbf', 'lbfin', 'inlbs', 'lbsin'];

/** One of them for each of the other. */
function per(one: Ratio, other: Ratio): Ratio {
  return { num: one.num * other.den, den: one.den * other.num };
}

const CUBIC_INCH_M3 = times(times(ratioOf('0.0254'), ratioOf('0.0254')), ratioOf('0.0254'));
const FAHRENHEIT_K: Ratio = { num: 5n, den: 9n };
// International table Btu (NIST SP 811, exact): 1 Btu/(lb·°F) is 4186.8 J/(kg·K).
const BTU_J = times(times(ratioOf('4186.8'), POUND_KG), FAHRENHEIT_K);

function row(
  kind: Kind,
  name: UnitName,
  factor: Ratio,
  spelled: readonly string[],
  fractions = false,
): UnitRow {
  return { kind, name, factor, spelled, fractions };
}

/** Every unit that can be typed. */
export const UNITS: readonly UnitRow[] = [
  row('length', 'mm', ONE, ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters']),
  row('length', 'cm', ratioOf('10'), ['cm']),
  row('length', 'µm', ratioOf('0.001'), ['um', 'micron', 'microns']),
  row('length', 'in', INCH_MM, ['in', 'in.', '"', 'inch', 'inches'], true),
  row('length', 'thou', times(INCH_MM, ratioOf('0.001')), ['thou']),
  row('torque', 'N·m', ONE, ['nm']),
  row('torque', 'lb·ft', POUND_FOOT_NM, POUND_FOOT, true),
  row('torque', 'lb·in', POUND_INCH_NM, POUND_INCH, true),
  row('pressure', 'MPa', ONE, ['mpa', 'n/mm2']),
  row('pressure', 'GPa', ratioOf('1000'), ['gpa']),
  row('pressure', 'kPa', ratioOf('0.001'), ['kpa']),
  row('pressure', 'bar', ratioOf('0.1'), ['bar']),
  row('pressure', 'psi', PSI_MPA, ['psi'], true),
  row('pressure', 'ksi', times(PSI_MPA, ratioOf('1000')), ['ksi'], true),
  row('speed', 'rpm', ONE, ['rpm', 'r/min', 'rev/min']),
  row('cutting-speed', 'm/min', ONE, ['m/min']),
  row('cutting-speed', 'ft/min', ratioOf('0.3048'), ['ft/min', 'fpm', 'sfm']),
  row('feed', 'mm/rev', ONE, ['mm/rev', 'mm/r']),
  row('feed', 'in/rev', INCH_MM, ['in/rev', 'in/r', 'ipr']),
  row('angle', 'deg', ONE, ['deg', '°', 'degree', 'degrees'], true),
  row('mass', 'kg', ONE, ['kg']),
  row('mass', 'g', ratioOf('0.001'), ['g']),
  row('mass', 'lb', POUND_KG, ['lb', 'lbs'], true),
  row('density', 'kg/m³', ONE, ['kg/m3']),
  row('density', 'g/cm³', ratioOf('1000'), ['g/cm3']),
  row('density', 'lb/in³', per(POUND_KG, CUBIC_INCH_M3), ['lb/in3']),
  row('temperature', '°C', ONE, ['°c', 'c', 'degc']),
  {
    ...row('temperature', '°F', FAHRENHEIT_K, ['°f', 'f', 'degf']),
    zero: { num: -160n, den: 9n },
  },
  row('lining-modulus', 'MPa/mm', ONE, ['mpa/mm']),
  row('lining-modulus', 'psi/in', per(PSI_MPA, INCH_MM), ['psi/in']),
  row('conductivity', 'W/(m·K)', ONE, ['w/(m·k)', 'w/(m k)', 'w/mk', 'w/m-k']),
  row(
    'conductivity',
    'Btu/(h·ft·°F)',
    per(BTU_J, times(times(ratioOf('3600'), ratioOf('0.3048')), FAHRENHEIT_K)),
    ['btu/(h·ft·°f)', 'btu/(hr·ft·°f)', 'btu/hr-ft-f', 'btu/h-ft-f'],
  ),
  row('specific-heat', 'J/(kg·K)', ONE, ['j/(kg·k)', 'j/(kg k)', 'j/kgk', 'j/kg-k']),
  row('specific-heat', 'Btu/(lb·°F)', ratioOf('4186.8'), ['btu/(lb·°f)', 'btu/lb-f', 'btu/(lb °f)']),
  row('time', 's', ONE, ['s', 'sec']),
  row('time', 'min', ratioOf('60'), ['min'], true),
  row('ratio', '%', ratioOf('0.01'), ['%']),
  row('ratio', '', ONE, [], true),
  row('number', '', ONE, [], true),
  row('count', '', ONE, []),
];

/** The spelling used for comparing: `µM` (either code point) → `um`, `in²` → `in2`, `mm / rev` → `mm/rev`. */
function plainUnit(text: string): string {
  return text
    .replace(/[µμ]/g, 'u')
    .replace(/[″”“]|''|’’|′′/g, '"')
    .replace(/²/g, '2')
    .replace(/³/g, '3')
    .toLowerCase()
    .replace(/ ?\/ ?/g, '/');
}

/** `lbf · ft` → `lbfft`: only torques are written as a product. */
function joined(plain: string): string {
  // No look behind: browsers before 2023 cannot read a pattern that has one, and with it the whole module.
  return plain.replace(/(\p{L}) ?[-·⋅•∙* ] ?(?=\p{L})/gu, '$1');
}

/** The unit a piece of text names, whatever its kind. */
export function unitNamed(text: string): UnitRow | undefined {
  const plain = plainUnit(text);
  const product = joined(plain);
  return UNITS.find((unit) => unit.spelled.includes(unit.kind === 'torque' ? product : plain));
}

const OF_INCH_SHOPS: ReadonlySet<UnitName> = new Set([
  'in',
  'thou',
  'lb·ft',
  'lb·in',
  'psi',
  'ksi',
  'ft/min',
  'in/rev',
  'lb',
  'lb/in³',
  '°F',
  'psi/in',
  'Btu/(h·ft·°F)',
  'Btu/(lb·°F)',
]);

/** An example of what can be typed, for whoever works in this unit. */
export function exampleOf(kind: Kind, unit: UnitName): string {
  return OF_INCH_SHOPS.has(unit) ? KINDS[kind].inInches : KINDS[kind].example;
}

/** Units of one kind as a person would list them: "mm, cm, µm, in or thou". */
export function unitsInWords(kind: Kind): string {
  const names = UNITS.filter((unit) => unit.kind === kind && unit.name !== '').map((unit) => unit.name);
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`;
}

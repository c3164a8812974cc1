import {
  CONDUCTIVITY,
  DENSITY,
  FORCE,
  HEAT_FLUX,
  HOTTER,
  LINING_MODULUS,
  MASS,
  MODULUS,
  PRESSURE,
  ROUGHNESS,
  SMALL_MASS,
  SPECIFIC_HEAT,
  STRESS,
  SURFACE_SPEED,
  UNBALANCE,
  WAVINESS,
} from './print.ts';

const BESIDE = [
  CONDUCTIVITY,
  DENSITY,
  FORCE,
  HEAT_FLUX,
  HOTTER,
  LINING_MODULUS,
  MASS,
  MODULUS,
  PRESSURE,
  ROUGHNESS,
  SMALL_MASS,
  SPECIFIC_HEAT,
  STRESS,
  SURFACE_SPEED,
  UNBALANCE,
  WAVINESS,
];
const UNITS = new Set([
  ...BESIDE.flatMap(({ mm, in: inch }) => [mm.unit, inch.unit]),
  ...['mm', 'in', '%', 'N·m', 'lb·ft', 'N', 'rpm', 'min', 's', 'h', 'AM', 'PM', 'MB', 'kB', '×'],
]);

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
/** The longest first, so that the whole of a unit is found. */
const ANY_UNIT = [...UNITS]
  .sort((a, b) => b.length - a.length)
  .map(escaped)
  .join('|');

const BEFORE_UNIT = new RegExp(`(?<=\\d) (?=(?:${ANY_UNIT})(?![\\p{L}\\d]))`, 'gu');
const AFTER_SIGN = /(?<=[±≈Ø≤≥<>]) (?=[\d.−-])/gu;
/** "29 900" is one figure. */
const THOUSANDS = /(?<=\d) (?=\d{3}(?!\d))/gu;

const NO_BREAK = '\u00a0';

/** A number and what it is read with, its unit, ±, Ø or its thousands, never parted at the end of a line. */
export function keepTogether(text: string): string {
  return text.replace(BEFORE_UNIT, NO_BREAK).replace(AFTER_SIGN, NO_BREAK).replace(THOUSANDS, NO_BREAK);
}

/** What is typed stays as it is; of all else only what lies between tags. */
const PIECES = /<(script|style|textarea)\b[\s\S]*?<\/\1>|<(?:"[^"]*"|[^">])*>|[^<]+/g;

/** The same for what is seen of a page. */
export function keepTogetherIn(html: string): string {
  return html.replace(PIECES, (piece) => (piece.startsWith('<') ? piece : keepTogether(piece)));
}

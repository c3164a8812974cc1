/** How numbers are printed: rounded once, here, in the unit the person has chosen. */
export type LengthUnit = 'mm' | 'in';

const MM_PER_INCH = 25.4;
export const MINUS = '−';

/** A plain number with a fixed count of decimals and a true minus sign; never "−0.000". */
export function printNumber(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `${MINUS}${text}` : text;
}

/** Decimals used for readings of a micrometer or indicator (fine) and of a caliper or scale (coarse). */
export type Fineness = 'fine' | 'coarse';
const DECIMALS = { mm: { fine: 3, coarse: 2 }, in: { fine: 4, coarse: 3 } } as const;

/** `4.529` or `0.1783`: the figure alone, for tables and dimension lines. */
export function lengthFigure(mm: number, unit: LengthUnit, fineness: Fineness = 'fine'): string {
  return printNumber(unit === 'in' ? mm / MM_PER_INCH : mm, DECIMALS[unit][fineness]);
}

/** `4.529 mm` or `0.1783 in`. */
export function printLength(mm: number, unit: LengthUnit, fineness: Fineness = 'fine'): string {
  return `${lengthFigure(mm, unit, fineness)} ${unit}`;
}

/** `286 mm`, `4.3 mm`, `11.25 in`: no more figures than it has, for sizes that are given and not measured. */
export function briefLength(mm: number, unit: LengthUnit): string {
  const value = unit === 'in' ? mm / MM_PER_INCH : mm;
  return `${Number(value.toFixed(DECIMALS[unit].fine))} ${unit}`;
}

/**
 * A length beside the limit it is compared with: gets decimals until the two print differently, so that
 * 4.2996 mm against 4.300 mm never reads "4.300 mm is below 4.300 mm".
 */
export function printAgainst(
  mm: number,
  limitMm: number,
  unit: LengthUnit,
  fineness: Fineness = 'fine',
): string {
  const scale = unit === 'in' ? MM_PER_INCH : 1;
  const start = DECIMALS[unit][fineness];
  if (Math.abs(mm - limitMm) <= 1e-9) return printLength(limitMm, unit, fineness);
  for (let decimals = start; decimals < start + 4; decimals++) {
    if (printNumber(mm / scale, decimals) !== printNumber(limitMm / scale, decimals)) {
      return `${printNumber(mm / scale, decimals)} ${unit}`;
    }
  }
  return `${printNumber(mm / scale, start + 4)} ${unit}`;
}

const NM_PER_LB_FT = 1.3558179483314;

/** `37.0 N·m`, or `27.3 lb-ft` where lengths are in inches. */
export function printTorque(Nm: number, unit: LengthUnit, decimals = 0): string {
  return unit === 'in'
    ? `${printNumber(Nm / NM_PER_LB_FT, decimals)} lb-ft`
    : `${printNumber(Nm, decimals)} N·m`;
}

/** `92.3 %`; never rounds up to 100 % or down across the limit it is compared with. */
export function printShare(share: number, decimals = 1): string {
  const factor = 10 ** (decimals + 2);
  const cut = share < 1 ? Math.floor(share * factor + 1e-9) / factor : share;
  return `${(cut * 100).toFixed(decimals)} %`;
}

/** "a", "a and b", "a, b and c". */
export function listInWords(parts: readonly string[]): string {
  if (parts.length < 2) return parts.join('');
  return `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}

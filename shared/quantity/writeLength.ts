import { type DecimalSign, withSign } from './plainNumber.ts';
import { readQuantity } from './readQuantity.ts';

const MM_PER_INCH = 25.4;
const MOST_DECIMALS = { in: 6, mm: 9 } as const;

/**
 * A stored length as text for a box that will be read again: bare in the chosen unit if that reads back to the very
 * same number, else with its unit in mm. Not for showing (that is `printLength`): nothing is rounded away here.
 */
export function writeLength(mm: number, unit: 'mm' | 'in', decimalSign: DecimalSign): string {
  const value = unit === 'in' ? mm / MM_PER_INCH : mm;
  for (let decimals = 0; decimals <= MOST_DECIMALS[unit]; decimals++) {
    const typed = withSign(value.toFixed(decimals), decimalSign);
    const read = readQuantity({ field: '', typed, kind: 'length', unit, decimalSign });
    if (read.ok && read.value === mm) return typed;
  }
  if (unit === 'in') {
    const typed = writeLength(mm, 'mm', decimalSign);
    return `${typed} mm`;
  }
  return withSign(mm.toFixed(MOST_DECIMALS.mm), decimalSign);
}

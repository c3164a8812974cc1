import { readQuantity } from '../quantity/readQuantity.ts';
import { quoted } from '../quantity/tidy.ts';

/** Half of the last digit that a length is ever shown with. */
const ROUNDING_MM = 0.0005;
const DUST_MM = 1e-9;

/**
 * Why a text cannot have been typed for a length; null when it can. It is read in either unit and with either decimal
 * sign, because what is kept does not say which the person wrote in; empty says nothing.
 */
export function notTypedFor(what: string, typed: string, valueMm: number | null): string | null {
  if (typed === '') return null;
  if (valueMm === null) return `${quoted(typed)} was typed, but ${what} has no value. Send both, or neither.`;
  const readings = (['mm', 'in'] as const).flatMap((unit) =>
    (['point', 'comma'] as const).map((decimalSign) =>
      readQuantity({ field: what, typed, kind: 'length', unit, decimalSign }),
    ),
  );
  const read = readings.some((one) => one.ok && Math.abs(one.value - valueMm) <= ROUNDING_MM + DUST_MM);
  if (read) return null;
  return `${quoted(typed)} was typed, which does not read as ${valueMm} mm for ${what}. Send what was typed, or leave it empty.`;
}

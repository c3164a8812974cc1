import type { DecimalSign } from './plainNumber.ts';

/** A formula as it is kept, whatever sign the shop writes: `.` before decimals, `,` between arguments. */
export function formulaKept(typed: string, sign: DecimalSign): string {
  return (sign === 'comma' ? typed.replaceAll(',', '.') : typed).replaceAll(';', ',');
}

/** A kept formula in the shop's sign: with commas before decimals, `;` parts arguments. */
export function formulaTold(kept: string, sign: DecimalSign): string {
  return sign === 'comma' ? kept.replaceAll(',', ';').replaceAll('.', ',') : kept;
}

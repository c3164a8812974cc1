import { BARE_UNIT, kindOf, type TypedKind } from '../../shared/quantity/bareUnit.ts';
import { readQuantity } from '../../shared/quantity/readQuantity.ts';

/** The demo shop works in inches: its figures are written so here, and kept as the same number typed would be. */
export function inches(value: number): number {
  return us(String(value), 'length');
}

/** `100` psi, `46` ksi, `30` lb·ft, `460` ft/min: in the unit a box of an inch shop is labeled with. */
export function us(typed: string | number, kind: TypedKind): number {
  const asked = { field: 'Demo figure', typed: String(typed), kind: kindOf(kind), unit: BARE_UNIT[kind].in };
  const read = readQuantity({ ...asked, decimalSign: 'point' });
  if (!read.ok) throw new Error(read.message);
  return read.value;
}

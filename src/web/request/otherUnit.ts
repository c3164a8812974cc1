import type { LengthUnit } from '../../../shared/words/print.ts';
import type { Frame } from '../../../views/frame.ts';
import type { TypedForm } from './typed.ts';

/** The frame of a page whose typed values lie in its address: they keep what they meant when the unit changes. */
export function keepingUnits(frame: Frame, form: Pick<TypedForm, 'withUnits'>): Frame {
  return { ...frame, address: form.withUnits(frame.address) };
}

/** The same page in another unit, where its address says one. */
export function inOtherUnit(address: string, to: LengthUnit): string {
  const [path = '/', search] = address.split('?', 2);
  const query = new URLSearchParams(search ?? '');
  if (!query.has('unit')) return address;
  query.set('unit', to);
  return `${path}?${query}`;
}

import type { LengthUnit } from '../../../shared/words/print.ts';
import { splitRepeats } from './typed.ts';

/** Fields whose bare numbers are lengths; the digits after a dot are a row. */
const LENGTHS = new Set(
  'w f d r mr md lt lo lh minimum cut allowance runout circle trackInner trackOuter nominal pull holeCircle tipRoom nutHeight nutTolerance nutCountersink nutBearing washer threadStart threadEnd projection tolerance pilot fillet pitchDiameter jointCircle total within depth standsOut separator hub hubLeast gapLeast gapMost shims shim gaugeU gaugeStep gaugeSpread faceU cutU'.split(
    ' ',
  ),
);
const BARE = /^[-+−]?[\d.,/ -]+$/;

/**
 * The same page with lengths shown in the other unit. Bare numbers already typed keep what they meant: each gets the
 * unit it was typed in. An address that says no unit is left as it is, for the person's own choice then counts.
 */
export function inOtherUnit(address: string, to: LengthUnit): string {
  const [path = '/', search] = address.split('?', 2);
  const query = new URLSearchParams(search ?? '');
  const from = query.get('unit');
  if (from === null || from === to || (from !== 'mm' && from !== 'in')) return address;
  for (const [name, typed] of [...query]) {
    if (!LENGTHS.has(name.replace(/\.\d+$/, '')) || typed.trim() === '') continue;
    query.set(
      name,
      splitRepeats(typed)
        .map((part) => (BARE.test(part) ? `${part} ${from}` : part))
        .join('; '),
    );
  }
  query.set('unit', to);
  return `${path}?${query}`;
}

import { asking, type Doubt } from '../../../shared/quantity/doubt.ts';
import { asTyped, lengthText, type Meant, slipped, type TypedLength } from '../../../shared/quantity/slip.ts';

/** Pads of one cover lie this close, or three times as far apart as the others (common practice, no source). */
const NEAR_MM = 0.05;

/**
 * Pad heights are read from any plane, so each is held against the others: one far off, which a slip would bring back
 * among them, is asked about. null where there is nothing to ask, or fewer than three.
 */
export function padHeightDoubt(
  heights: readonly TypedLength[],
): { readonly index: number; readonly doubt: Doubt } | null {
  if (heights.length < 3) return null;
  for (const [index, typed] of heights.entries()) {
    const others = heights.filter((_, i) => i !== index).map(({ valueMm }) => valueMm);
    const middle = median(others);
    const reach = Math.max(NEAR_MM, 3 * Math.max(...others.map((mm) => Math.abs(mm - middle))));
    if (Math.abs(typed.valueMm - middle) <= reach) continue;
    const meant = likely(typed).find(({ mm }) => Math.abs(mm - middle) <= reach);
    if (meant === undefined) continue;
    const why = `The other pads are at about ${lengthText(middle, typed.unit, typed.decimalSign)}.`;
    return { index, doubt: asking(`${asTyped(typed)}? ${why}`, meant, 'Check it, or confirm it.') };
  }
  return null;
}

/** One decimal, the other unit or a sign: heights near zero lie a hundredth of anything away. */
function likely(typed: TypedLength): readonly Meant[] {
  const { valueMm, unit, decimalSign } = typed;
  const times = ({ mm }: Meant) => Math.abs(Math.log10(Math.abs(valueMm / mm)));
  const turned = { mm: -valueMm, typed: lengthText(-valueMm, unit, decimalSign) };
  return [...slipped(typed).filter((one) => times(one) < 1.5), turned];
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length / 2;
  return (sorted[Math.ceil(half) - 1]! + sorted[Math.floor(half)]!) / 2;
}

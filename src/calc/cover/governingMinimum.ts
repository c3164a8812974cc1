import type { Answer } from '../../../shared/words/answer.ts';
import { printNumber } from '../../../shared/words/print.ts';

export interface GoverningMinimum {
  readonly mm: number;
  readonly from: 'maker' | 'shop';
  readonly source: string;
  /** The smaller figure, where both are given. */
  readonly otherMm: number | null;
  readonly answer: Answer;
}

/**
 * Which minimum wall governs: the larger of the maker's figure and the shop's.   t_min = max(maker, shop)
 *
 * Valid: null when neither stands, and then nothing may be judged. Of two equal figures the maker's is named.
 * Source: calculations of this program: no limit is shipped as if it were a law
 * Example: maker 4.1, shop 4.3 → 4.3, the shop's (tests/calc/cover/governingMinimum.test.ts)
 */
export function governingMinimum({
  makerMm,
  makerSource,
  shopMm,
  shopSource,
  shopWorking = null,
}: {
  readonly makerMm: number | null;
  readonly makerSource: string | null;
  readonly shopMm: number | null;
  readonly shopSource: string | null;
  /** How its formula gave that, or why it gave none; null where it has none. */
  readonly shopWorking?: string | null;
}): GoverningMinimum | null {
  if (makerMm === null && shopMm === null) return null;
  const maker = makerMm !== null && (shopMm === null || makerMm >= shopMm - 1e-9);
  const mm = maker ? makerMm! : shopMm!;
  const source = maker
    ? (makerSource ?? 'maker’s figure, source not given')
    : (shopSource ?? 'shop’s figure, who set it not given');
  const figure = (x: number | null) => (x === null ? 'none' : `${printNumber(x, 3)} mm`);
  return {
    mm,
    from: maker ? 'maker' : 'shop',
    source,
    otherMm: maker ? shopMm : makerMm,
    answer: {
      symbol: 't_min',
      value: mm,
      unit: 'mm',
      how: [
        {
          formula: 't_min = the larger of the maker’s figure and the shop’s',
          numbers: `maker ${figure(makerMm)}, shop ${figure(shopMm)}${shopWorking === null ? '' : ` by its formula, ${shopWorking}`}: ${figure(mm)}`,
          source,
        },
      ],
      warnings: [],
    },
  };
}

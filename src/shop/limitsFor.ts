import type { Family, ShopCriteria } from '../../shared/words/catalogue.ts';
import type { CoverCheckInput, CoverCriteria, GaugeAtHand } from '../../shared/words/cover.ts';
import { printDay } from '../../shared/words/day.ts';
import { inventedSource } from '../../shared/words/demo.ts';

/** Limits typed for one cover, which go before the shop's; null where nothing was typed. */
export type TypedLimits = Pick<CoverCriteria, 'minimumWallMm' | 'faceRunoutLimitMm' | 'cleanUpAllowanceMm'>;

const NOTHING_TYPED: TypedLimits = { minimumWallMm: null, faceRunoutLimitMm: null, cleanUpAllowanceMm: null };

type OwnMinimum = Pick<
  Family,
  'shopMinimumWallMm' | 'shopMinimumWallBy' | 'shopMinimumWallOn' | 'shopMinimumWallSource'
>;

/** "TO, Nov 24, 2026"; in older records the text that was entered then. */
function ownSource({
  shopMinimumWallBy: by,
  shopMinimumWallOn: on,
  shopMinimumWallSource,
}: OwnMinimum): string {
  if (by == null) return shopMinimumWallSource ?? 'the shop';
  return on == null ? by : `${by}, ${printDay(on)}`;
}

/** The minimum wall the shop works to: the cover type's own, else the one for every cover; and who set it. */
export function shopMinimum(
  family: OwnMinimum | null,
  criteria: Pick<ShopCriteria, 'minimumWallMm' | 'shopName'>,
): { readonly mm: number | null; readonly source: string | null } {
  const { minimumWallMm: mm, shopName } = criteria;
  // What the demo made up never goes before a figure of the shop.
  const own = mm === null || family === null || !inventedSource(ownSource(family));
  if (family !== null && family.shopMinimumWallMm !== null && own) {
    return { mm: family.shopMinimumWallMm, source: ownSource(family) };
  }
  return { mm, source: mm === null ? null : `the shop limits of ${shopName}` };
}

function makerMinimum(family: Family | null, { minimumWallMm }: Pick<ShopCriteria, 'minimumWallMm'>) {
  const source = family?.makerMinimumWallSource ?? null;
  const counts = family !== null && (minimumWallMm === null || !inventedSource(source));
  return {
    makerMinimumWallMm: counts ? family.makerMinimumWallMm : null,
    makerMinimumWallSource: counts ? source : null,
  };
}

/** What the shop and its catalog ask of a cover, beside what was measured: the same for a job and the quick page. */
export function limitsFor(
  family: Family | null,
  criteria: ShopCriteria,
  atHand: readonly GaugeAtHand[],
  typed: TypedLimits = NOTHING_TYPED,
): Pick<
  CoverCheckInput,
  'criteria' | 'makerMinimumWallMm' | 'makerMinimumWallSource' | 'familyLimits' | 'gaugesAtHand' | 'balance'
> {
  const minimum =
    typed.minimumWallMm === null
      ? shopMinimum(family, criteria)
      : { mm: typed.minimumWallMm, source: 'typed on this page' };
  return {
    criteria: {
      minimumWallMm: minimum.mm,
      minimumWallSource: minimum.source,
      faceRunoutLimitMm: typed.faceRunoutLimitMm ?? criteria.faceRunoutLimitMm,
      cleanUpAllowanceMm: typed.cleanUpAllowanceMm ?? criteria.cleanUpAllowanceMm,
      confidence: criteria.confidence,
      typicalCutMm: criteria.typicalCutMm,
    },
    ...makerMinimum(family, criteria),
    familyLimits: family?.limits ?? null,
    gaugesAtHand: atHand,
    balance: criteria.balance ?? null,
  };
}

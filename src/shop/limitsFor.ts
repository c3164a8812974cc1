import type { Family, ShopCriteria } from '../../shared/words/catalogue.ts';
import type { CoverCheckInput, CoverCriteria, GaugeAtHand } from '../../shared/words/cover.ts';
import { printDay } from '../../shared/words/day.ts';
import { inventedSource } from '../../shared/words/demo.ts';
import { Refusal } from '../../shared/words/refusal.ts';
import { type Measures, minimumByFormula, readFormula } from './limits/minimumFormula.ts';
import { chosenWeights } from './limits/whatStops.ts';

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

/** The minimum wall of the shop for one cover, and who set it; where a formula gave it, or gave none, how. */
export interface ShopMinimum {
  readonly mm: number | null;
  readonly source: string | null;
  readonly formula: string | null;
  readonly working: string | null;
}

type LimitsAsked = Pick<ShopCriteria, 'minimumWallMm' | 'minimumWallFormula' | 'shopName' | 'lengthUnit'>;

/** Whether the shop has a minimum for every cover, a figure or a formula. */
function setsMinimum({ minimumWallMm, minimumWallFormula }: LimitsAsked): boolean {
  return minimumWallMm !== null || (minimumWallFormula ?? null) !== null;
}

/**
 * The minimum wall the shop works to: the cover type's own, else the one for every cover, a figure or what the formula
 * gives for this cover. `cover` is measured where there is no cover type.
 */
export function shopMinimum(
  family: (OwnMinimum & Measures) | null,
  criteria: LimitsAsked,
  cover: Measures | null = family,
): ShopMinimum {
  const { minimumWallMm: mm, minimumWallFormula: formula = null, shopName, lengthUnit } = criteria;
  const figure = (value: number | null, source: string | null) =>
    ({ mm: value, source, formula: null, working: null }) as const;
  // What the demo made up never goes before a figure of the shop.
  const own = family !== null && (!setsMinimum(criteria) || !inventedSource(ownSource(family)));
  if (own && family.shopMinimumWallMm !== null) return figure(family.shopMinimumWallMm, ownSource(family));
  const source = `the shop limits of ${shopName}`;
  if (formula === null || cover === null) return figure(mm, mm === null ? null : source);
  return { ...minimumByFormula(formula, cover, lengthUnit), source, formula };
}

function makerMinimum(family: Family | null, criteria: LimitsAsked) {
  const source = family?.makerMinimumWallSource ?? null;
  const counts = family !== null && (!setsMinimum(criteria) || !inventedSource(source));
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
  {
    typed = NOTHING_TYPED,
    cover = family,
  }: { readonly typed?: TypedLimits; readonly cover?: Measures | null } = {},
): Pick<
  CoverCheckInput,
  'criteria' | 'makerMinimumWallMm' | 'makerMinimumWallSource' | 'familyLimits' | 'gaugesAtHand' | 'balance'
> {
  const minimum =
    typed.minimumWallMm === null
      ? shopMinimum(family, criteria, cover)
      : { mm: typed.minimumWallMm, source: 'typed on this page', formula: null, working: null };
  const whatStops = chosenWeights(criteria);
  return {
    criteria: {
      minimumWallMm: minimum.mm,
      minimumWallSource: minimum.source,
      minimumWallFormula: minimum.formula,
      minimumWallWorking: minimum.working,
      faceRunoutLimitMm: typed.faceRunoutLimitMm ?? criteria.faceRunoutLimitMm,
      cleanUpAllowanceMm: typed.cleanUpAllowanceMm ?? criteria.cleanUpAllowanceMm,
      confidence: criteria.confidence,
      typicalCutMm: criteria.typicalCutMm,
      ...(whatStops && { whatStops }),
    },
    ...makerMinimum(family, criteria),
    familyLimits: family?.limits ?? null,
    gaugesAtHand: atHand,
    balance: criteria.balance ?? null,
  };
}

const FORMULA = 'criteria.minimumWallFormula';

/** What was sent with a formula for the minimum wall, with the figure it gives for that cover. */
export function withFormulaFigure<Asked extends CoverCheckInput>(asked: Asked): Asked {
  const formula = asked.criteria?.minimumWallFormula ?? null;
  if (asked.criteria === null || formula === null) return asked;
  const refuse = (message: string) =>
    new Refusal('formula', [{ path: FORMULA, message: `The minimum wall as a formula: ${message}` }]);
  const read = readFormula(formula, 'point');
  if (!read.ok) throw refuse(read.message);
  const { mm, working } = minimumByFormula(read.kept, asked.cover, 'mm');
  if (mm === null) throw refuse(`for this cover, ${working}.`);
  const criteria = {
    ...asked.criteria,
    minimumWallMm: mm,
    minimumWallFormula: read.kept,
    minimumWallWorking: working,
  };
  return { ...asked, criteria };
}

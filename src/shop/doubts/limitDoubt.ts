import { asking, type Doubt } from '../../../shared/quantity/doubt.ts';
import type { Writing } from '../../../shared/quantity/fieldText.ts';
import { asTyped, lengthText, meantBetween, type TypedLength } from '../../../shared/quantity/slip.ts';
import type { Family, ShopCriteria } from '../../../shared/words/catalogue.ts';
import { minimumByFormula } from '../limits/minimumFormula.ts';

/** A limit on a length, of the shop or of one cover. */
export type LimitName = 'minimumWallMm' | 'faceRunoutLimitMm' | 'cleanUpAllowanceMm' | 'typicalCutMm';

/** Nobody needs more than this (common practice, no source). */
const MOST_MM: Readonly<Record<Exclude<LimitName, 'minimumWallMm'>, number>> = {
  faceRunoutLimitMm: 0.5,
  cleanUpAllowanceMm: 0.5,
  typicalCutMm: 1.5,
};
const USUAL_WORD: Readonly<Record<keyof typeof MOST_MM, string>> = {
  faceRunoutLimitMm: 'A face runout limit',
  cleanUpAllowanceMm: 'A clean-up allowance',
  typicalCutMm: 'A typical cut',
};

type WallsNew = readonly Pick<Family, 'name' | 'nominalWallMm'>[];

/**
 * Asks about a limit that can hardly be meant: a minimum wall below half or above the whole of a new wall it is for, a
 * runout limit above 0.5 mm, and so on. `covers` are those the minimum is for. null where there is nothing to ask.
 */
export function limitDoubt(limit: LimitName, typed: TypedLength, covers: WallsNew): Doubt | null {
  if (limit === 'minimumWallMm') return minimumDoubt(typed, covers);
  const mostMm = MOST_MM[limit];
  if (typed.valueMm <= mostMm + 1e-9) return null;
  // About: 0.02 in, not 0.019685.
  const roundMm = typed.unit === 'mm' ? mostMm : Number((mostMm / 25.4).toPrecision(1)) * 25.4;
  const most = lengthText(roundMm, typed.unit, typed.decimalSign);
  return asked(typed, `${USUAL_WORD[limit]} is at most about ${most}.`, mostMm / 100, mostMm);
}

/** A minimum below half, or above the whole, of the new wall it is for. */
function hardlyMeant(minimumMm: number, { nominalWallMm }: WallsNew[number]): boolean {
  const [least, most] = [nominalWallMm / 2 - 1e-9, nominalWallMm + 1e-9];
  return nominalWallMm > 0 && (minimumMm < least || minimumMm > most);
}

/** The same question of what a formula gives for each cover type; null where there is nothing to ask. */
export function formulaDoubt(
  formula: string,
  covers: readonly Family[],
  { lengthUnit, decimalSign }: Writing,
): string | null {
  for (const cover of covers) {
    const { mm, working } = minimumByFormula(formula, cover, lengthUnit);
    if (mm === null || !hardlyMeant(mm, cover)) continue;
    return `${working}? The new wall of ${cover.name} is ${lengthText(cover.nominalWallMm, lengthUnit, decimalSign)}.`;
  }
  return null;
}

function minimumDoubt(typed: TypedLength, covers: WallsNew): Doubt | null {
  const { valueMm, unit, decimalSign } = typed;
  const against = covers.find((cover) => hardlyMeant(valueMm, cover));
  if (against === undefined) return null;
  const { name, nominalWallMm } = against;
  const whose = name === '' ? 'The new wall' : `The new wall of ${name}`;
  return asked(
    typed,
    `${whose} is ${lengthText(nominalWallMm, unit, decimalSign)}.`,
    nominalWallMm / 2,
    nominalWallMm,
  );
}

/** The cover types a minimum for every type is for: those with none of their own. */
export function coversUnder(families: readonly Family[]): readonly Family[] {
  return families.filter(({ shopMinimumWallMm }) => shopMinimumWallMm === null);
}

/** Which limits of the shop were typed as what: those that stand as they were saved are not asked about again. */
export function limitDoubts(
  typed: Readonly<Partial<Record<LimitName, TypedLength | null>>>,
  standing: Pick<ShopCriteria, LimitName> | null,
  covers: WallsNew,
): readonly { readonly limit: LimitName; readonly doubt: Doubt }[] {
  return (Object.keys(typed) as LimitName[]).flatMap((limit) => {
    const length = typed[limit] ?? null;
    if (length === null || length.valueMm === (standing?.[limit] ?? null)) return [];
    const doubt = limitDoubt(limit, length, covers);
    return doubt === null ? [] : [{ limit, doubt }];
  });
}

function asked(typed: TypedLength, why: string, leastMm: number, mostMm: number): Doubt {
  return asking(
    `${asTyped(typed)}? ${why}`,
    meantBetween(typed, leastMm, mostMm),
    'Check it, or confirm it.',
  );
}

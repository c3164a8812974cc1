import { asking, type Doubt } from '../../../shared/quantity/doubt.ts';
import { asTyped, lengthText, meantBetween, type TypedLength } from '../../../shared/quantity/slip.ts';
import type { Family, ShopCriteria } from '../../../shared/words/catalogue.ts';

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

function minimumDoubt(typed: TypedLength, covers: WallsNew): Doubt | null {
  const { valueMm, unit, decimalSign } = typed;
  const against = covers.find(
    ({ nominalWallMm }) =>
      nominalWallMm > 0 && (valueMm < nominalWallMm / 2 - 1e-9 || valueMm > nominalWallMm + 1e-9),
  );
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
export function coversUnder(families: readonly Family[]): WallsNew {
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

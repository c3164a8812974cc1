import type { CatalogueStack } from '../../../shared/words/catalogue.ts';
import type { FlexplateFound, FlexplateSeen } from '../../../shared/words/stud/choices.ts';
import { stacksByThickness } from '../../calc/stud/numbers/stacksByThickness.ts';
import type { NamedEntry } from '../studChoices.ts';
import { sameThread } from './threads.ts';

export interface FlexplatesFound {
  readonly matches: readonly FlexplateFound[];
  /** The nearest of those that are not the one. */
  readonly nearest: FlexplateFound | null;
  /** As thick as measured, but of the style that was not seen. */
  readonly ofOtherStyle: readonly FlexplateFound[];
}

/** The stacks of the catalog it may be. */
export function flexplatesLike(
  { totalMm, withinMm, thread, holeCount, style }: FlexplateSeen & { readonly totalMm: number },
  stacks: readonly NamedEntry<CatalogueStack>[],
): FlexplatesFound {
  const asked = stacks.filter(
    ({ body }) =>
      (thread === null || sameThread(body.nut?.thread ?? null, thread)) &&
      (holeCount === null || body.stack.holeCount === holeCount),
  );
  const found = stacksByThickness({
    measuredMm: totalMm,
    toleranceMm: withinMm,
    stacks: asked.map(({ id, body }) => ({ id, stack: body.stack })),
  }).flatMap((one): FlexplateFound[] => {
    const stack = asked.find(({ id }) => id === one.id)?.body;
    return stack ? [{ ...one, stack }] : [];
  });
  const ofStyle = found.filter(({ stack }) => style === null || stack.stack.style === style);
  return {
    matches: ofStyle.filter(({ within }) => within),
    nearest: ofStyle.find(({ within }) => !within) ?? null,
    ofOtherStyle: style === null ? [] : found.filter((one) => one.within && !ofStyle.includes(one)),
  };
}

import { Refusal } from '../../../../shared/words/refusal.ts';

const MOST_ROUNDS = 100;
/** Settled long before this, or going in a circle. */
const SOON = 12;

/**
 * Which springs of the lining are pressed: begin with all, take out those that would pull, put back those that would
 * be pressed, until none changes. A set that goes in a circle is led out by going half the way from then on.
 *
 * `squeezedBy` answers the shortening of every spring when only the active ones work.
 * Valid: a convex problem, as springs that only push are; a set that will not settle refuses.
 * Source: active set (semismooth Newton) for one-sided contact: Hintermüller, Ito & Kunisch 2003 (from memory)
 * Throws: a Refusal where the springs do not settle.
 * Example: two springs under a tilted plate (tests/calc/plate/lining/activeSet.test.ts)
 */
export function activeSet({
  count,
  squeezedBy,
}: {
  readonly count: number;
  readonly squeezedBy: (active: Uint8Array) => Float64Array;
}): { readonly active: Uint8Array; readonly rounds: number } {
  const active = new Uint8Array(count).fill(1);
  const way = new Float64Array(count);
  for (let round = 1; round <= MOST_ROUNDS; round++) {
    const squeezed = squeezedBy(active);
    const share = round > SOON ? 0.5 : 1;
    let wrong = 0;
    for (let i = 0; i < count; i++) {
      const now = squeezed[i]!;
      way[i] = way[i]! + share * (now - way[i]!);
      if ((now > 0 ? 1 : 0) !== active[i]) wrong++;
    }
    if (wrong === 0) return { active, rounds: round };
    for (let i = 0; i < count; i++) active[i] = way[i]! > 0 ? 1 : 0;
  }
  throw new Refusal('plate-unsolved', [
    {
      path: '',
      message: `Where the lining touches the friction surface did not settle in ${MOST_ROUNDS} rounds. The lining is far stiffer than the cover can follow; check the lining's modulus and the walls.`,
    },
  ]);
}

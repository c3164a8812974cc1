/**
 * What a way is expected to cost.   E = c + p · r
 *
 * c cost of the way · r cost of a comeback, both in the shop's money · p chance that it comes back [1]
 * Valid: c and r of one money, 0 ≤ p ≤ 1; one comeback, no goodwill lost, nobody hurt.
 * Source: mean of a cost that falls with chance p, first principles
 * Example: 120 and 5 % of 900 → 165 (tests/calc/judge/expectedCost.test.ts)
 */
export function expectedCost({
  cost,
  comeback,
  chance,
}: {
  readonly cost: number;
  readonly comeback: number;
  readonly chance: number;
}): number {
  return cost + chance * comeback;
}

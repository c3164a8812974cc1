import { expect, it } from 'vitest';
import { expectedCost } from '../../../src/calc/judge/expectedCost.ts';

it('120 and 5 % of 900 → 165; never back 120, always back 1020', () => {
  const at = (chance: number) => expectedCost({ cost: 120, comeback: 900, chance });
  expect([at(0.05), at(0), at(1)]).toEqual([165, 120, 1020]);
});

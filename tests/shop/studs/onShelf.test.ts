import { expect, test } from 'vitest';
import { demoCriteria } from '../../../data/demo/criteria.ts';
import { demoNuts, demoWashers } from '../../../data/demo/nuts.ts';
import { demoStacks } from '../../../data/demo/stacks.ts';
import { demoStuds } from '../../../data/demo/studs.ts';
import { counterSlip } from '../../../src/shop/studs/counterSlip.ts';
import { studsHeld } from '../../../src/shop/studs/onShelf.ts';

const STUDS = demoStuds.map(({ id, entry }) => ({ id, body: entry }));
const SHELF = {
  nuts: demoNuts.map(({ id, entry }) => ({ id, body: entry })),
  washers: demoWashers.map(({ id, entry }) => ({ id, body: entry })),
};
const { entry: stack } = demoStacks.find(({ id }) => id === 'two-piece-four-3-8-24')!;
const ASKED = { stack, pullForwardMm: 4, joint: null, criteria: demoCriteria, unit: 'in' as const };
const copy = <T>(of: T): T => JSON.parse(JSON.stringify(of));

test('studs held against the same stack again are not worked out again', () => {
  const held = studsHeld(STUDS, ASKED, undefined);
  expect(studsHeld(copy(STUDS), copy(ASKED), undefined)).toBe(held);
  const slip = counterSlip(ASKED, held.shown!, held.choices, null, SHELF);
  expect(counterSlip(copy(ASKED), copy(held.shown!), copy(held.choices), null, copy(SHELF))).toBe(slip);
});

test('with anything else asked, set or on the shelf they are held anew', () => {
  const held = studsHeld(STUDS, ASKED, undefined);
  const strict = { ...ASKED, criteria: { ...demoCriteria, protrusionThreads: 30 } };
  expect(studsHeld(STUDS, strict, undefined).shown?.match.fits).not.toBe(held.shown?.match.fits);
  expect(studsHeld(STUDS, { ...ASKED, pullForwardMm: 9 }, undefined)).not.toEqual(held);
  expect(studsHeld(STUDS, { ...ASKED, unit: 'mm' }, undefined)).not.toEqual(held);
  const other = held.choices.at(-1)!.match.id;
  expect(studsHeld(STUDS, ASKED, other).shown?.match.id).toBe(other);
  const best = held.shown!.match.id;
  const without = studsHeld(
    STUDS.filter(({ id }) => id !== best),
    ASKED,
    undefined,
  );
  expect(without.choices.map(({ match }) => match.id)).not.toContain(best);
  const longer = copy(STUDS).map((one) =>
    one.id === best
      ? { ...one, body: { ...one.body, stud: { ...one.body.stud, lengthToleranceMm: 2 } } }
      : one,
  );
  const loose = studsHeld(longer, ASKED, best);
  expect(loose.tolerances?.anyFails).toBeGreaterThan(held.tolerances!.anyFails);
});

test('a slip is made anew with another shelf, torque or stud not to take', () => {
  const { shown, choices } = studsHeld(STUDS, ASKED, undefined);
  const slip = counterSlip(ASKED, shown!, choices, null, SHELF);
  expect(counterSlip(ASKED, shown!, choices, null, { ...SHELF, nuts: [] }).kit.nut).toBeNull();
  expect(slip.kit.nut).not.toBeNull();
  expect(counterSlip(ASKED, shown!, choices, 'maker', SHELF).torqueFrom).toBe('maker');
  expect(slip.notThis).not.toBeNull();
  expect(counterSlip(ASKED, shown!, [shown!], null, SHELF).notThis).toBeNull();
});

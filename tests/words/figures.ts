import { expect, test } from 'vitest';
import type { LengthUnit } from '../../shared/words/print.ts';
import { hyphensForMinus, inOtherUnit } from './otherUnit.ts';
import type { Came } from './visit.ts';

/** What a walk with lengths in one unit met, and the tests of its figures; `take` is given every page that came. */
export function figuresIn(unit: LengthUnit) {
  const came: Pick<Came, 'path' | 'status'>[] = [];
  const found: Record<'unit' | 'minus', Set<string>> = { unit: new Set(), minus: new Set() };
  return {
    take: (one: Came) => {
      came.push({ path: one.path, status: one.status });
      const at = one.path.split('?')[0];
      for (const words of inOtherUnit(one, unit)) found.unit.add(`${at}: ${words}`);
      for (const words of hyphensForMinus(one)) found.minus.add(`${at}: ${words}`);
    },
    tests: () => {
      test('the walk came past every kind of page, and past answers and refusals', () => {
        for (const path of [
          '/cover?',
          '/stud?',
          '/stud/slip',
          '/jobs/1005/sheet',
          '/jobs/1001/tag',
          '/how/words',
        ])
          expect(came.filter((one) => one.path.startsWith(path)).length, path).toBeGreaterThan(0);
        expect(came.filter(({ status }) => status === 200).length).toBeGreaterThan(150);
        expect(came.filter(({ status }) => status === 422).length).toBeGreaterThan(40);
      });

      test('no page, answer or refusal shows a figure or a label in another unit', () => {
        expect([...found.unit]).toEqual([]);
      });

      test('every figure below zero has the minus sign', () => {
        expect([...found.minus]).toEqual([]);
      });
    },
  };
}

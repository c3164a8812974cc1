import { expect, it } from 'vitest';
import { checkStud } from '../../../../src/calc/stud/checkStud.ts';
import { onResurfacedPads } from '../../../../src/calc/stud/reach/onResurfacedPads.ts';
import { EXAMPLE, withStud } from '../example.ts';

// First principles: the stack is the same, so whatever the pad loses stands out farther.
it('a stud on a resurfaced pad reaches that much farther, seated and pushed back, and nothing else of it moves', () => {
  const stud = { ...EXAMPLE.stud, threadStartMm: 1, threadEndMm: 20, projectionMm: 23 };
  const now = onResurfacedPads(stud, 0.5);
  expect([now.threadStartMm, now.threadEndMm, now.projectionMm]).toEqual([1.5, 20.5, 23.5]);
  expect({ ...now, threadStartMm: 1, threadEndMm: 20, projectionMm: 23 }).toEqual(stud);
  const [before, after] = [stud, now].map((one) => checkStud(withStud(one), 'mm').reach);
  expect(after!.seatedMm - before!.seatedMm).toBeCloseTo(0.5, 12);
});

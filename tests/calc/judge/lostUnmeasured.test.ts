import { expect, it } from 'vitest';
import { coverInput } from '../../../data/examples/coverSets.ts';
import { checkCover, checkWhatIsThere } from '../../../src/calc/cover/checkCover.ts';

const bare = { ...coverInput(), stations: [], marks: [] };

it('a cracked cover without a wall is replaced, and nothing is claimed of its thickness', () => {
  const check = checkWhatIsThere({ ...bare, crackTest: 'found' });
  expect(check).toMatchObject({
    verdict: 'replace',
    cut: null,
    leastWall: null,
    stations: [],
    cutsLeft: null,
  });
  expect(check.because).toContain('A crack was found.');
  expect(check.because).toContain('No wall was measured.');
  expect(check.findings.find(({ id }) => id === 'wall-measured')).toMatchObject({
    status: 'not-checked',
    value: null,
  });
  expect(check.findings.map(({ id }) => id)).not.toContain('wall-left');
  expect(check.answers).toEqual({});
});

it('so is one with a fault beyond repair; any other cover needs a wall', () => {
  const final = [{ item: 'pads', final: true }];
  expect(checkWhatIsThere({ ...bare, inspectionFailures: final }).verdict).toBe('replace');
  const mendable = [{ item: 'pads', final: false }];
  expect(() => checkWhatIsThere({ ...bare, inspectionFailures: mendable })).toThrow('No station is measured');
});

it('a cracked cover whose wall was measured is answered as before', () => {
  const measured = { ...coverInput(), crackTest: 'found' as const };
  expect(checkWhatIsThere(measured)).toEqual(checkCover(measured));
});

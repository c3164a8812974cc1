import { expect, it } from 'vitest';
import type { StudCheckInput } from '../../../../shared/words/stud/stud.ts';
import { checkStud } from '../../../../src/calc/stud/checkStud.ts';
import { EXAMPLE, withStack } from '../example.ts';

const shop = { ...EXAMPLE.criteria, leastPullForwardMm: 3.175, mostPullForwardMm: 4.7625 };
const gap = (pullForwardMm: number, input: StudCheckInput = { ...EXAMPLE, criteria: shop }) =>
  checkStud({ ...input, pullForwardMm }).findings.find(({ id }) => id === 'pull-forward');

it('a gap outside what the shop wants is a caution, at the ends it passes', () => {
  expect(gap(3.175)!.status).toBe('pass');
  expect(gap(4.7625)!.status).toBe('pass');
  expect(gap(3.17)!.status).toBe('caution');
  expect(gap(5)).toMatchObject({ status: 'caution', limit: 4.7625 });
  expect(checkStud({ ...EXAMPLE, criteria: shop, pullForwardMm: 5 }).fits).toBe('with-care');
});

it('asks for shims under the pads where the gap is too large, and never where it is too small', () => {
  expect(gap(5)!.sentence).toContain('put the same shim under every pad');
  expect(gap(3)!.sentence).toContain('Shims only make it smaller');
  expect(gap(4)!.sentence).toBe('The pull-forward gap is 4.00 mm; 3.17 mm to 4.76 mm is allowed.');
});

it('the maker’s figure of a stack comes before the shop’s, and with neither there is no finding', () => {
  const maker = withStack({ leastPullForwardMm: 5, mostPullForwardMm: 7 }, { ...EXAMPLE, criteria: shop });
  expect(gap(6, maker)).toMatchObject({ status: 'pass', source: 'the maker’s figure for this flexplate' });
  expect(gap(4, maker)!.status).toBe('caution');
  expect(gap(9, EXAMPLE)).toBeUndefined();
});

import { expect, test } from 'vitest';
import type { Finding, Status } from '../../shared/words/finding.ts';
import { checkCover } from '../../src/calc/cover/checkCover.ts';
import { whatDecides } from '../../src/shop/whatDecides.ts';
import { coverInput } from '../calc/cover/sets.ts';

const bending = (status: Status): Finding => ({
  id: 'stiffness',
  title: 'Bending',
  status,
  value: 1.2,
  limit: 1.1,
  unit: '',
  sentence: '',
  source: '',
  answer: null,
});
const decides = (further: readonly Finding[], more = {}) =>
  whatDecides(checkCover(coverInput(more), 'mm', further));

test('the finding that decided comes first, then a bending that a person has to judge', () => {
  expect(decides([])).toEqual(['wall-left']);
  expect(decides([bending('caution')])).toEqual(['wall-left', 'stiffness']);
  expect(decides([bending('pass')])).toEqual(['wall-left']);
  expect(decides([bending('fail')])).toEqual(['stiffness']);
  expect(decides([bending('caution')], { crackTest: 'found' })).toEqual(['crack', 'stiffness']);
});

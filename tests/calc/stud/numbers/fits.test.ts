import { describe, expect, it } from 'vitest';
import type { Status } from '../../../../shared/words/finding.ts';
import type { Checked } from '../../../../src/calc/stud/numbers/checked.ts';
import { fits } from '../../../../src/calc/stud/numbers/fits.ts';

const checked = (id: string, status: Status, missMm: number | null = 0, counts = true): Checked => ({
  finding: {
    id,
    title: id,
    status,
    value: null,
    limit: null,
    unit: '',
    sentence: '',
    source: '',
    answer: null,
  },
  field: `${id}-field`,
  missMm,
  short: '',
  mend: '',
  counts,
  answers: {},
});
const of = (...checks: Checked[]) => {
  const found = fits(checks);
  return [found.fits, found.decides?.finding.id ?? null];
};

describe('from findings to fits, row by row (this program’s own rule)', () => {
  it.each([
    ['all pass', [checked('a', 'pass')], ['yes', null]],
    ['any fail', [checked('a', 'pass'), checked('b', 'fail', 0.1), checked('c', 'caution', 9)], ['no', 'b']],
    ['any caution', [checked('a', 'not-checked', null), checked('b', 'caution', 0.1)], ['with-care', 'b']],
    ['anything not checked', [checked('a', 'pass'), checked('b', 'not-checked', null)], ['with-care', 'b']],
    [
      'what does not count',
      [checked('a', 'fail', 1, false), checked('b', 'not-checked', null, false)],
      ['yes', null],
    ],
  ])('whether a stud fits follows the table: %s', (_, checks, expected) => {
    expect(of(...checks)).toEqual(expected);
  });
  it('the greatest miss decides', () => {
    expect(of(checked('a', 'fail', 0.2), checked('b', 'fail', 1.4), checked('c', 'fail', 0.9))).toEqual([
      'no',
      'b',
    ]);
  });
  it('a check that is not a length decides before any length', () => {
    expect(of(checked('a', 'fail', 5), checked('nut-thread', 'fail', null))).toEqual(['no', 'nut-thread']);
  });
  it('the first of equal misses decides', () => {
    expect(of(checked('a', 'fail', 1), checked('b', 'fail', 1))).toEqual(['no', 'a']);
  });
});

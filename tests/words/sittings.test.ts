import { expect, it } from 'vitest';
import type { HistoryLine } from '../../shared/words/job.ts';
import { sittingsOf } from '../../shared/words/sittings.ts';

const line = (
  revision: number,
  time: string,
  what: HistoryLine['what'] = 'reading',
  who = 'AA',
): HistoryLine => ({
  revision,
  at: `2026-11-24T${time}:00Z`,
  who,
  why: '',
  what,
});
const revisionsIn = (lines: readonly HistoryLine[]) =>
  sittingsOf(lines).map((sitting) => sitting.map(({ revision }) => revision));

it('readings of one person with no pause over 30 minutes are one sitting', () => {
  expect(revisionsIn([line(1, '08:00'), line(2, '08:30'), line(3, '09:00'), line(4, '09:31')])).toEqual([
    [1, 2, 3],
    [4],
  ]);
});

it('another person, or another change in between, begins a sitting anew', () => {
  expect(
    revisionsIn([
      line(1, '08:00'),
      line(2, '08:01', 'reading', 'BB'),
      line(3, '08:02'),
      line(4, '08:03', 'photo'),
      line(5, '08:04'),
    ]),
  ).toEqual([[1], [2], [3], [4], [5]]);
  expect(revisionsIn([line(1, '08:00', 'decision'), line(2, '08:00', 'decision')])).toEqual([[1], [2]]);
});

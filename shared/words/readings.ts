import type { Pass, ReadingKind } from './job.ts';

/** What is read at a station, before the cut and after it. */
export const READING_WORD: Readonly<Record<Pass, Readonly<Record<ReadingKind, string>>>> = {
  before: { wall: 'Wall', face: 'Indicator reading', mark: 'Heat mark depth' },
  after: { wall: 'Wall', face: 'Indicator reading', mark: 'Heat mark remaining' },
};

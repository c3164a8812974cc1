import type { HistoryLine } from './job.ts';

/** A longer pause ends a sitting. */
export const PAUSE_MS = 30 * 60_000;

/**
 * The changes of a job, oldest first, with the readings of one sitting together: taken by one person, with no pause over
 * 30 minutes and nothing else in between. Every other change stands alone.
 */
export function sittingsOf<Line extends HistoryLine>(
  lines: readonly Line[],
): readonly (readonly [Line, ...Line[]])[] {
  const sittings: [Line, ...Line[]][] = [];
  for (const line of lines) {
    const sitting = sittings.at(-1);
    if (sitting !== undefined && isSameSitting(sitting.at(-1)!, line)) sitting.push(line);
    else sittings.push([line]);
  }
  return sittings;
}

function isSameSitting(before: HistoryLine, next: HistoryLine): boolean {
  return (
    before.what === 'reading' &&
    next.what === 'reading' &&
    before.who === next.who &&
    before.why === next.why &&
    Date.parse(next.at) - Date.parse(before.at) <= PAUSE_MS
  );
}

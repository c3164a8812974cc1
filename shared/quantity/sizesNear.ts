import { seriesOfSize } from './readUnifiedThread.ts';
import { METRIC_PITCHES, UNIFIED_SIZES } from './threadTables.ts';

const DIAMETER = /^(\d{1,2}(?:[.,]\d+)|[.,]\d+) ?(mm|in\.?|["″”])?$/i;
/** No stud of a converter is thinner in mm, or thicker in inches. */
const LEAST_MM = 2;
/** How much a crest may lie below its basic diameter, worn or read short, and how little above it. */
const BELOW = 0.05;
const ABOVE = 0.01;

/**
 * A diameter alone, `9.45` or `.372 in`, as callouts of the sizes it may be, nearest first: their usual series. None for
 * a text of another kind. Without a unit, 2 and more are millimeters.
 */
export function sizesNear(text: string): readonly string[] {
  const [, number = '', unit = ''] = DIAMETER.exec(text) ?? [];
  if (number === '') return [];
  const typed = Number(number.replace(',', '.'));
  const isMm = unit === '' ? typed >= LEAST_MM : /^mm$/i.test(unit);
  const mm = isMm ? typed : typed * 25.4;
  return [
    ...UNIFIED_SIZES.map((size) => ({ mm: size.inch * 25.4, callouts: seriesOfSize(size).slice(0, 2) })),
    ...[...METRIC_PITCHES].map(([size, pitches]) => ({
      mm: size,
      callouts: pitches.slice(0, 2).map((pitch) => `M${size}x${pitch}`),
    })),
  ]
    .filter((size) => mm >= size.mm * (1 - BELOW) && mm <= size.mm * (1 + ABOVE))
    .sort((a, b) => Math.abs(a.mm - mm) - Math.abs(b.mm - mm))
    .slice(0, 2)
    .flatMap(({ callouts }) => callouts);
}

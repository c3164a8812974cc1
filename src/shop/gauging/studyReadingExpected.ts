import { type KeptStudy, standingReadings } from '../../../shared/words/gauges/gaugeStudies.ts';
import type { FigureExpected } from '../doubts/expectedFigures.ts';

/** Said of a wall of nothing or less. */
export const NO_WALL = 'Reading: a wall must be more than 0. Read it again.';

/** What walls and heights measure, before anything was read in this study: common practice, no source. */
const WALLS: FigureExpected = { least: 1, most: 15 };
const HEIGHTS: FigureExpected = { least: 0.0005, most: 3, anyDecimal: true, signed: true };

/** What a study’s reading is at all. It is held against the other covers too, never against one station’s others: nobody is to know those. */
export function studyReadingExpected(study: KeptStudy, kind: 'size' | 'height'): FigureExpected {
  if (kind === 'height') return HEIGHTS;
  const others = standingReadings(study).flatMap((one) => (one === null ? [] : [one.valueMm]));
  if (others.length === 0) return WALLS;
  return { least: 0.7 * Math.min(...others), most: 1.4 * Math.max(...others) };
}

import type { STEEL } from '../../../shared/words/fields/steel.ts';
import { YIELD_STRENGTH } from './coverExpected.ts';
import type { ExpectedWhole } from './expectedFigures.ts';
import { OF_STEEL } from './limitsExpected.ts';

/** What figures of a steel are at all: common practice, no source. */
export const STEEL_EXPECTED: ExpectedWhole<typeof STEEL> = { ...OF_STEEL, yieldMPa: YIELD_STRENGTH };

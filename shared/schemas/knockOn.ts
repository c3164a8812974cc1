import type * as z from 'zod';
import type { FitLimits, KnockOn } from '../words/cover.ts';
import { FIT_LIMITS, FIT_PAIRS, KNOCK_ON } from '../words/fields/knockOn.ts';
import { strict } from './fields.ts';
import { shapeOf } from './fromFields.ts';
import { across } from './studParts.ts';

/** What was measured round the face, so that what the cut and the pads do elsewhere can be said. All may be left out. */
export const knockOnSchema = strict('The other dimensions', shapeOf(KNOCK_ON)) satisfies z.ZodType<KnockOn>;

/** A cover type's figures for the lengths round the face. */
export const fitLimitsSchema = strict('The figures', shapeOf(FIT_LIMITS)).superRefine(
  across<FitLimits>((limits, refuse) => {
    for (const [least, most, what] of FIT_PAIRS) {
      const [from, to] = [limits[least], limits[most]];
      if (from === null || to === null || from <= to) continue;
      refuse([least], `${what} is at least ${from} mm and at most ${to} mm; one of the two is wrong.`);
    }
  }),
) satisfies z.ZodType<FitLimits>;

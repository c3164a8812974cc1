import type * as z from 'zod';
import type { CoverCheckInput } from '../words/cover.ts';
import { refuseBoth } from './catalogue.ts';
import { coverCheckSchema, limitsAsked, refuseTogether } from './coverCheck.ts';
import { list, orElse, orNull, strict, text } from './fields.ts';
import { across } from './studParts.ts';
import { valueAt } from './valueAt.ts';

/** More than a request of the greatest length can hold. */
const MOST_CONFIRMED = 20_000;

/** A cover to check, and which of its figures are right although they look like a slip. */
export interface CoverRequest extends CoverCheckInput {
  /**
   * Places in the request: `stations.3.faceMm`, `stations.3.wallMm.1`, `gauge.resolutionMm`; `stations.3.wallMm` is all
   * its repeats.
   */
  readonly confirmed: readonly string[];
}

/** What `POST /api/cover/check` takes. */
export const coverRequestSchema = strict('The request', {
  ...coverCheckSchema.shape,
  criteria: orNull(limitsAsked),
  confirmed: orElse(
    list('What is confirmed', text('The place', { least: 1, most: 80 }), { most: MOST_CONFIRMED }),
    [],
  ),
}).superRefine(
  across<CoverRequest>((request, refuse) => {
    refuseTogether(request, refuse);
    refuseBoth(request.criteria, (message) => refuse(FORMULA.split('.'), message));
    for (const [i, place] of request.confirmed.entries()) {
      if (isPlace(request, place)) continue;
      refuse(
        ['confirmed', i],
        `"${place}" is the place of no figure in this request. Name one as in stations.3.faceMm, counted from 0.`,
      );
    }
  }),
) satisfies z.ZodType<CoverRequest>;

const FORMULA = 'criteria.minimumWallFormula';

/** Whether a path leads to a number or a formula that was sent, or to the repeats of one wall. */
function isPlace(request: CoverRequest, path: string): boolean {
  const at = valueAt(request, path);
  return (
    typeof at === 'number' ||
    (typeof at === 'string' && path === FORMULA) ||
    (Array.isArray(at) && path.endsWith('.wallMm'))
  );
}

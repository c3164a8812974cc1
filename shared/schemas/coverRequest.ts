import type { z } from 'zod';
import type { CoverCheckInput } from '../words/cover.ts';
import { coverCheckSchema, refuseTogether } from './coverCheck.ts';
import { list, orElse, strict, text } from './fields.ts';
import { across } from './studParts.ts';

/** More than a request of the greatest length can hold. */
const MOST_CONFIRMED = 20_000;

/** A cover to check, and which of its readings are right although they look like a slip. */
export interface CoverRequest extends CoverCheckInput {
  /** Places in the request: `stations.3.faceMm`, `stations.3.wallMm.1`; `stations.3.wallMm` is all its repeats. */
  readonly confirmed: readonly string[];
}

/** What `POST /api/cover/check` takes. */
export const coverRequestSchema = strict('The request', {
  ...coverCheckSchema.shape,
  confirmed: orElse(
    list('What is confirmed', text('The place', { least: 1, most: 80 }), { most: MOST_CONFIRMED }),
    [],
  ),
}).superRefine(
  across<CoverRequest>((request, refuse) => {
    refuseTogether(request, refuse);
    const places = placesOf(request);
    for (const [i, place] of request.confirmed.entries()) {
      if (places.has(place)) continue;
      refuse(
        ['confirmed', i],
        `"${place}" is the place of no reading in this request. Name one as in stations.3.faceMm, counted from 0.`,
      );
    }
  }),
) satisfies z.ZodType<CoverRequest>;

function placesOf({ stations, marks }: CoverRequest): ReadonlySet<string> {
  return new Set([
    ...stations.flatMap(({ wallMm }, i) => [
      `stations.${i}.wallMm`,
      ...wallMm.map((_, j) => `stations.${i}.wallMm.${j}`),
      `stations.${i}.faceMm`,
      `stations.${i}.markDepthMm`,
    ]),
    ...marks.map((_, i) => `marks.${i}.depthMm`),
  ]);
}

import type * as z from 'zod';
import { choice, extent, orElse, orNull, strict, text } from './fields.ts';
import { sentId } from './job.ts';
import { confirmedPlaces, jointSchema } from './studParts.ts';

const key = (what: string) => text(what, { least: 1, most: 80 });

/** What `POST /api/slips` takes: a stack of the catalog, and what the caller measured. */
export const saveSlipSchema = strict('The request', {
  id: orNull(sentId('The id of the request')),
  who: text('The initials of whoever answers', { least: 1, most: 8 }),
  customerReference: orElse(text('The customer reference', { most: 80 }), ''),
  stackId: key('The stack'),
  /** Left out: the best of the catalog. */
  studId: orNull(key('The stud')),
  pullForwardMm: orNull(extent('The pull-forward gap')),
  joint: orNull(jointSchema),
  torqueFrom: orNull(choice('Whose torque it is', ['maker', 'other'])),
  confirmed: confirmedPlaces,
});

export type SlipSent = z.output<typeof saveSlipSchema>;

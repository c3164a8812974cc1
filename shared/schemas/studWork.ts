import type { z } from 'zod';
import type { ReplacedStudAsked, RetighteningAsked } from '../words/job.ts';
import {
  choice,
  count,
  day,
  extent,
  list,
  orElse,
  orNull,
  quantity,
  size,
  strict,
  text,
  yesNo,
} from './fields.ts';
import { across } from './studParts.ts';

const MOST_STUDS = 24;
const torque = (what: string) => quantity(what, 'N·m', { least: 0, open: true, most: 5000 });
const note = orElse(text('The note', { most: 2000, lines: true }), '');

/** A stud that was welded or pressed in anew, as it was measured and proved. */
export const replacedStudSchema = strict('The stud set anew', {
  stud: count('The number of the stud', 1, MOST_STUDS),
  how: choice('How it was set', ['welded', 'pressed']),
  leanMm: orNull(extent('The lean')),
  leanAtMm: orNull(size('The height at which it leans')),
  offMm: orNull(extent('The distance of its foot out of place')),
  filletMm: orNull(extent('The weld or fillet at its foot')),
  provedNm: orNull(torque('The torque it was proved with')),
  heldIt: orNull(yesNo('Whether it held')),
  note,
}).superRefine(
  across<ReplacedStudAsked>(({ leanMm, leanAtMm, provedNm, heldIt }, refuse) => {
    if (leanMm !== null && leanAtMm === null)
      refuse(['leanAtMm'], 'The lean needs the height above the pad at which it was measured; give it.');
    if (leanMm === null && leanAtMm !== null)
      refuse(['leanMm'], 'The height of the lean was given without the lean; give it, or leave both out.');
    if (provedNm !== null && heldIt === null)
      refuse(['heldIt'], 'The stud was proved with a torque; say whether it held it.');
    if (provedNm === null && heldIt !== null)
      refuse(['provedNm'], 'Whether the stud held was said without the torque; give the torque.');
  }),
) satisfies z.ZodType<ReplacedStudAsked>;

export const replacedStudsSchema = list('The studs set anew', replacedStudSchema, {
  most: MOST_STUDS,
}).superRefine(
  across<readonly ReplacedStudAsked[]>((studs, refuse) => {
    for (const [i, { stud }] of studs.entries()) {
      if (studs.findIndex((other) => other.stud === stud) < i)
        refuse([i, 'stud'], `Stud ${stud} stands twice among the studs set anew; give it once.`);
    }
  }),
);

export const retighteningSchema = strict('The tightening again', {
  on: day('The day'),
  torqueNm: torque('The torque'),
  makerAllows: choice('Whether the maker allows it', ['yes', 'no', 'not-said']),
  threadLocker: yesNo('Whether thread-locker is on the threads'),
  note,
}) satisfies z.ZodType<RetighteningAsked>;

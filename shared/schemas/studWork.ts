import type * as z from 'zod';
import { REPLACED_STUD, RETORQUE } from '../words/fields/studWork.ts';
import type { ReplacedStudAsked, RetorqueAsked } from '../words/job.ts';
import { list, strict } from './fields.ts';
import { shapeOf } from './fromFields.ts';
import { across } from './studParts.ts';

const MOST_STUDS = 24;
/** A stud that was welded or pressed in to replace one, as it was measured and proved. */
export const replacedStudSchema = strict('The replaced stud', shapeOf(REPLACED_STUD)).superRefine(
  across<ReplacedStudAsked>(({ leanMm, leanAtMm, provedNm, heldIt }, refuse) => {
    if (leanMm !== null && leanAtMm === null)
      refuse(['leanAtMm'], 'Out of square needs the height of the reading above the pad; give it.');
    if (leanMm === null && leanAtMm !== null)
      refuse(
        ['leanMm'],
        'The height of the squareness reading was given without the reading; give it, or leave both out.',
      );
    if (provedNm !== null && heldIt === null)
      refuse(['heldIt'], 'The proof torque needs its result; say whether the stud held it.');
    if (provedNm === null && heldIt !== null)
      refuse(['provedNm'], 'The result of the proof needs its torque; give the torque.');
  }),
) satisfies z.ZodType<ReplacedStudAsked>;

export const replacedStudsSchema = list('The replaced studs', replacedStudSchema, {
  most: MOST_STUDS,
}).superRefine(
  across<readonly ReplacedStudAsked[]>((studs, refuse) => {
    for (const [i, { stud }] of studs.entries()) {
      if (studs.findIndex((other) => other.stud === stud) < i)
        refuse([i, 'stud'], `Stud ${stud} is listed twice among the replaced studs; give it once.`);
    }
  }),
);

export const retorqueSchema = strict('The re-torque', shapeOf(RETORQUE)) satisfies z.ZodType<RetorqueAsked>;

import { type Doubt, doubt } from '../../../shared/quantity/doubt.ts';
import { writeLength } from '../../../shared/quantity/writeLength.ts';
import type { ReadingKind } from '../../../shared/words/job.ts';
import type { Writing } from '../request/typed.ts';

/**
 * Asks about a reading as it is typed: a wall far from the wall when new, a face height of half a wall or more, a
 * mark as deep as the wall. `views/assets/typedLength.js` asks the same where there is no connection.
 */
export function measuringDoubt(
  reading: { readonly kind: ReadingKind; readonly valueMm: number; readonly typed: string },
  nominalWallMm: number,
  writing: Writing,
): Doubt | null {
  const { kind, valueMm, typed } = reading;
  if (kind === 'wall') {
    return doubt({
      valueMm,
      expectedMm: nominalWallMm,
      typed,
      unit: writing.lengthUnit,
      decimalSign: writing.decimalSign,
    });
  }
  const most = kind === 'face' ? nominalWallMm / 2 : nominalWallMm;
  if (!(nominalWallMm > 0) || Math.abs(valueMm) < most) return null;
  const wall = `${writeLength(nominalWallMm, writing.lengthUnit, writing.decimalSign)} ${writing.lengthUnit}`;
  const what = kind === 'face' ? 'a face height' : 'the depth of a mark';
  return {
    question: `${typed} as ${what}? The wall when new is ${wall}. Measure again, or confirm it.`,
    meantMm: null,
    meantTyped: null,
  };
}

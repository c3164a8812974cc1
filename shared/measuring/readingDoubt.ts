import { type Doubt, doubt, lengthText } from '../quantity/doubt.ts';
import type { DecimalSign } from '../quantity/plainNumber.ts';
import type { UnitName } from '../quantity/units.ts';
import type { ReadingKind } from '../words/job.ts';

export interface ReadingInDoubt {
  readonly kind: ReadingKind;
  readonly valueMm: number;
  readonly typed: string;
  /** The unit it was read in. */
  readonly unit: UnitName;
  readonly decimalSign: DecimalSign;
  readonly nominalWallMm: number;
}

/**
 * Asks about a reading as it is typed: a wall far from the wall when new, a face height of half a wall or more, a
 * mark as deep as the wall.
 */
export function readingDoubt(reading: ReadingInDoubt): Doubt | null {
  const { kind, valueMm, typed, unit, decimalSign, nominalWallMm } = reading;
  if (kind === 'wall') return doubt({ valueMm, expectedMm: nominalWallMm, typed, unit, decimalSign });
  const most = kind === 'face' ? nominalWallMm / 2 : nominalWallMm;
  if (!(nominalWallMm > 0) || Math.abs(valueMm) < most) return null;
  const what = kind === 'face' ? 'a face height' : 'the depth of a mark';
  const wall = lengthText(nominalWallMm, unit, decimalSign);
  return {
    question: `${typed} as ${what}? The wall when new is ${wall}. Measure again, or confirm it.`,
    meantMm: null,
    meantTyped: null,
  };
}

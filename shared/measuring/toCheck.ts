import type { Doubt } from '../quantity/doubt.ts';
import type { DecimalSign } from '../quantity/plainNumber.ts';
import type { LengthUnit } from '../words/print.ts';
import type { StandingReading } from './benchState.ts';
import { doubtsAmong, type Expected } from './readingDoubt.ts';

type Checked = Pick<
  StandingReading,
  'kind' | 'angleDeg' | 'radiusMm' | 'valueMm' | 'shown' | 'doubtful' | 'confirmed'
>;

/**
 * The readings that should be looked at once more when all are there: those kept unconfirmed, and those that only the
 * later ones show to be off, such as a slip in the first of an indicator round.
 */
export function readingsToCheck<R extends Checked>(
  readings: readonly R[],
  expected: Expected,
  { unit, sign }: { readonly unit: LengthUnit; readonly sign: DecimalSign },
): readonly { readonly reading: R; readonly doubt: Doubt | null }[] {
  const typed = readings.map((one) => ({ ...one, typed: one.shown, unit, decimalSign: sign }));
  const asked = new Map(
    doubtsAmong(typed, expected, (i) => readings[i]!.confirmed).map(({ index, doubt }) => [index, doubt]),
  );
  return readings.flatMap((reading, i) => {
    const doubt = asked.get(i) ?? null;
    return doubt !== null || reading.doubtful ? [{ reading, doubt }] : [];
  });
}

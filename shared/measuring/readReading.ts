import type { Doubt } from '../quantity/doubt.ts';
import type { DecimalSign } from '../quantity/plainNumber.ts';
import { type QuantityRefusal, readQuantity } from '../quantity/readQuantity.ts';
import type { ReadingKind } from '../words/job.ts';
import type { Place } from '../words/places.ts';
import { type LengthUnit, printLength } from '../words/print.ts';
import { type Expected, NOTHING_KNOWN, type ReadBefore, readingDoubt } from './readingDoubt.ts';

export interface TypedReading {
  readonly kind: ReadingKind;
  /** Names the reading in a refusal: "Wall behind stud 1". */
  readonly field: string;
  readonly typed: string;
  /** The unit a bare number takes. */
  readonly unit: LengthUnit;
  readonly decimalSign: DecimalSign;
  /** The wall when new; 0 where it is not known, and then nothing is asked of it. */
  readonly nominalWallMm: number;
  /** Where it was read, the other readings of the same pass, and what else is known: left out, they are not held against it. */
  readonly place?: Place;
  readonly others?: readonly ReadBefore[];
  readonly expected?: Omit<Expected, 'nominalWallMm'>;
}

interface ReadingRead {
  readonly ok: true;
  readonly valueMm: number;
  /** A question that a person must answer before the reading counts as sure. */
  readonly doubt: Doubt | null;
}

const NOWHERE: Place = { angleDeg: 0, radiusMm: 0 };

/** One reading as a person or a gauge typed it. The tablet and the server read it here, so they cannot differ. */
export function readReading(asked: TypedReading): ReadingRead | QuantityRefusal {
  const { kind, field, typed, unit, decimalSign, nominalWallMm } = asked;
  const { place = NOWHERE, others = [], expected = NOTHING_KNOWN } = asked;
  const read = readQuantity({ field, typed, kind: 'length', unit, decimalSign });
  if (!read.ok) return read;
  const valueMm = read.value;
  if ((kind === 'wall' && valueMm <= 0) || (kind === 'mark' && valueMm < 0)) {
    const least = kind === 'wall' ? 'more than 0' : 'at least 0';
    return {
      ok: false,
      message: `${field} is ${printLength(valueMm, unit)}; it must be ${least}. Measure it again.`,
    };
  }
  const reading = { ...place, kind, valueMm, typed: read.typed, unit: read.unit, decimalSign };
  return { ok: true, valueMm, doubt: readingDoubt(reading, others, { nominalWallMm, ...expected }) };
}

import type { Doubt } from '../quantity/doubt.ts';
import type { DecimalSign } from '../quantity/plainNumber.ts';
import { type QuantityRefusal, readQuantity } from '../quantity/readQuantity.ts';
import type { ReadingKind } from '../words/job.ts';
import type { LengthUnit } from '../words/print.ts';
import { readingDoubt } from './readingDoubt.ts';

export interface TypedReading {
  readonly kind: ReadingKind;
  /** Names the reading in a refusal: "Wall behind stud 1". */
  readonly field: string;
  readonly typed: string;
  /** The unit a bare number takes. */
  readonly unit: LengthUnit;
  readonly decimalSign: DecimalSign;
  /** The wall when new; 0 where it is not known, and then nothing is asked. */
  readonly nominalWallMm: number;
}

interface ReadingRead {
  readonly ok: true;
  readonly valueMm: number;
  /** A question that a person must answer before the reading counts as sure. */
  readonly doubt: Doubt | null;
}

/** One reading as a person or a gauge typed it. The tablet and the server read it here, so they cannot differ. */
export function readReading(asked: TypedReading): ReadingRead | QuantityRefusal {
  const { kind, field, typed, unit, decimalSign, nominalWallMm } = asked;
  const read = readQuantity({ field, typed, kind: 'length', unit, decimalSign });
  if (!read.ok) return read;
  const valueMm = read.value;
  if ((kind === 'wall' && valueMm <= 0) || (kind === 'mark' && valueMm < 0)) {
    const least = kind === 'wall' ? 'more than 0 mm' : 'at least 0 mm';
    return { ok: false, message: `${field} is ${valueMm} mm; it must be ${least}. Measure it again.` };
  }
  const doubt = readingDoubt({
    kind,
    valueMm,
    typed: read.typed,
    unit: read.unit,
    decimalSign,
    nominalWallMm,
  });
  return { ok: true, valueMm, doubt };
}

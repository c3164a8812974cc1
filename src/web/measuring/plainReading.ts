import { readReading } from '../../../shared/measuring/readReading.ts';
import { KIND_OF } from '../../../shared/measuring/steps.ts';
import type { Job, NewReading, Pass } from '../../../shared/words/job.ts';
import { readPlace } from '../../../shared/words/places.ts';
import { READING_WORD } from '../../../shared/words/readings.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { MeasuringProps } from '../../../views/pages/measuring/measuringProps.ts';
import { heldAgainst } from '../../shop/doubts/jobReadingDoubt.ts';
import { placeOn } from '../../shop/placesOfJob.ts';
import type { Fields, Writing } from '../request/typed.ts';

export function passOf(fields: Fields): Pass {
  return fields.pass === 'after' ? 'after' : 'before';
}

type ReadOne =
  | { readonly ok: true; readonly reading: NewReading }
  | {
      readonly ok: false;
      readonly faults: readonly Fault[];
      readonly doubt: MeasuringProps['doubt'];
    };

/** The one reading of the plain form, or why it is not taken. */
export function readOne(job: Job, fields: Fields, writing: Writing): ReadOne {
  const no = (path: string, message: string): ReadOne => ({
    ok: false,
    faults: [{ path, message }],
    doubt: null,
  });
  const kind = KIND_OF[fields.kind ?? ''];
  const at = readPlace(fields.place ?? '');
  if (!kind || !at || !/^[A-Za-z0-9-]{16,64}$/.test(fields.id ?? '')) {
    return no(
      '',
      'This form is not complete, so nothing was saved. Open the measuring page again and enter it there.',
    );
  }
  const typed = (fields.value ?? '').trim();
  const cover = job.sections.received?.body.family;
  const field = `${READING_WORD[passOf(fields)][kind]} ${placeOn(cover, at.angleDeg)}`;
  const read = readReading({
    kind,
    field,
    typed,
    unit: writing.lengthUnit,
    decimalSign: writing.decimalSign,
    nominalWallMm: job.sections.received?.body.family.nominalWallMm ?? 0,
    place: at,
    ...heldAgainst(job, passOf(fields), (fields.replaces ?? '') === '' ? [] : [fields.replaces!]),
  });
  if (!read.ok && read.meant !== undefined) {
    const doubt = { question: read.message, meant: read.meant, mayConfirm: false };
    return { ok: false, faults: [], doubt };
  }
  if (!read.ok) return no('value', read.message);
  if (read.doubt !== null && fields.ok !== typed) {
    const { question, meantTyped: meant } = read.doubt;
    return { ok: false, faults: [], doubt: { question, meant, mayConfirm: true } };
  }
  return {
    ok: true,
    reading: {
      id: fields.id!,
      pass: passOf(fields),
      kind,
      ...at,
      valueMm: read.valueMm,
      typed,
      gauge: job.sections.setup?.body.gauge ?? '',
      doubtful: false,
      confirmed: read.doubt !== null,
      replaces: (fields.replaces ?? '') === '' ? null : fields.replaces!,
    },
  };
}

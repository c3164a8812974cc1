import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import { receiveJobSchema } from '../../../shared/schemas/jobCalls.ts';
import { RECEIVED } from '../../../shared/words/fields/job.ts';
import type { Received } from '../../../shared/words/job.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import type { Db } from '../../records/database/database.ts';
import { receivedFrom } from '../../shop/jobEdits.ts';
import { boxAt, readBody } from '../request/bodyForm.ts';
import { type Fields, TypedForm } from '../request/typed.ts';

const newJob = receiveJobSchema.pick({ number: true, received: true });

/** What a form says of a cover that came in, read with the schema that JSON is read with; throws a Refusal by field. */
export async function readReceived(
  db: Db,
  fields: Fields,
  day: { readonly today: string; readonly standing?: string | undefined },
): Promise<{ readonly number: string | null; readonly received: Received }> {
  const form = new TypedForm(fields, { lengthUnit: 'mm', decimalSign: 'point' });
  const { receivedOn, customerReference, note } = readBody(form, RECEIVED, { ifEmpty: { receivedOn: '' } });
  const read = newJob.safeParse({
    number: fields.number?.trim() || null,
    received: {
      familyId: form.text(RECEIVED.familyId.box),
      receivedOn,
      customerReference,
      note,
    },
  });
  if (!read.success) {
    const faults = faultsOf(read.error).map(({ path, message }) => ({
      path: boxAt(RECEIVED, path.replace('received.', '')) ?? path,
      message,
    }));
    throw new Refusal('wrong-values', faults);
  }
  const { number, received: asked } = read.data;
  const confirmed = fields['ok.receivedOn'] === receivedOn;
  const where = { family: 'family', confirm: 'ok.receivedOn' };
  return { number, received: await receivedFrom(db, asked, { ...day, confirmed }, where) };
}

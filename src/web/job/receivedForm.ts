import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import { receiveJobSchema } from '../../../shared/schemas/jobCalls.ts';
import type { Received } from '../../../shared/words/job.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import type { Db } from '../../records/database/database.ts';
import { receivedFrom } from '../../shop/jobEdits.ts';
import type { Fields } from '../request/typed.ts';

const newJob = receiveJobSchema.pick({ number: true, received: true });

const FIELD: Readonly<Record<string, string>> = {
  'received.familyId': 'family',
  'received.customerReference': 'customer',
  'received.receivedOn': 'receivedOn',
  'received.note': 'note',
};

/** What a form says of a cover that came in, read with the schema that JSON is read with; throws a Refusal by field. */
export async function readReceived(
  db: Db,
  fields: Fields,
  day: { readonly today: string; readonly standing?: string | undefined },
): Promise<{ readonly number: string | null; readonly received: Received }> {
  const receivedOn = (fields.receivedOn ?? '').trim();
  const read = newJob.safeParse({
    number: fields.number?.trim() || null,
    received: {
      familyId: fields.family ?? '',
      customerReference: fields.customer ?? '',
      receivedOn,
      note: fields.note ?? '',
    },
  });
  if (!read.success) {
    const faults = faultsOf(read.error).map(({ path, message }) => ({ path: FIELD[path] ?? path, message }));
    throw new Refusal('wrong-values', faults);
  }
  const { number, received: asked } = read.data;
  const confirmed = fields['ok.receivedOn'] === receivedOn;
  const where = { family: 'family', confirm: 'ok.receivedOn' };
  return { number, received: await receivedFrom(db, asked, { ...day, confirmed }, where) };
}

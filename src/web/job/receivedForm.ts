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
  const { receivedOn, customerReference, coverNumber, comebackOf, note } = readBody(form, RECEIVED, {
    ifEmpty: { receivedOn: '' },
  });
  const read = newJob.safeParse({
    number: fields.number?.trim() || null,
    received: {
      familyId: form.text(RECEIVED.familyId.box),
      receivedOn,
      customerReference,
      coverNumber,
      comebackOf,
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
  const where = { family: 'family', confirm: 'ok.receivedOn', comeback: RECEIVED.comebackOf.box };
  return { number, received: await receivedFrom(db, asked, { ...day, confirmed }, where) };
}

/** What was typed of a cover that came in, carried along while its cover type is added to the catalog. */
const CARRIED = [
  'number',
  'slip',
  'family',
  'customer',
  'receivedOn',
  'ok.receivedOn',
  'coverNumber',
  'comebackOf',
  'note',
  'who',
  'why',
  'from',
  'sentId',
];

/** Where a cover type is added that Receive does not offer yet; it leads back with everything that was typed. */
export function toNewCoverType(fields: Fields, page: string, section = ''): string {
  const typed = CARRIED.flatMap((name) => (fields[name] ? [[name, fields[name]] as const] : []));
  const back = `${page}?${new URLSearchParams([['again', 'received'], ...typed.map(([k, v]) => [k, v])])}${section}`;
  return `/catalogue/family/new?${new URLSearchParams({ back })}`;
}

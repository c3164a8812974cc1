import { asTyped, type Writing } from '../../../shared/quantity/fieldText.ts';
import { INSPECTED, LOOKED } from '../../../shared/words/fields/job.ts';
import { LOOK_ITEMS, type Looked } from '../../../shared/words/job.ts';
import { readBody } from '../request/bodyForm.ts';
import type { Fields, TypedForm } from '../request/typed.ts';

/** The inspection as typed, item by item; null with the sentences in the form. */
export function readLooked(form: TypedForm): Looked | null {
  const { crackTest, crackMethod, crackNote } = readBody(form, LOOKED);
  const items = LOOK_ITEMS.map((item) => ({ item, ...readBody(form, INSPECTED, { row: item }) }));
  if (crackTest === 'none-found' && crackMethod === null)
    form.fault(
      'crackMethod',
      'No cracks found, but no crack test method. Choose dye, magnetic particle or by eye.',
    );
  return form.faults.length > 0 ? null : ({ crackTest, crackMethod, crackNote, items } as Looked);
}

/** The inspection as its form would have it typed. */
export function lookedAsTyped(looked: Looked | null, writing: Writing): Fields {
  const items = (looked?.items ?? []).map((one) => asTyped(INSPECTED, one, writing, { row: one.item }));
  return Object.assign({}, asTyped(LOOKED, looked, writing), ...items);
}

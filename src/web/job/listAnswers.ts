import { bareUnitOf, type Writing } from '../../../shared/quantity/fieldText.ts';
import {
  type Inspected,
  type InspectedItem,
  type InspectionItem,
  itemsOf,
  type ListForJob,
} from '../../../shared/words/inspection.ts';
import { boxOfItem } from '../../../views/pages/job/listPart.tsx';
import { itemExpected } from '../../shop/inspection/itemExpected.ts';
import { figureText } from '../inspection/listTyped.ts';
import type { Fields, TypedForm } from '../request/typed.ts';

/** What is kept, as the form would have it typed. */
export function inspectedAsTyped(
  lists: readonly ListForJob[],
  inspected: Inspected | null,
  writing: Writing,
): Fields {
  const fields: Record<string, string> = {};
  for (const { of, item, answer } of itemsOf(lists, inspected)) {
    if (answer === null) continue;
    const box = boxOfItem(of.id, item.id);
    fields[box] =
      answer.value === null ? (answer.ok ? 'yes' : 'no') : figureText(item.kind, answer.value, writing);
    fields[`${box}.note`] = answer.note;
    if (answer.confirmed) fields[`ok.${box}`] = fields[box];
  }
  return fields;
}

const LONGEST_NOTE = 2000;

/** The answers as typed: one that says what is kept stays as it is, with who said it and when. null with faults in the form. */
export function readInspected(
  form: TypedForm,
  lists: readonly ListForJob[],
  kept: Inspected | null,
  by: { readonly who: string; readonly at: string },
): Inspected | null {
  const items = itemsOf(lists, kept);
  const answered = items.flatMap(({ of, item, answer }): readonly InspectedItem[] => {
    const box = boxOfItem(of.id, item.id);
    const note = form.text(`${box}.note`);
    if (note.length > LONGEST_NOTE)
      form.fault(`${box}.note`, `The note has more than ${LONGEST_NOTE} characters. Shorten it.`);
    const found = readItem(form, box, item);
    if (found === null) {
      if (note !== '' && !form.has(box))
        form.fault(box, `${item.name} has a note and no answer. Answer it, or empty the note.`);
      return [];
    }
    if (answer && answer.ok === found.ok && answer.value === found.value && answer.note === note)
      return [answer];
    return [{ listId: of.id, listRevision: of.revision, item, ...found, note, ...by }];
  });
  if (form.faults.length > 0) return null;
  const present = new Set(items.map(({ of, item }) => `${of.id} ${item.id}`));
  // What a list no longer asks stays with the job.
  const left = (kept?.items ?? []).filter((one) => !present.has(`${one.listId} ${one.item.id}`));
  return { items: [...answered, ...left] };
}

type Found = Pick<InspectedItem, 'ok' | 'value' | 'typed' | 'confirmed'>;

function readItem(form: TypedForm, box: string, item: InspectionItem): Found | null {
  const { kind, name } = item;
  if (kind === 'yes-no') {
    const said = form.oneOf(box, name, ['yes', 'no'] as const);
    return said === null ? null : { ok: said === 'yes', value: null, typed: said, confirmed: false };
  }
  const value = form.quantity(box, name, kind);
  if (value === null) return null;
  const usual = itemExpected(item);
  if (usual !== null) form.askFigure(box, name, kind, usual);
  const bare = /[a-z"′″'·]/i.test(form.text(box)) ? '' : ` ${bareUnitOf(kind, form.writing)}`;
  return { ok: null, value, typed: `${form.text(box)}${bare}`, confirmed: form.isConfirmed(box) };
}

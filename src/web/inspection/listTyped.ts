import { bareUnitOf, type Writing } from '../../../shared/quantity/fieldText.ts';
import type { Usual } from '../../../shared/quantity/figureDoubt.ts';
import { writeQuantity } from '../../../shared/quantity/writeQuantity.ts';
import {
  type InspectionItem,
  type InspectionList,
  ITEM_KINDS,
  type ItemKind,
} from '../../../shared/words/inspection.ts';
import type { Fields, TypedForm } from '../request/typed.ts';

/** Lists longer than this are read by nobody at a bench. */
const MOST_ITEMS = 40;

/** How many rows of items the form shows: those typed, at least four, more when asked for. */
export function itemRows(fields: Fields): number {
  const typed = Object.keys(fields).flatMap((name) => {
    const row = /^(?:name|least|most|how)\.(\d{1,2})$/.exec(name)?.[1];
    return row === undefined || (fields[name] ?? '').trim() === '' ? [] : [Number(row)];
  });
  const rows = Math.max(3, ...typed.map((row) => row + 1)) + (fields.add === 'item' ? 2 : 1);
  return Math.min(rows, MOST_ITEMS);
}

/** A figure as its box would have it typed. */
export function figureText(kind: ItemKind, value: number | null, writing: Writing): string {
  if (kind === 'yes-no' || value === null) return '';
  return writeQuantity(value, kind, bareUnitOf(kind, writing), writing.decimalSign);
}

/** A list as its form would have it typed. */
export function listAsTyped(body: InspectionList, writing: Writing): Record<string, string> {
  const fields: Record<string, string> = { listName: body.name, source: body.source, note: body.note };
  for (const id of body.familyIds) fields[`for.${id}`] = '1';
  for (const [row, item] of body.items.entries()) {
    fields[`id.${row}`] = item.id;
    fields[`name.${row}`] = item.name;
    fields[`kind.${row}`] = item.kind;
    fields[`least.${row}`] = figureText(item.kind, item.least, writing);
    fields[`most.${row}`] = figureText(item.kind, item.most, writing);
    fields[`how.${row}`] = item.how;
  }
  return fields;
}

/** The list as typed; null with the sentences in the form. */
export function readList(form: TypedForm, familyIds: readonly string[]): InspectionList | null {
  const items: InspectionItem[] = [];
  for (let row = 0; row < MOST_ITEMS; row++) {
    const item = readItem(form, row, items);
    if (item !== null) items.push(item);
  }
  form.needed(form.text('listName') || null, 'listName', 'The name of the list');
  if (items.length === 0 && form.faults.length === 0)
    form.fault('name.0', 'The list has no item. Enter at least one.');
  for (const [box, label] of [
    ['source', 'The source'],
    ['note', 'The note'],
  ] as const)
    if (form.text(box).length > 2000) form.fault(box, `${label} has more than 2000 characters. Shorten it.`);
  if (form.faults.length > 0) return null;
  return {
    name: form.text('listName'),
    familyIds: familyIds.filter((id) => form.text(`for.${id}`) === '1'),
    items,
    source: form.text('source'),
    note: form.text('note'),
  };
}

const LONGEST = { name: 80, how: 300 } as const;

function readItem(form: TypedForm, row: number, before: readonly InspectionItem[]): InspectionItem | null {
  const text = (box: string) => form.text(`${box}.${row}`);
  const name = text('name');
  const begun = ['least', 'most', 'how'].some((box) => text(box) !== '');
  if (name === '') {
    if (begun) form.fault(`name.${row}`, `Item ${row + 1} has no name. Enter one, or empty its other boxes.`);
    return null;
  }
  for (const box of ['name', 'how'] as const)
    if (text(box).length > LONGEST[box])
      form.fault(`${box}.${row}`, `${name.slice(0, 40)}: at most ${LONGEST[box]} characters. Shorten it.`);
  if (before.some((one) => one.name.toLowerCase() === name.toLowerCase()))
    form.fault(`name.${row}`, `“${name}” is in this list twice. Give each item a name of its own.`);
  const kind = form.choice(`kind.${row}`, ITEM_KINDS) ?? 'yes-no';
  const figures = kind === 'yes-no' ? noFigures(form, row, name) : limitsTyped(form, row, { name, kind });
  return { id: idOf(text('id') || name, before), name, kind, ...figures, how: text('how') };
}

function noFigures(form: TypedForm, row: number, name: string) {
  for (const box of ['least', 'most'])
    if (form.has(`${box}.${row}`))
      form.fault(
        `${box}.${row}`,
        `“${name}” is answered with yes or no. Choose what is measured, or empty this.`,
      );
  return { least: null, most: null };
}

function limitsTyped(
  form: TypedForm,
  row: number,
  { name, kind }: { readonly name: string; readonly kind: Exclude<ItemKind, 'yes-no'> },
) {
  const [leastBox, mostBox] = [`least.${row}`, `most.${row}`];
  const least = form.quantity(leastBox, `${name}, least`, kind);
  const most = form.quantity(mostBox, `${name}, most`, kind);
  for (const [value, box] of [
    [least, leastBox],
    [most, mostBox],
  ] as const)
    if (value !== null && value < 0) form.fault(box, `${name}: enter a figure of zero or more.`);
  if (least === null && most === null && !form.has(leastBox) && !form.has(mostBox))
    form.fault(mostBox, `${name} has no limit. Enter the least, the most, or both.`);
  if (least !== null && most !== null) {
    if (least > most)
      form.fault(mostBox, `${name}: the most is below the least. Enter them the right way round.`);
    // Limits of one thing lie near one another: a slip of ten or of the unit in one of them shows.
    else form.askFigure(mostBox, `${name}, most`, kind, near(least));
  }
  return { least, most };
}

function near(value: number): Usual {
  return { least: value, most: value === 0 ? Number.MAX_VALUE : 5 * value };
}

/** Of the name, once: it stays while the item is worded anew. */
function idOf(of: string, before: readonly InspectionItem[]): string {
  const plain =
    of
      .normalize('NFKD')
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 60) || 'item';
  const taken = new Set(before.map(({ id }) => id));
  if (!taken.has(plain)) return plain;
  let count = 2;
  while (taken.has(`${plain}-${count}`)) count++;
  return `${plain}-${count}`;
}

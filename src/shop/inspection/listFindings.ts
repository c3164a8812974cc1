import type { Family, ShopCriteria } from '../../../shared/words/catalogue.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import {
  foundOfItem,
  type Inspected,
  type InspectedItem,
  isItemOk,
  itemsOf,
  type ListForJob,
  limitsOfItem,
} from '../../../shared/words/inspection.ts';
import type { Job, Received } from '../../../shared/words/job.ts';
import { type LengthUnit, listInWords } from '../../../shared/words/print.ts';
import { stopping } from '../../calc/judge/weigh.ts';
import { listEntries } from '../../records/catalogue.ts';
import type { Db } from '../../records/database/database.ts';

/** Begins the id of every finding on an inspection list. */
const LIST = 'list-';
const LIST_OPEN = `${LIST}open`;

export function isListFinding({ id }: Finding): boolean {
  return id.startsWith(LIST);
}

/** The inspection lists in use for a cover type, by name. */
export async function listsFor(
  db: Db,
  received: Pick<Received, 'familyId'> | undefined,
): Promise<readonly ListForJob[]> {
  if (received === undefined) return [];
  const { familyId } = received;
  const entries = await listEntries(db, 'checklist');
  return entries
    .filter(({ body }) => body.familyIds.length === 0 || body.familyIds.includes(familyId))
    .map(({ id, revision, body }) => ({ id, revision, list: body }));
}

/** How many of the items are answered, of how many. */
export function listStands(lists: readonly ListForJob[], inspected: Inspected | null) {
  const items = itemsOf(lists, inspected);
  return { done: items.filter(({ answer }) => answer !== null).length, of: items.length };
}

const UNIT = { 'yes-no': '', length: 'mm', torque: 'N·m', pressure: 'MPa' } as const;
const MOST_NAMED = 6;

/**
 * What the inspection lists found on a job: each item that is not as it has to be, and whether all are inspected. An item
 * that the shop has given another limit since is not inspected; one of a list no longer in use still counts where it failed.
 */
export function listFindings(
  { sections }: Pick<Job, 'sections'>,
  lists: readonly ListForJob[],
  unit: LengthUnit,
  { inspectionStops = false, whatStops }: Pick<ShopCriteria, 'inspectionStops' | 'whatStops'>,
): readonly Finding[] {
  const inspected = sections.inspected?.body ?? null;
  const items = itemsOf(lists, inspected);
  const present = new Set(items.map(({ of, item }) => `${of.id} ${item.id}`));
  const answers = [
    ...items.flatMap(({ answer }) => (answer === null ? [] : [answer])),
    ...(inspected?.items ?? []).filter(({ listId, item }) => !present.has(`${listId} ${item.id}`)),
  ];
  const failed = answers.filter((one) => !isItemOk(one)).map((one) => failedItem(one, lists, unit));
  const stops = whatStops !== undefined && whatStops['list-item'] === 'stop';
  return [...(stops ? failed.map(stopping) : failed), ...wholeList(items, inspectionStops)];
}

function failedItem(one: InspectedItem, lists: readonly ListForJob[], unit: LengthUnit): Finding {
  const { item, listId, value } = one;
  const list = lists.find(({ id }) => id === listId)?.list;
  const limits = limitsOfItem(item, unit);
  const note = one.note === '' ? '' : ` ${one.note.trim().replace(/[^.!?]$/, '$&.')}`;
  return {
    id: `${LIST}${listId}-${item.id}`,
    title: item.name,
    status: 'fail',
    value,
    limit: value === null ? null : value < (item.least ?? value) ? item.least : item.most,
    unit: UNIT[item.kind],
    sentence: `Found ${foundOfItem(one, unit)}; ${limits} is needed.${note}`,
    source: list?.source || list?.name || 'the inspection list',
    answer: null,
  };
}

function wholeList(items: ReturnType<typeof itemsOf>, stops: boolean): readonly Finding[] {
  if (items.length === 0) return [];
  const open = items.filter(({ answer }) => answer === null).map(({ item }) => item.name);
  const base = {
    title: 'Inspection list',
    value: items.length - open.length,
    limit: items.length,
    unit: '',
    source: 'the shop’s inspection list',
    answer: null,
  };
  const more = open.length - MOST_NAMED;
  const named = more > 0 ? [...open.slice(0, MOST_NAMED), `${more} more`] : open;
  if (open.length === 0) {
    const all = items.length === 1 ? 'The 1 item is' : `All ${items.length} items are`;
    return [{ ...base, id: `${LIST}done`, status: 'pass', sentence: `${all} inspected.` }];
  }
  return [
    {
      ...base,
      id: LIST_OPEN,
      status: stops ? 'fail' : 'not-checked',
      sentence: `Not inspected, ${open.length} of ${items.length}: ${listInWords(named)}.`,
    },
  ];
}

/** Cover types by name, for whoever reads which a list is for. */
export function listIsFor(
  familyIds: readonly string[],
  families: readonly { readonly id: string; readonly body: Pick<Family, 'name'> }[],
): string {
  if (familyIds.length === 0) return 'every cover type';
  return listInWords(familyIds.map((id) => families.find((one) => one.id === id)?.body.name ?? id));
}

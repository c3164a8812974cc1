import { briefLength, type LengthUnit, MINUS, PRESSURE, printAs, printTorque } from './print.ts';

/** Inspection lists: what a shop looks at and measures on a cover's hard parts, against its own figures. */

export const ITEM_KINDS = ['yes-no', 'length', 'torque', 'pressure'] as const;
export type ItemKind = (typeof ITEM_KINDS)[number];
export const ITEM_KIND_WORD: Readonly<Record<ItemKind, string>> = {
  'yes-no': 'yes or no',
  length: 'a length',
  torque: 'a torque',
  pressure: 'a pressure',
};

/** One item of a list. */
export interface InspectionItem {
  /** Stays the same while the item is worded anew or gets other limits. */
  readonly id: string;
  readonly name: string;
  readonly kind: ItemKind;
  /** In mm, N·m or MPa; null where there is no such limit, and for a yes or no. */
  readonly least: number | null;
  readonly most: number | null;
  /** How it is done, or what is asked. */
  readonly how: string;
}

export interface InspectionList {
  readonly name: string;
  /** Ids of the cover types it is for; none: for every cover type. */
  readonly familyIds: readonly string[];
  readonly items: readonly InspectionItem[];
  /** Where its limits come from. */
  readonly source: string;
  readonly note: string;
}

/** One item as it was answered on a job, with the item as it then was. */
export interface InspectedItem {
  readonly listId: string;
  readonly listRevision: number;
  readonly item: InspectionItem;
  /** Of a yes or no; null for what is measured. */
  readonly ok: boolean | null;
  /** In mm, N·m or MPa; null for a yes or no. */
  readonly value: number | null;
  readonly typed: string;
  /** It looked like a slip, was asked about, and is right all the same. */
  readonly confirmed: boolean;
  readonly note: string;
  readonly who: string;
  readonly at: string;
}

/** What was found of the inspection list on a job. */
export interface Inspected {
  readonly items: readonly InspectedItem[];
}

/** A list that is for a job's cover type. */
export interface ListForJob {
  readonly id: string;
  readonly revision: number;
  readonly list: InspectionList;
}

/** Whether an answer is to the item as it now is: it may be worded anew, but not have another limit. */
function answersItem({ item: was }: InspectedItem, is: InspectionItem): boolean {
  return was.id === is.id && was.kind === is.kind && was.least === is.least && was.most === is.most;
}

/** Every item of the lists, with its answer; null where nobody answered it as it now is. */
export function itemsOf(
  lists: readonly ListForJob[],
  inspected: Inspected | null,
): readonly {
  readonly of: ListForJob;
  readonly item: InspectionItem;
  readonly answer: InspectedItem | null;
}[] {
  return lists.flatMap((of) =>
    of.list.items.map((item) => ({
      of,
      item,
      answer: inspected?.items.find((one) => one.listId === of.id && answersItem(one, item)) ?? null,
    })),
  );
}

const SAME = 1e-9;

/** Whether what was found is as it has to be. */
export function isItemOk({ item, ok, value }: InspectedItem): boolean {
  if (value === null) return ok === true;
  const { least, most } = item;
  return (least === null || value >= least - SAME) && (most === null || value <= most + SAME);
}

/** A figure of an item, in the reader's unit. */
function itemFigure(kind: ItemKind, value: number, unit: LengthUnit): string {
  switch (kind) {
    case 'torque':
      return printTorque(value, unit, 1);
    case 'pressure':
      return printAs(value, PRESSURE[unit]);
    default:
      return briefLength(value, unit);
  }
}

/** "0.1 to 0.4 mm", "at most 0.05 mm", "yes"; '' where nothing is asked of it. */
export function limitsOfItem({ kind, least, most }: InspectionItem, unit: LengthUnit): string {
  if (kind === 'yes-no') return 'yes';
  const figure = (value: number) => itemFigure(kind, value, unit);
  if (least !== null && most !== null) return `${figure(least)} to ${figure(most)}`;
  if (least !== null) return `at least ${figure(least)}`;
  return most === null ? '' : `at most ${figure(most)}`;
}

/** "0.25 mm", "yes", "no". */
export function foundOfItem({ item, ok, value }: InspectedItem, unit: LengthUnit): string {
  if (value !== null) return itemFigure(item.kind, value, unit).replace(/^-/, MINUS);
  return ok ? 'yes' : 'no';
}

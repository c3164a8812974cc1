import { day } from '../../../../shared/schemas/fields.ts';
import { isDay } from '../../../../shared/words/day.ts';
import type { BodyColumn } from '../../request/bodyColumns.ts';
import { type Cell, unguarded } from '../../request/csv.ts';

/** A cell as a box of the form would have it typed, or why it cannot be one. */
export type CellRead =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly message: string };

const typed = (text: string): CellRead => ({ ok: true, text });
const refused = (message: string): CellRead => ({ ok: false, message });

/** What a spreadsheet writes so that it leaves a text as it is: ="3/8-24". */
const KEPT_AS_TEXT = /^="((?:[^"]|"")*)"$/;
const BROKEN = /^#(?:REF!|N\/A|VALUE!|DIV\/0!|NAME\?|NUM!|NULL!|SPILL!)$/i;

/** A cell as the list that went out has it, its guard taken off. */
export function plainCell(cell: string): string {
  return unguarded(cell).replaceAll('\r\n', '\n').trim();
}

/** The text of a cell without what spreadsheets put round it. */
export function cellText(cell: string): CellRead {
  const text = cell.replaceAll('\r\n', '\n').trim();
  const kept = KEPT_AS_TEXT.exec(text)?.[1];
  if (kept !== undefined) return typed(kept.replaceAll('""', '"').trim());
  if (BROKEN.test(text)) return refused(`The spreadsheet shows the error ${text} here. Correct it there.`);
  if (text.startsWith('='))
    return refused('This is a formula of a spreadsheet. Put what it gives here, and send the file again.');
  return typed(plainCell(cell));
}

/** Whether a cell still says what the list would say of what is kept. */
export function saysTheSame(text: string, kept: Cell, decimalSign: 'point' | 'comma'): boolean {
  if (typeof kept === 'number') {
    const plain = decimalSign === 'comma' ? text.replace(',', '.') : text;
    return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(plain) && Number(plain) === kept;
  }
  if (typeof kept === 'boolean') return yesNo(text) === kept;
  return text === (kept ?? '').replaceAll('\r\n', '\n').trim();
}

/** A text as the box of its field has it: a choice by its word, a day as it is kept, a yes as a tick. */
export function boxText(
  text: string,
  { field }: Pick<BodyColumn<never>, 'field'>,
  kept: Cell,
  ownUnit: string | null,
): CellRead {
  if (text === '') return typed('');
  switch (field.kind) {
    case 'text':
    case 'formula':
      return typed(text);
    case 'choice': {
      const word = text.toLowerCase();
      const found = Object.entries(field.options).find(
        ([value, said]) => value === text || said.toLowerCase() === word,
      );
      return found
        ? typed(found[0])
        : refused(`"${text.slice(0, 60)}" is not one of: ${Object.values(field.options).join(', ')}.`);
    }
    case 'yes-no': {
      const said = yesNo(text);
      if (said === null) return refused(`"${text.slice(0, 60)}" is neither yes nor no.`);
      return typed(field.optional ? (said ? 'yes' : 'no') : said ? '1' : '');
    }
    case 'day':
      return dayText(text, kept);
    case 'share':
      // The list has the share itself, the box its percentage.
      return typed(/^[\d.,]+$/.test(text) ? `${Number(text.replace(',', '.')) * 100}` : text);
    default:
      return typed(ownUnit !== null && /^[\d\s.,/+-]+$/.test(text) ? `${text} ${ownUnit}` : text);
  }
}

const YES: ReadonlySet<string> = new Set(['yes', 'true', '1']);
const NO: ReadonlySet<string> = new Set(['no', 'false', '0']);

export function yesNo(text: string): boolean | null {
  const word = text.toLowerCase();
  return YES.has(word) ? true : NO.has(word) ? false : null;
}

const IS_DAY = day('The day');

/** A spreadsheet rewrites 2026-11-24 in its own way; what can be read two ways is asked for as it is kept. */
function dayText(text: string, kept: Cell): CellRead {
  if (isDay(text)) return typed(text);
  const parts = /^(\d{1,2})[/.-](\d{1,2})[/.-](\d{4})$/.exec(text);
  if (parts === null) return refused(`"${text.slice(0, 40)}" is no day. Write it as 2026-11-24.`);
  const [, a = '', b = '', year] = parts;
  const as = (month: string, day: string) => `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  const days = [...new Set([as(a, b), as(b, a)])].filter((one) => IS_DAY.safeParse(one).success);
  const same = days.find((one) => one === kept);
  if (same !== undefined) return typed(same);
  if (days.length === 1) return typed(days[0]!);
  return refused(
    days.length === 0
      ? `"${text}" is no day of the calendar. Write it as 2026-11-24.`
      : `"${text}" can be ${days.join(' or ')}. Write it so, year first.`,
  );
}

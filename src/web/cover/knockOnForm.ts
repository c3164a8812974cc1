import { writeLength } from '../../../shared/quantity/writeLength.ts';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import { knockOnSchema } from '../../../shared/schemas/knockOn.ts';
import type { KnockOn, WithinLimits } from '../../../shared/words/cover.ts';
import { KNOCK_ON, type KnockOnRow } from '../../../views/pages/cover/knockOnFields.tsx';
import { type FieldLine, lengthInWords } from '../request/fieldLines.ts';
import type { Fields, TypedForm, Writing } from '../request/typed.ts';

const ROWS = KNOCK_ON.flatMap(({ rows }) => rows);

/** What was typed of it; null while nothing was. */
export function readKnockOn(form: TypedForm): KnockOn | null {
  const values = ROWS.map((row) => [row.key, readRow(form, row)] as const);
  if (values.every(([, value]) => value === null)) return null;
  const given = Object.fromEntries(values.map(([key, value]) => [key, value ?? undefined]));
  const parsed = knockOnSchema.safeParse(given);
  if (parsed.success) return parsed.data;
  form.addFaults(faultsOf(parsed.error), fieldOf);
  return null;
}

function fieldOf(path: string): string {
  return `k.${path
    .replace('.leastMm', '.least')
    .replace('.mostMm', '.most')
    .replace(/\.(mm|\d+)$/, '')}`;
}

/** The field of a path below `knockOn`; null for any other path. */
export function knockOnField(path: string): string | null {
  const below = /^knockOn\.(.+)$/.exec(path)?.[1];
  return below === undefined ? null : fieldOf(below);
}

function readRow(form: TypedForm, { key, label, kind }: KnockOnRow): unknown {
  const name = `k.${key}`;
  if (kind === 'heights') {
    const heights = form.lengths(name, label);
    return heights.length === 0 ? null : heights;
  }
  const mm = form.length(name, label);
  if (kind === 'length') return mm;
  const leastMm = form.length(`${name}.least`, `${label}, at least`);
  const mostMm = form.length(`${name}.most`, `${label}, at most`);
  if (mm === null && (leastMm !== null || mostMm !== null)) form.needed(mm, name, label);
  return mm === null ? null : { mm, leastMm, mostMm };
}

export function knockOnAsTyped(knockOn: KnockOn | null, writing: Writing): Fields {
  if (knockOn === null) return {};
  const text = (mm: number | null) =>
    mm === null ? '' : writeLength(mm, writing.lengthUnit, writing.decimalSign);
  const pairs = ROWS.flatMap(({ key, kind }): [string, string][] => {
    const value = knockOn[key];
    if (kind === 'heights') return [[`k.${key}`, (value as readonly number[]).map(text).join('; ')]];
    if (kind === 'length') return [[`k.${key}`, text(value as number | null)]];
    const within = value as WithinLimits | null;
    return [
      [`k.${key}`, text(within?.mm ?? null)],
      [`k.${key}.least`, text(within?.leastMm ?? null)],
      [`k.${key}.most`, text(within?.mostMm ?? null)],
    ];
  });
  return Object.fromEntries(pairs);
}

/** Only what was given, in words. */
export function knockOnLines(knockOn: KnockOn | null, writing: Writing): FieldLine[] {
  const typed = knockOnAsTyped(knockOn, writing);
  return ROWS.flatMap(({ key, label, kind }) => {
    if (knockOn === null || (typed[`k.${key}`] ?? '') === '') return [];
    const value = knockOn[key];
    if (kind === 'heights') {
      return [
        { label, value: (value as readonly number[]).map((mm) => lengthInWords(mm, writing)).join('; ') },
      ];
    }
    if (kind === 'length') return [{ label, value: lengthInWords(value as number, writing) }];
    const { mm, leastMm, mostMm } = value as WithinLimits;
    const limits = [
      ...(leastMm === null ? [] : [`at least ${lengthInWords(leastMm, writing)}`]),
      ...(mostMm === null ? [] : [`at most ${lengthInWords(mostMm, writing)}`]),
    ];
    return [{ label, value: [lengthInWords(mm, writing), ...limits].join(', ') }];
  });
}

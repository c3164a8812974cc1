import type { FieldLine, Telling } from '../../../shared/quantity/fieldLines.ts';
import type { Family } from '../../../shared/words/catalogue.ts';
import type { FitLimits } from '../../../shared/words/cover.ts';
import { FIT_LIMITS } from '../../../views/pages/catalogue/fitLimitsFields.tsx';
import { lengthsOf } from '../request/fieldLines.ts';
import type { Fields, TypedForm } from '../request/typed.ts';

/** The family's figures as typed; null while none was. */
export function readFitLimits(form: TypedForm): FitLimits | null {
  const values = FIT_LIMITS.map(({ key, label }) => [key, form.length(`lim.${key}`, label)] as const);
  const source = form.text('lim.source');
  const any = values.some(([, mm]) => mm !== null);
  if (!any && source === '') return null;
  if (source === '') form.fault('lim.source', 'These figures need their source. Say where they are printed.');
  if (!any)
    form.fault('lim.source', 'A source is given, but no figure. Give one, or leave the source empty.');
  return { ...(Object.fromEntries(values) as Omit<FitLimits, 'source'>), source };
}

export function fitLimitsAsTyped({ limits = null }: Family, length: (mm: number | null) => string): Fields {
  if (limits === null) return {};
  const figures = FIT_LIMITS.map(({ key }) => [`lim.${key}`, length(limits[key])]);
  return { ...Object.fromEntries(figures), 'lim.source': limits.source };
}

/** Only what was given, in words. */
export function fitLimitsLines({ limits = null }: Family, telling: Telling): FieldLine[] {
  if (limits === null) return [];
  const length = lengthsOf(limits, 'limits.', telling);
  return [
    ...FIT_LIMITS.flatMap(({ key, label }) => (limits[key] === null ? [] : [{ label, value: length(key) }])),
    { label: 'Source of these figures', value: limits.source },
  ];
}

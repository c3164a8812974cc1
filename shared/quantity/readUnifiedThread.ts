import type { ThreadSpec, UnifiedClass } from '../words/stud/thread.ts';
import type { CalloutRead } from './readMetricThread.ts';
import { UNIFIED_SIZES, type UnifiedSize } from './threadTables.ts';

type Series = Extract<ThreadSpec, { system: 'unified' }>['series'];

const SIZE = String.raw`\d+[- ]\d+ ?\/ ?\d+|\d+ ?\/ ?\d+|\d*\.\d+|\d+`;
const CALLOUT = new RegExp(
  String.raw`^(#|no\.?)? ?(${SIZE}) ?(?:in\.?|["″”])? ?[-x×] ?(\d+)(?: ?-? ?([A-Z]{2,5}))?(?:(?: ?- ?| |(?<=[A-Z]))(\d[A-Z]))?$`,
  'i',
);
const SERIES_PITCHED = ['UNC', 'UNF', 'UNEF'] as const;
const CLASSES: readonly UnifiedClass[] = ['2A', '3A', '2B', '3B'];
/** Coarser than any standard thread (#6-32 has 4.4), or finer than any gauge: a slip. */
const LEAST_THREADS_PER_DIAMETER = 4;
const MOST_PER_INCH = 80;

function sizeOf(prefix: string, text: string, perInch: number): UnifiedSize | undefined {
  if (prefix !== '') return UNIFIED_SIZES.find((size) => size.written === `#${Number(text)}`);
  const written = text.replace(/ ?\/ ?/, '/').replace(' ', '-');
  if (written.includes('/')) return UNIFIED_SIZES.find((size) => size.written === written);
  if (written.includes('.')) {
    return UNIFIED_SIZES.find((size) => Math.abs(size.inch - Number(written)) <= 0.0005 + 1e-12);
  }
  // 10-32 is a number size; 1-8 is one inch, 1-64 and 1-72 are #1.
  const inch = written === '1' && perInch < 64;
  return UNIFIED_SIZES.find((size) => size.written === (inch ? '1' : `#${Number(written)}`));
}

function seriesOf(size: UnifiedSize, perInch: number): Series {
  const named = SERIES_PITCHED.find((series) => size[series] === perInch);
  return named ?? (size.UN.includes(perInch) ? 'UN' : 'UNS');
}

function classOf(typed: string | undefined, role: string): UnifiedClass | string {
  const chosen = (typed ?? (role === 'internal' ? '2B' : '2A')).toUpperCase();
  const known = CLASSES.find((one) => one === chosen);
  if (!known) return `has class ${chosen}; the classes known are 2A and 3A for a stud, 2B and 3B for a nut.`;
  if (role === 'external' && known.endsWith('B'))
    return `has class ${known}, which is a nut’s; a stud’s is 2A or 3A.`;
  if (role === 'internal' && known.endsWith('A'))
    return `has class ${known}, which is a stud’s; a nut’s is 2B or 3B.`;
  return known;
}

/** A size with a word for its pitch, or without any: `3/8 fine`, `3/8 UNC`, `3/8`. */
const SIZE_ALONE = new RegExp(
  String.raw`^(#|no\.?)? ?(${SIZE}) ?(?:in\.?|["″”])?(?: ?-? ?(coarse|fine|extra[- ]fine|unc|unf|unef))?$`,
  'i',
);
const NAMED: Readonly<Record<string, (typeof SERIES_PITCHED)[number]>> = {
  coarse: 'UNC',
  fine: 'UNF',
  'extra fine': 'UNEF',
};

/** The series of a size, coarse first. */
export function seriesOfSize(size: UnifiedSize): string[] {
  return SERIES_PITCHED.filter((one) => size[one] !== null).map(
    (one) => `${size.written}-${size[one]} ${one}`,
  );
}

function usualOf(size: UnifiedSize): string {
  return seriesOfSize(size).join(', ');
}

/** `3/8 fine` as the callout it means, or what there is to choose from; null for a text of another kind. */
function readSizeAlone(text: string, role: 'external' | 'internal' | 'either'): CalloutRead | null {
  const [, prefix = '', written = '', word] = SIZE_ALONE.exec(text) ?? [];
  const size = written === '' ? undefined : sizeOf(prefix, written, 0);
  if (!size) return null;
  const named = word?.toLowerCase().replace('-', ' ') ?? '';
  const series = NAMED[named] ?? SERIES_PITCHED.find((one) => one.toLowerCase() === named);
  if (series !== undefined && size[series] !== null)
    return readUnifiedThread(`${size.written}-${size[series]}`, role);
  return {
    ok: false,
    why: `needs its threads per inch; usual are ${usualOf(size)}.`,
    choices: seriesOfSize(size),
  };
}

/** `3/8-24`, `7/16-20 UNF-2A`, `#10-32`, `.375-24`, `3/8 fine`. `text` is tidy. */
export function readUnifiedThread(text: string, role: 'external' | 'internal' | 'either'): CalloutRead {
  const parts = CALLOUT.exec(text);
  if (!parts) {
    const alone = readSizeAlone(text, role);
    if (alone !== null) return alone;
    return {
      ok: false,
      why: 'is not a thread callout; write 3/8-24, 7/16-20 UNF-2A, #10-32, M10x1.25 or M10.',
    };
  }
  const perInch = Number(parts[3]);
  const size = sizeOf(parts[1] ?? '', parts[2] ?? '', perInch);
  if (!size)
    return { ok: false, why: 'has no size of ASME B1.1 up to 1-1/2 in; write it as in 3/8-24 or #10-32.' };
  const series = seriesOf(size, perInch);
  if (perInch > MOST_PER_INCH || perInch * size.inch < LEAST_THREADS_PER_DIAMETER) {
    return {
      ok: false,
      why: `has ${perInch} threads per inch, which no ${size.written} thread has; usual are ${usualOf(size)}.`,
    };
  }
  const threadClass = classOf(parts[5], role);
  if (!CLASSES.includes(threadClass as UnifiedClass)) return { ok: false, why: threadClass };
  const designation = `${size.written}-${perInch} ${series}-${threadClass}`;
  const typedSeries = parts[4]?.toUpperCase();
  if (typedSeries !== undefined && typedSeries !== series) {
    const fits = SERIES_PITCHED.find((one) => one === typedSeries);
    const other =
      fits && size[fits] !== null ? `, and ${size.written} ${fits} has ${size[fits]} threads per inch` : '';
    return {
      ok: false,
      why: `is named ${typedSeries}, but ${size.written}-${perInch} is ${series}${other}. Did you mean ${designation}?`,
      meant: designation,
    };
  }
  return {
    ok: true,
    thread: {
      system: 'unified',
      designation,
      majorInch: size.inch,
      threadsPerInch: perInch,
      series,
      class: threadClass as UnifiedClass,
    },
  };
}

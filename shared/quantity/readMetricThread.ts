import { listInWords } from '../words/print.ts';
import type { MetricClass, ThreadSpec } from '../words/stud/thread.ts';
import { METRIC_PITCHES } from './threadTables.ts';

export type CalloutRead =
  | { readonly ok: true; readonly thread: ThreadSpec }
  | {
      readonly ok: false;
      readonly why: string;
      readonly meant?: string;
      /** Callouts it may be. */
      readonly choices?: readonly string[];
    };

const CALLOUT = /^m ?(\d+(?:[.,]\d+)?)(?: ?[x×*-] ?(\d+(?:[.,]\d+)?))?(?:(?: ?- ?| )(\d[a-z]\d?[a-z]?))?$/i;
const CLASSES: Readonly<Record<string, 'external' | 'internal'>> = { '6g': 'external', '6H': 'internal' };

function decimal(text: string): number {
  return Number(text.replace(',', '.'));
}

function classOf(typed: string | undefined, role: string): MetricClass | string {
  const chosen = typed ?? (role === 'internal' ? '6H' : '6g');
  const side = CLASSES[chosen];
  if (side === undefined) {
    return `has class ${chosen}; the classes known are 6g for a stud and 6H for a nut, with that capital or small letter.`;
  }
  if (role !== 'either' && side !== role) {
    return role === 'external'
      ? 'has class 6H, which is a nut’s; a stud’s is 6g.'
      : 'has class 6g, which is a stud’s; a nut’s is 6H.';
  }
  return chosen as MetricClass;
}

/** `M10x1.25`, `M10×1.5-6g`, `M10`. `text` is tidy. ISO 261 sizes and pitches only: another is a slip or a special. */
export function readMetricThread(text: string, role: 'external' | 'internal' | 'either'): CalloutRead {
  const parts = CALLOUT.exec(text);
  if (!parts)
    return {
      ok: false,
      why: 'is not a thread callout; write M10x1.25, M10x1.5-6g, or M10 for the coarse pitch.',
    };
  const majorMm = decimal(parts[1] ?? '');
  const pitches = METRIC_PITCHES.get(majorMm);
  if (!pitches) {
    const near = [...METRIC_PITCHES.keys()].sort((a, b) => Math.abs(a - majorMm) - Math.abs(b - majorMm));
    const two = near.slice(0, 2).sort((a, b) => a - b);
    return {
      ok: false,
      why: `has no size of ISO 261 between M3 and M30; the nearest are ${listInWords(two.map((size) => `M${size}`))}.`,
    };
  }
  const pitchMm = parts[2] === undefined ? pitches[0] : decimal(parts[2]);
  if (!pitches.includes(pitchMm)) {
    return {
      ok: false,
      why: `has a pitch of ${pitchMm} mm; ISO 261 has ${listInWords(pitches.map(String))} mm for M${majorMm}.`,
    };
  }
  const threadClass = classOf(parts[3], role);
  if (threadClass !== '6g' && threadClass !== '6H') return { ok: false, why: threadClass };
  const designation = `M${majorMm}×${pitchMm}-${threadClass}`;
  return { ok: true, thread: { system: 'metric', designation, majorMm, pitchMm, class: threadClass } };
}

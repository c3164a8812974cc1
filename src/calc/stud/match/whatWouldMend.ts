import { type LengthUnit, listInWords, printLength } from '../../../../shared/words/print.ts';
import type { Fits, Nut, Stud, StudCheckInput } from '../../../../shared/words/stud/stud.ts';
import { checkStud } from '../checkStud.ts';
import { linesUpFromMm, studWanted } from './studWanted.ts';

export interface Mend {
  readonly sentence: string;
  /** Whether it would then fit, as checkStud found. */
  readonly fits: Fits;
  readonly changed: readonly string[];
}

const BETTER = { no: 0, 'with-care': 1, yes: 2 } as const;
/** To what a size is rounded that somebody looks for: 0.1 mm or 0.005 in, a washer 0.5 mm or 1/64 in. */
const SIZE_STEP: Readonly<Record<LengthUnit, number>> = { mm: 0.1, in: 0.127 };
const WASHER_STEP: Readonly<Record<LengthUnit, number>> = { mm: 0.5, in: 25.4 / 64 };
const up = (mm: number, step: number): number => Math.ceil(mm / step - 1e-9) * step;
const down = (mm: number, step: number): number => Math.floor(mm / step + 1e-9) * step;

/**
 * What would turn a `no`, or a `with-care`, into something better: another stud, a longer pilot, a washer, the right nut,
 * a taller or a thinner one, a shim under every pad. Each is tried with checkStud and told only if it does better; the best first.
 *   Valid: lengths to the next 0.1 mm or 0.005 in, washers to the next 0.5 mm or 1/64 in. Holes, circles and the room are never changed. What
 *   cannot be, as a thread that begins behind the pad's face, is left out.
 *   Source: studWanted.ts.   Example: tests/calc/stud/match/whatWouldMend.test.ts
 *   Throws: a Refusal, as checkStud.
 */
export function whatWouldMend(input: StudCheckInput, unit: LengthUnit = 'mm'): readonly Mend[] {
  const before = checkStud(input, unit);
  if (before.fits === 'yes') return [];
  const tried = [
    otherNut(input),
    washer(input, unit),
    shim(input, unit),
    tallerNut(input, unit),
    thinnerNut(input, unit),
    longer(input, unit),
    other(input, unit),
  ];
  const mends = tried
    .flatMap((trial) => {
      if (trial === null) return [];
      const { fits } = checkStud(trial.input, unit);
      const would = fits === 'yes' ? 'would fit' : 'would fit with care';
      return BETTER[fits] > BETTER[before.fits]
        ? [{ sentence: `${trial.what} ${would}.`, fits, changed: trial.changed }]
        : [];
    })
    .sort((a, b) => BETTER[b.fits] - BETTER[a.fits]);
  // The same sizes changed twice say the same twice.
  return mends.filter(
    ({ changed }, at) => mends.findIndex((one) => one.changed.join() === changed.join()) === at,
  );
}

interface Trial {
  readonly what: string;
  readonly input: StudCheckInput;
  readonly changed: readonly string[];
}

function withNut(input: StudCheckInput, nut: Partial<Nut>): StudCheckInput {
  return { ...input, nut: { ...input.nut!, ...nut } };
}

function otherNut(input: StudCheckInput): Trial | null {
  if (!input.nut?.thread) return null;
  const name = input.stud.thread.designation.replace(/-(2A|3A|6g)$/, '');
  return {
    what: `With a ${name} nut, this stud`,
    input: withNut(input, { thread: null }),
    changed: ['nut.thread'],
  };
}

function washer(input: StudCheckInput, unit: LengthUnit): Trial | null {
  if (!input.nut) return null;
  const short = input.stud.threadStartMm - studWanted(input).threadStartMostMm;
  if (short <= 1e-9) return null;
  const washerMm = up(input.nut.washerMm + short, WASHER_STEP[unit]);
  return {
    what: `With a ${printLength(washerMm, unit, 'coarse')} washer under the nut, this stud`,
    input: withNut(input, { washerMm }),
    changed: ['nut.washerMm'],
  };
}

/** A shim under every pad does what a washer does, and takes its thickness from the gap. */
function shim(input: StudCheckInput, unit: LengthUnit): Trial | null {
  const { stack, pullForwardMm: g } = input;
  const short = input.stud.threadStartMm - studWanted(input).threadStartMostMm;
  if (short <= 1e-9 || g === null) return null;
  const thicknessMm = up(short, WASHER_STEP[unit]);
  if (thicknessMm > g) return null;
  const layer = {
    name: 'shim',
    kind: 'shim' as const,
    thicknessMm,
    toleranceMm: 0,
    holeDiameterMm: stack.layers[0]?.holeDiameterMm ?? null,
    chamferMm: null,
  };
  return {
    what: `With a ${printLength(thicknessMm, unit, 'coarse')} shim under every pad, this stud`,
    input: {
      ...input,
      stack: { ...stack, layers: [layer, ...stack.layers] },
      pullForwardMm: g - thicknessMm,
    },
    changed: ['stack.layers', 'pullForwardMm'],
  };
}

/** A thread too short to stand out of this nut may stand out of a thinner one. */
function thinnerNut(input: StudCheckInput, unit: LengthUnit): Trial | null {
  const { nut, stud } = input;
  const end = studWanted({ ...input, pullForwardMm: null }).threadEndLeastMm;
  if (!nut || end === null || stud.threadEndMm >= end - 1e-9) return null;
  const heightMm = down(nut.heightMm - (end - stud.threadEndMm), SIZE_STEP[unit]);
  if (heightMm <= 2 * nut.countersinkMm + nut.toleranceMm) return null;
  return {
    what: `With a nut at most ${printLength(heightMm, unit, 'coarse')} high, of the same strength, this stud`,
    input: withNut(input, { heightMm }),
    changed: ['nut.heightMm'],
  };
}

function tallerNut(input: StudCheckInput, unit: LengthUnit): Trial | null {
  const { nut } = input;
  const neededMm = checkStud(input).engagement?.neededMm ?? null;
  if (!nut || neededMm === null) return null;
  const heightMm = up(neededMm + 2 * nut.countersinkMm + nut.toleranceMm, SIZE_STEP[unit]);
  if (heightMm <= nut.heightMm) return null;
  return {
    what: `With a nut at least ${printLength(heightMm, unit, 'coarse')} high, this stud`,
    input: withNut(input, { heightMm }),
    changed: ['nut.heightMm'],
  };
}

/** The same thread on a longer stud: what the long one of a pair is. */
function longer(input: StudCheckInput, unit: LengthUnit): Trial | null {
  const { stud, stack, pullForwardMm: g } = input;
  if (g === null) return null;
  const most = stack.layers.reduce((sum, layer) => sum + layer.thicknessMm + layer.toleranceMm, 0);
  const least = Math.max(g + most + stud.lengthToleranceMm + SIZE_STEP[unit], linesUpFromMm(input));
  const projectionMm = up(least, SIZE_STEP[unit]);
  if (projectionMm <= stud.projectionMm) return null;
  return {
    what: `A stud with the same thread and at least ${printLength(projectionMm, unit, 'coarse')} length from pad`,
    input: { ...input, stud: { ...stud, projectionMm } },
    changed: ['stud.projectionMm'],
  };
}

/** The same stud with every length put right. */
function other(input: StudCheckInput, unit: LengthUnit): Trial | null {
  const { stud } = input;
  const wanted = studWanted(input);
  const mm = (x: number) => printLength(x, unit, 'coarse');
  const said: string[] = [];
  const changes: Partial<{ -readonly [K in keyof Stud]: Stud[K] }> = {};
  if (stud.threadStartMm > wanted.threadStartMostMm + 1e-9) {
    changes.threadStartMm = down(wanted.threadStartMostMm, SIZE_STEP[unit]);
    if (changes.threadStartMm < 0) return null;
    said.push(`its first full thread at most ${mm(changes.threadStartMm)} from the pad`);
  }
  const end = wanted.threadEndLeastMm;
  if (end !== null && stud.threadEndMm < end - 1e-9) {
    changes.threadEndMm = up(end, SIZE_STEP[unit]);
    said.push(`its last full thread at least ${mm(changes.threadEndMm)} from the pad`);
  }
  const threadEndMm = changes.threadEndMm ?? stud.threadEndMm;
  const tipLeast = Math.max(wanted.projectionLeastMm, threadEndMm);
  if (stud.projectionMm < tipLeast - 1e-9) {
    changes.projectionMm = up(tipLeast + (tipLeast > threadEndMm ? SIZE_STEP[unit] : 0), SIZE_STEP[unit]);
    said.push(`at least ${mm(changes.projectionMm)} length from pad`);
  } else if (wanted.projectionMostMm !== null && stud.projectionMm > wanted.projectionMostMm - 1e-9) {
    changes.projectionMm = down(wanted.projectionMostMm - 1e-6, SIZE_STEP[unit]);
    if (changes.projectionMm < threadEndMm) return null;
    said.push(`at most ${mm(changes.projectionMm)} length from pad`);
  }
  if (stud.pilotDiameterMm !== null && stud.pilotDiameterMm >= wanted.pilotDiameterBelowMm - 1e-9) {
    changes.pilotDiameterMm = down(wanted.pilotDiameterBelowMm - 1e-6, SIZE_STEP[unit]);
    said.push(`a stud pilot of at most ${mm(changes.pilotDiameterMm)} diameter`);
  }
  const next = { ...stud, ...changes };
  if (said.length === 0 || next.threadEndMm <= next.threadStartMm) return null;
  return {
    what: `A stud with the same thread, ${listInWords(said)}`,
    input: { ...input, stud: next },
    changed: Object.keys(changes).map((name) => `stud.${name}`),
  };
}

import { type LengthUnit, listInWords, printLength, printNumber } from '../../../../shared/words/print.ts';
import type { Checked } from '../numbers/checked.ts';
import { atLeast } from '../numbers/inWords.ts';
import type { StudNumbers } from '../numbers/studNumbers.ts';

export interface HoleClearance {
  /** Largest the stud can be where it passes a hole: its major diameter at most, or a thicker pilot. */
  readonly studMm: number;
  /** The tightest hole given; null when none was. */
  readonly tightest: {
    readonly name: string;
    readonly holeMm: number;
    readonly clearanceMm: number;
  } | null;
}

/**
 * Does the stud go through the hole of every layer?   clearance = hole − max(d_max, pilot), wanted above 0
 *   d_max greatest major diameter of the stud's thread class, pilot its pilot's diameter, hole of the layer [mm]
 *   Valid: hole and stud in line; what may be out of line is in fixedFastenerPosition.ts.   Source: first principles
 *   Example: 3/8-24 2A (d_max 9.497), hole 10.3 → 0.80 mm (calc/stud/checkStud.test.ts)
 */
export function holes(numbers: StudNumbers, unit: LengthUnit): Checked & HoleClearance {
  const passing = passingOf(numbers);
  const { studMm, tightest, missing } = passing;
  const tight = tightest !== null && tightest.clearanceMm <= 1e-9;
  const status = tight ? 'fail' : missing.length > 0 ? 'not-checked' : 'pass';
  const answer = tightest && {
    symbol: 'c',
    value: tightest.clearanceMm,
    unit: 'mm' as const,
    how: [
      {
        formula: 'c = hole − max(d_max, pilot)',
        numbers: `c = ${printNumber(tightest.holeMm, 2)} − ${printNumber(studMm, 3)} = ${printNumber(tightest.clearanceMm, 2)} mm (${tightest.name})`,
        source: 'first principles; d_max of the thread’s class',
      },
    ],
    warnings: [],
  };
  const overMm = tight ? -tightest.clearanceMm : 0;
  return {
    studMm,
    tightest,
    finding: {
      id: 'holes',
      title: 'Hole diameters',
      status,
      value: tightest?.clearanceMm ?? null,
      limit: 0,
      unit: 'mm',
      sentence: inWords(passing, status, unit),
      source: 'first principles',
      answer,
    },
    field: 'holeDiameterMm',
    missMm: status === 'not-checked' ? null : overMm,
    short: status === 'not-checked' ? 'a hole diameter' : `it does not go through the ${tightest?.name}`,
    mend:
      status === 'not-checked'
        ? 'Measure every hole.'
        : `Needs a stud at least ${atLeast(overMm, unit, { more: true })} thinner. Don’t open the hole.`,
    counts: true,
    answers: answer ? { holeClearanceMm: answer } : {},
  };
}

interface Passing extends HoleClearance {
  /** What of the stud is thickest. */
  readonly what: 'thread' | 'stud pilot';
  /** Layers whose hole was not given. */
  readonly missing: readonly string[];
}

function passingOf({ input: { stud, stack }, thread, diameterMm }: StudNumbers): Passing {
  const threadMm = thread.majorMm.max ?? diameterMm;
  const studMm = Math.max(threadMm, stud.pilotDiameterMm ?? 0);
  let tightest: HoleClearance['tightest'] = null;
  for (const { name, holeDiameterMm: holeMm } of stack.layers) {
    if (holeMm === null) continue;
    const clearanceMm = holeMm - studMm;
    if (!(tightest && tightest.clearanceMm <= clearanceMm)) tightest = { name, holeMm, clearanceMm };
  }
  const missing = stack.layers.filter((layer) => layer.holeDiameterMm === null).map(({ name }) => name);
  return { studMm, tightest, what: studMm > threadMm ? 'stud pilot' : 'thread', missing };
}

function inWords(
  { studMm, tightest, what, missing }: Passing,
  status: 'pass' | 'fail' | 'not-checked',
  unit: LengthUnit,
): string {
  const mm = (x: number) => printLength(x, unit, 'coarse');
  switch (status) {
    case 'fail':
      return `The ${what}, ${mm(studMm)}, does not go through the ${mm(tightest?.holeMm ?? 0)} hole in the ${tightest?.name}.`;
    case 'not-checked':
      return `No hole diameter is entered for ${listInWords(missing.map((name) => `the ${name}`))}, so whether the stud goes through can’t be checked.`;
    case 'pass':
      return `The ${what}, at most ${mm(studMm)}, goes through every hole. The tightest, in the ${tightest?.name}, leaves ${mm(tightest?.clearanceMm ?? 0)}.`;
  }
}

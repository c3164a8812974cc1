import { type LengthUnit, listInWords, printLength, printNumber } from '../../../../shared/words/print.ts';
import type { Checked } from '../numbers/checked.ts';
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
  const { stud, stack } = numbers.input;
  const threadMm = numbers.thread.majorMm.max ?? numbers.diameterMm;
  const studMm = Math.max(threadMm, stud.pilotDiameterMm ?? 0);
  const given = stack.layers.flatMap((layer) =>
    layer.holeDiameterMm === null
      ? []
      : [{ name: layer.name, holeMm: layer.holeDiameterMm, clearanceMm: layer.holeDiameterMm - studMm }],
  );
  const missing = stack.layers.filter((layer) => layer.holeDiameterMm === null).map((layer) => layer.name);
  const tightest = given.reduce<HoleClearance['tightest']>(
    (least, hole) => (least && least.clearanceMm <= hole.clearanceMm ? least : hole),
    null,
  );
  const mm = (x: number) => printLength(x, unit, 'coarse');
  const what = studMm > threadMm ? 'pilot' : 'thread';
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
  const sentence = {
    fail: () =>
      `The stud’s ${what}, ${mm(studMm)}, does not go through the ${mm(tightest?.holeMm ?? 0)} hole of the ${tightest?.name}.`,
    'not-checked': () =>
      `Whether the stud goes through every hole is not known: no hole diameter was given for ${listInWords(missing.map((name) => `the ${name}`))}.`,
    pass: () =>
      `The stud’s ${what}, at most ${mm(studMm)}, goes through every hole; the tightest, ${mm(tightest?.holeMm ?? 0)} in the ${tightest?.name}, leaves ${mm(tightest?.clearanceMm ?? 0)}.`,
  }[status]();
  return {
    studMm,
    tightest,
    finding: {
      id: 'holes',
      title: 'Holes',
      status,
      value: tightest?.clearanceMm ?? null,
      limit: 0,
      unit: 'mm',
      sentence,
      source: 'first principles',
      answer,
    },
    field: 'holeDiameterMm',
    missMm: status === 'not-checked' ? null : overMm,
    short:
      status === 'not-checked'
        ? 'not every hole was measured'
        : `it does not go through the ${tightest?.name}`,
    mend:
      status === 'not-checked'
        ? 'Measure the missing holes.'
        : `A stud more than ${mm(overMm)} thinner would go through; do not open the hole.`,
    counts: true,
    answers: answer ? { holeClearanceMm: answer } : {},
  };
}

import { type LengthUnit, printLength, printNumber } from '../../../../shared/words/print.ts';
import { type Checked, notKnown } from '../numbers/checked.ts';
import type { StudNumbers } from '../numbers/studNumbers.ts';

/**
 * Does the weld or fillet at the stud's foot clear the hole it sits in?   room = hole/2 + chamfer − (d/2 + fillet)
 *   hole and chamfer of the layer on the pad, d stud diameter, fillet radius beyond the stud's own [mm]; wanted 0 or more
 *   Valid: stud in the middle of its hole. A fillet that clears the bare edge needs no chamfer.
 *   Source: first principles. Left out (null) when neither fillet nor chamfer was given.
 *   Example: hole 10.3, chamfer 0.5, 3/8 stud, fillet 0.6 → 0.29 mm (calc/stud/holes/holes.test.ts)
 */
export function filletClearsChamfer(numbers: StudNumbers, unit: LengthUnit): Checked | null {
  const { stud, stack } = numbers.input;
  const layer = stack.layers[0]!;
  if (stud.filletMm === null) return null;
  const base = {
    id: 'fillet',
    title: 'Fillet clears the hole',
    limit: 0,
    unit: 'mm',
    source: 'first principles',
  };
  const edgeMm =
    layer.holeDiameterMm === null
      ? null
      : layer.holeDiameterMm / 2 - (numbers.diameterMm / 2 + stud.filletMm);
  const roomMm =
    edgeMm === null || (layer.chamferMm === null && edgeMm < -1e-9) ? null : edgeMm + (layer.chamferMm ?? 0);
  const mm = (x: number) => printLength(x, unit, 'coarse');
  if (roomMm === null) {
    const what = edgeMm === null ? 'hole' : 'chamfer';
    return notKnown(base, {
      sentence: `Whether the fillet at the stud’s foot clears the hole is not known: the ${layer.name}’s ${what} was not given.`,
      field: edgeMm === null ? 'holeDiameterMm' : 'chamferMm',
      short: `the ${layer.name}’s ${what} was not given`,
      mend: `Measure the ${layer.name}’s ${what}.`,
    });
  }
  const clears = roomMm >= -1e-9;
  const answer = {
    symbol: 'c',
    value: roomMm,
    unit: 'mm',
    how: [
      {
        formula: 'c = hole/2 + chamfer − (d/2 + fillet)',
        numbers: `c = ${printNumber(layer.holeDiameterMm! / 2, 2)} + ${printNumber(layer.chamferMm ?? 0, 2)} − (${printNumber(numbers.diameterMm / 2, 2)} + ${printNumber(stud.filletMm, 2)}) = ${printNumber(roomMm, 2)} mm`,
        source: 'first principles',
      },
    ],
    warnings: [],
  } as const;
  return {
    finding: {
      ...base,
      status: clears ? 'pass' : 'fail',
      value: roomMm,
      sentence: clears
        ? `The fillet at the stud’s foot clears the hole’s edge by ${mm(roomMm)}.`
        : `The fillet at the stud’s foot fouls the hole’s edge by ${mm(-roomMm)}: the flexplate would not seat on the pad.`,
      answer,
    },
    field: 'filletMm',
    missMm: Math.max(0, -roomMm),
    short: 'the fillet at its foot fouls the hole',
    // Without any fillet the stud itself would foul the hole.
    mend: -roomMm > stud.filletMm + 1e-9 ? '' : `A fillet ${mm(Math.max(0, -roomMm))} smaller would do.`,
    counts: true,
    answers: { filletClearanceMm: answer },
  };
}

import { type LengthUnit, printLength, printNumber } from '../../../../shared/words/print.ts';
import { type Checked, notKnown } from '../numbers/checked.ts';
import { atLeast } from '../numbers/inWords.ts';
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
    title: 'Weld fillet at the hole',
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
      sentence: `The ${layer.name}’s ${what} is missing, so the weld fillet’s clearance can’t be checked.`,
      field: edgeMm === null ? 'holeDiameterMm' : 'chamferMm',
      short: `the ${layer.name}’s ${what}`,
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
        ? `The weld fillet clears the edge of the hole by ${mm(roomMm)}.`
        : `The weld fillet hits the edge of the hole by ${mm(-roomMm)}: the flexplate would not seat on the pad.`,
      answer,
    },
    field: 'filletMm',
    missMm: Math.max(0, -roomMm),
    short: 'its weld fillet hits the hole',
    // Without any fillet the stud itself would foul the hole.
    mend:
      -roomMm > stud.filletMm + 1e-9
        ? ''
        : `Needs a weld fillet at least ${atLeast(Math.max(0, -roomMm), unit)} smaller.`,
    counts: true,
    answers: { filletClearanceMm: answer },
  };
}

import { coverInput, SET_TWO } from '../../../data/examples/coverSets.ts';
import { SURE } from '../../../data/examples/measureExamples.ts';
import type { CheckedFigure } from '../../../views/parts/besideChecked.tsx';
import { checkCover } from '../../calc/cover/checkCover.ts';
import { conformanceProbability } from '../../calc/measure/conformanceProbability.ts';

/** Face and cut of two sets of stations (an independent second implementation, not published). */
export function coverBesideChecked(): CheckedFigure[] {
  const one = checkCover(coverInput());
  const two = checkCover(
    coverInput({ stations: SET_TWO, criteria: { ...coverInput().criteria!, faceRunoutLimitMm: 0.1 } }),
  );
  const mm = (what: string, found: number | null | undefined, checked: number, decimals: number) => ({
    what,
    found: found ?? Number.NaN,
    checked,
    decimals,
    unit: 'mm',
  });
  return [
    mm('first set: tool plane', one.cut.toolPlaneMm, -0.35, 3),
    mm('depth of cut', one.cut.dialledMm, 0.42, 3),
    mm('least wall left', one.leastWall.afterMm, 4.5, 3),
    mm('tilt over Ø 264', one.face.runoutMm, 0.1323, 4),
    mm('flatness, least squares', one.face.flatnessLeastSquaresMm, 0.01164, 5),
    mm('flatness, minimum zone', one.face.flatnessMinimumZoneMm, 0.01035, 5),
    mm('second set: least wall as chucked', two.leastWall.afterMm, 4.53, 3),
    mm('least wall indicated in, with shims', two.dialledIn?.leastWallMm, 4.614, 3),
    mm('gained by that', two.dialledIn?.wallGainedMm, 0.084, 3),
    { ...mm('toward', two.dialledIn?.tiltDirectionDeg, 247.5, 1), unit: '°' },
  ];
}

/** How sure it is that every station keeps the minimum (an independent second implementation, not published). */
export function sureBesideChecked(): CheckedFigure[] {
  const [three, own, shared, twelve] = SURE;
  const row = (what: string, given: (typeof SURE)[number], checked: number) => ({
    what,
    found: conformanceProbability(given),
    checked,
    decimals: 5,
    unit: '',
  });
  return [
    row('margins 0.02, 0.03, 0.05 mm; both errors 0.01 mm', three, 0.9115),
    row('one margin of 0.02 mm, all error its own', own, 0.9452),
    row('the same, most of it shared', shared, 0.9452),
    row('twelve margins of 0.01465 mm, nearly all shared', twelve, 0.9216),
  ];
}

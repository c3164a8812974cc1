import { type LengthUnit, printLength, printNumber } from '../../../../shared/words/print.ts';
import type { Checked } from '../numbers/checked.ts';
import type { HoleClearance } from './holes.ts';

/**
 * How far stud and hole may each be out of position and still meet: the fixed-fastener formula.   T = (H − F)/2
 *   H the tightest hole, F the largest stud [mm]; T diameter of the zone left to each of the two [mm]
 *   Valid: hole square to the face, position held over the stud's length (projected zone). A difference between the
 *   stack's bolt circle and the cover's uses it up: more than H − F and the studs cannot all enter.
 *   Source: ASME Y14.5-2018, Appendix B, fixed fastener
 *   Example: H 3.94, F 3.5 → T 0.22 each (published/studJoints.test.ts)
 */
export function fixedFastenerPosition(
  holes: HoleClearance,
  circles: { readonly differenceMm: number | null },
  unit: LengthUnit,
): Checked {
  const { tightest, studMm } = holes;
  const toleranceMm = tightest === null ? null : tightest.clearanceMm / 2;
  const mm = (x: number) => printLength(x, unit, 'coarse');
  const used = circles.differenceMm === null ? 0 : Math.abs(circles.differenceMm);
  const over = tightest !== null && used > 0 ? used - tightest.clearanceMm : 0;
  const answer = toleranceMm !== null && {
    symbol: 'T',
    value: toleranceMm,
    unit: 'mm' as const,
    how: [
      {
        formula: 'T = (H − F)/2',
        numbers: `T = (${printNumber(tightest!.holeMm, 2)} − ${printNumber(studMm, 3)})/2 = ${printNumber(toleranceMm, 2)} mm`,
        source: 'ASME Y14.5-2018, Appendix B, fixed fastener',
      },
    ],
    warnings: [],
  };
  const status = toleranceMm === null ? 'not-checked' : over > 1e-9 && toleranceMm > 0 ? 'caution' : 'pass';
  const sentence = {
    'not-checked':
      'No hole diameter is entered, so how far studs and holes may be off location can’t be checked.',
    caution: `The bolt circles differ by ${mm(used)}; a stud has ${mm(tightest?.clearanceMm ?? 0)} of play in its hole. The studs may not all enter.`,
    pass: `Each stud and each hole may be anywhere within a circle ${mm(Math.max(0, toleranceMm ?? 0))} across, around its true position.`,
  }[status];
  return {
    finding: {
      id: 'position',
      title: 'Hole location',
      status,
      value: toleranceMm,
      limit: null,
      unit: 'mm',
      sentence,
      source: 'ASME Y14.5-2018, Appendix B, fixed fastener',
      answer: answer || null,
    },
    field: status === 'not-checked' ? 'holeDiameterMm' : 'holeCircleDiameterMm',
    missMm: toleranceMm === null ? null : Math.max(0, over),
    short: 'the studs may not all enter their holes',
    mend: '',
    // A missing hole diameter already counts in "holes"; it must not count twice.
    counts: toleranceMm !== null,
    answers: answer ? { positionToleranceMm: answer } : {},
  };
}

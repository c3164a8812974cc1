import { type LengthUnit, printAs, printNumber, STRESS } from '../../../../shared/words/print.ts';
import type { Checked } from '../numbers/checked.ts';

const SHEAR_OF_TENSILE = 0.5;

/**
 * Shear in the studs if the joint slips and they carry the torque alone.   τ = T/(N r A)
 *   T engine torque times service factor [N·m] · N studs [-] · r bolt circle radius [mm] · A area in the plane between
 *   pad and plate: the shank's, or the stress area where the thread begins at or below it [mm²]
 *   Valid: every stud bearing alike, which holes larger than the studs do not promise.
 *   Source: first principles; shear strength half the tensile, as in stripOrBreak.ts
 *   Example: 700 N·m, 6 studs, r 143, A 71.3 → 11.4 MPa (calc/stud/joint/joint.test.ts)
 */
export function studShear(
  {
    torqueNm,
    studCount,
    radiusMm,
    areaMm2,
    tensileMPa,
  }: {
    torqueNm: number;
    studCount: number;
    radiusMm: number;
    areaMm2: number;
    tensileMPa: number | null;
  },
  unit: LengthUnit,
): Checked {
  const tau = (1000 * torqueNm) / (studCount * radiusMm * areaMm2);
  const limit = tensileMPa === null ? null : SHEAR_OF_TENSILE * tensileMPa;
  const answer = {
    symbol: 'τ',
    value: tau,
    unit: 'MPa',
    how: [
      {
        formula: 'τ = T/(N r A)',
        numbers: `τ = ${printNumber(torqueNm, 0)} N·m/(${studCount} · ${printNumber(radiusMm, 1)} mm · ${printNumber(areaMm2, 1)} mm²) = ${printNumber(tau, 1)} MPa`,
        source: 'first principles',
      },
    ],
    warnings: [],
  } as const;
  const against =
    limit === null
      ? 'the stud’s tensile strength is missing'
      : `about ${printAs(limit, STRESS[unit])} shears them off`;
  return {
    finding: {
      id: 'stud-shear',
      title: 'Stud shear',
      status: limit === null ? 'not-checked' : tau > limit ? 'fail' : 'caution',
      value: tau,
      limit,
      unit: 'MPa',
      sentence: `A joint that slips loads the studs in shear: ${printAs(tau, STRESS[unit])} if all share it; ${against}. A joint that slips works loose.`,
      source: 'half the stud’s tensile strength: common practice, no source',
      answer,
    },
    field: 'torqueNm',
    missMm: null,
    short: 'the joint slips',
    mend: '',
    counts: false,
    answers: { studShearMPa: answer },
  };
}

import { type LengthUnit, printAs, printNumber, STRESS } from '../../../../shared/words/print.ts';
import type { Checked } from '../numbers/checked.ts';

/** VDI 2230:2003, table A9, structural steel of 340 MPa tensile (from memory). */
const SOFT_STEEL_MPA = 490;

/**
 * Pressure under the nut.   p = F_most/[π/4 (d_W² − d_h²)]
 *   F_most greatest preload [N] · d_W bearing outer diameter, d_h hole under the nut [mm]
 *   Valid: nut flat on a plain face.   Source: VDI 2230:2003, 5.5.4; the steel of a flexplate is not known, so its limit
 *   is advice
 *   Example: 24 279 N, d_W 14, d_h 10.3 → 344 MPa (calc/stud/joint/joint.test.ts)
 */
export function bearingPressure(
  {
    mostN,
    bearingOuterDiameterMm: dW,
    holeDiameterMm: dh,
  }: {
    mostN: number;
    bearingOuterDiameterMm: number;
    holeDiameterMm: number;
  },
  unit: LengthUnit,
): Checked {
  const areaMm2 = (Math.PI / 4) * (dW * dW - dh * dh);
  const pressure = mostN / areaMm2;
  const answer = {
    symbol: 'p',
    value: pressure,
    unit: 'MPa',
    how: [
      {
        formula: 'p = F_most/[π/4 (d_W² − d_h²)]',
        numbers: `p = ${printNumber(mostN, 0)} N/[π/4 (${printNumber(dW, 2)}² − ${printNumber(dh, 2)}²)] = ${printNumber(pressure, 0)} MPa`,
        source: 'VDI 2230:2003, 5.5.4',
      },
    ],
    warnings: [],
  } as const;
  const over = pressure > SOFT_STEEL_MPA;
  return {
    finding: {
      id: 'bearing-pressure',
      title: 'Pressure under the nut',
      status: over ? 'caution' : 'pass',
      value: pressure,
      limit: SOFT_STEEL_MPA,
      unit: 'MPa',
      sentence: `The nut bears on its seat with at most ${printAs(pressure, STRESS[unit])}; soft steel takes ${printAs(SOFT_STEEL_MPA, STRESS[unit])}.${over ? ' The seat may sink and loosen the nut. Use a washer.' : ''}`,
      source: 'advice: VDI 2230:2003, table A9, soft structural steel; the plate’s own steel is not known',
      answer,
    },
    field: 'bearingOuterDiameterMm',
    missMm: null,
    short: 'the nut may sink into its seat',
    mend: '',
    counts: false,
    answers: { bearingPressureMPa: answer },
  };
}

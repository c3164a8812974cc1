import type { Answer } from '../../../shared/words/answer.ts';
import { printNumber } from '../../../shared/words/print.ts';

/**
 * Unbalance a balance quality grade permits.   U_per = 9549·G·m/n
 *
 * G balance quality grade [mm/s] · m rotor mass [kg] · n service speed [rpm]; U_per in g·mm. 9549 = 60 000/(2π).
 * Valid: rigid rotors; which grade applies is for the maker of the vehicle or part to say.
 * Source: ISO 21940-11:2016 (1000·G·m/Ω, Ω in rad/s)
 * Example: G 6.3, 1 kg, 3000 rpm → 20.05 g·mm (tests/published/balance.test.ts)
 */
export function permissibleUnbalance({
  gradeMmPerS,
  massKg,
  speedRpm,
}: {
  readonly gradeMmPerS: number;
  readonly massKg: number;
  readonly speedRpm: number;
}): Answer {
  const value = (60_000 / (2 * Math.PI)) * ((gradeMmPerS * massKg) / speedRpm);
  return {
    symbol: 'U_per',
    value,
    unit: 'g·mm',
    how: [
      {
        formula: 'U_per = 9549·G·m/n',
        numbers: `U_per = 9549 · ${gradeMmPerS} mm/s · ${massKg} kg / ${speedRpm} rpm = ${printNumber(value, 2)} g·mm`,
        source: 'ISO 21940-11:2016',
      },
    ],
    warnings: [],
  };
}

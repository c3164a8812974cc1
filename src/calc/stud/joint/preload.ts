import type { Answer } from '../../../../shared/words/answer.ts';
import { printNumber } from '../../../../shared/words/print.ts';

export interface Preload {
  readonly nominalN: number;
  readonly lowN: number;
  readonly highN: number;
  readonly answer: Answer;
}

/**
 * Preload as tightened, before anything settles.   F = (T − T_p)/(K d)      F (1 ± scatter)
 *   T tightening torque, T_p the part that only turns a prevailing-torque nut [N·m] · K nut factor [-] · d basic major diameter [mm] · scatter of the preload [-], ±
 *   Valid: steady tightening by torque; K is for the finish and oil the joint really has.
 *   Source: Shigley's Mechanical Engineering Design, 9th ed., eq. 8-27 and table 8-15 (K)
 *   Example: K 0.2, F 25 000 lbf, d 0.75 in → T 3750 lbf·in (published/studJoints.test.ts)
 */
export function preload({
  torqueNm,
  nutFactor,
  diameterMm,
  scatter,
  prevailingNm = 0,
}: {
  torqueNm: number;
  nutFactor: number;
  diameterMm: number;
  scatter: number;
  prevailingNm?: number;
}): Preload {
  const nominalN = (1000 * Math.max(0, torqueNm - prevailingNm)) / (nutFactor * diameterMm);
  const lowN = nominalN * (1 - scatter);
  const highN = nominalN * (1 + scatter);
  const n = (x: number) => printNumber(x, 0);
  return {
    nominalN,
    lowN,
    highN,
    answer: {
      symbol: 'F',
      value: nominalN,
      unit: 'N',
      how: [
        {
          formula: prevailingNm > 0 ? 'F = (T − T_p)/(K d)' : 'F = T/(K d)',
          numbers: `F = ${prevailingNm > 0 ? `(${printNumber(torqueNm, 1)} − ${printNumber(prevailingNm, 1)})` : printNumber(torqueNm, 1)} N·m/(${nutFactor} · ${printNumber(diameterMm, 3)} mm) = ${n(nominalN)} N; ± ${printNumber(100 * scatter, 0)} %: ${n(lowN)} to ${n(highN)} N`,
          source: 'Shigley, 9th ed., eq. 8-27',
        },
      ],
      warnings: [
        {
          code: 'makers-torque-first',
          text: 'The maker’s torque comes first; this only says what a torque does.',
        },
      ],
    },
  };
}

import type { Step } from '../../../../shared/words/answer.ts';
import { printNumber } from '../../../../shared/words/print.ts';

/**
 * How far the stud stretches for each newton, from its root in the pad to the nut.
 *   δ_S = [0.4 d/A_N + l_shank/A_N + l_thread/A_3 + 0.5 d/A_3 + 0.4 d/A_N]/E
 *   root as a head's share 0.4 d, shank up to the first full thread, free thread up to the nut, thread within the nut
 *   0.5 d on its core, nut 0.4 d · A_N = π d²/4, A_3 = π d₃²/4, d₃ rounded-root minor diameter [mm] · E [MPa]
 *   Valid: a welded or pressed root that holds like a head.   Source: VDI 2230:2003, 5.1.1 (shares from memory)
 *   Example: d 9.525, d₃ 8.265, start 1, grip 3.2, E 205 000 → 1.22e-6 mm/N (calc/stud/joint/joint.test.ts)
 */
export function studResilience({
  diameterMm: d,
  minorMm: d3,
  threadStartMm,
  gripMm,
  youngMPa: E,
}: {
  diameterMm: number;
  minorMm: number;
  threadStartMm: number;
  gripMm: number;
  youngMPa: number;
}): { readonly mmPerN: number; readonly step: Step } {
  const AN = (Math.PI / 4) * d * d;
  const A3 = (Math.PI / 4) * d3 * d3;
  const shank = Math.min(Math.max(threadStartMm, 0), gripMm);
  const free = gripMm - shank;
  const mmPerN = (0.4 * d + shank + 0.4 * d) / (E * AN) + (free + 0.5 * d) / (E * A3);
  const p = (x: number) => printNumber(x, 2);
  return {
    mmPerN,
    step: {
      formula: 'δ_S = [(0.4 d + l_shank + 0.4 d)/A_N + (l_thread + 0.5 d)/A_3]/E',
      numbers: `δ_S = [(${p(0.4 * d)} + ${p(shank)} + ${p(0.4 * d)})/${p(AN)} + (${p(free)} + ${p(0.5 * d)})/${p(A3)}]/${E} = ${mmPerN.toExponential(3)} mm/N`,
      source: 'VDI 2230:2003, 5.1.1',
    },
  };
}

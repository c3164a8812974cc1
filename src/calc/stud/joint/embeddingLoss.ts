import type { Answer, Step } from '../../../../shared/words/answer.ts';
import { printNumber } from '../../../../shared/words/print.ts';
import type { SurfaceClass } from '../../../../shared/words/stud/stud.ts';

/** µm of settling in the thread, under the nut and in each interface; VDI 2230:2003 table 5, steel, shear (from memory). */
const SETTLING: Readonly<Record<SurfaceClass, readonly [thread: number, nut: number, interface_: number]>> = {
  'rz-under-10': [3, 3, 2],
  'rz-10-to-40': [3, 4.5, 2.5],
  'rz-40-to-160': [3, 6.5, 3.5],
};
/** Share of the settling that is left after re-torquing (this program's own rule). */
const AFTER_RETORQUE = 0.5;

/**
 * Preload lost as the surfaces settle.   F_Z = f_Z/(δ_S + δ_P),   f_Z = thread + nut + each · interfaces [µm]
 *   Rz under 10: 3, 3, 2 · Rz 10 to 40: 3, 4.5, 2.5 (where nothing is said) · Rz 40 to 160: 3, 6.5, 3.5
 *   half of it where the nuts are re-torqued after the first heat cycle and the shop chooses so; never none
 *   interfaces: one under each layer, one more with a washer · δ_S, δ_P resilience of stud and clamped parts [mm/N]
 *   Valid: steel, joint loaded in shear, first tightening.
 *   Source: VDI 2230:2003, 5.4.2.1 and table 5 (from memory)
 *   Example: one interface, δ_S 1.22e-6, δ_P 1.42e-7 → 10 µm, 7.3 kN (calc/stud/joint/joint.test.ts)
 */
export function embeddingLoss({
  interfaces,
  studMmPerN,
  clampedMmPerN,
  steps,
  surface = 'rz-10-to-40',
  retorqued = false,
}: {
  interfaces: number;
  studMmPerN: number;
  clampedMmPerN: number;
  /** The working of the two resiliences. */
  steps: readonly Step[];
  surface?: SurfaceClass;
  retorqued?: boolean;
}): Answer & { readonly value: number } {
  const [thread, bearing, each] = SETTLING[surface];
  const sum = `${thread} + ${bearing} + ${each} · interfaces`;
  const um = (thread + bearing + each * interfaces) * (retorqued ? AFTER_RETORQUE : 1);
  const value = um / 1000 / (studMmPerN + clampedMmPerN);
  return {
    symbol: 'F_Z',
    value,
    unit: 'N',
    how: [
      ...steps,
      {
        formula: `F_Z = f_Z/(δ_S + δ_P), f_Z = ${retorqued ? `½ (${sum})` : sum} µm`,
        numbers: `f_Z = ${printNumber(um, 1)} µm; F_Z = ${printNumber(um / 1000, 4)}/(${studMmPerN.toExponential(3)} + ${clampedMmPerN.toExponential(3)}) = ${printNumber(value, 0)} N`,
        source: 'VDI 2230:2003, 5.4.2.1, table 5, from memory',
      },
    ],
    warnings: retorqued
      ? [
          {
            code: 'retightened',
            text: 'Halved because the nuts are re-torqued: the shop’s choice, not a standard. Only where the vehicle’s maker allows it and no thread-locker is used.',
          },
        ]
      : [],
  };
}

import type { Answer } from '../../../../shared/words/answer.ts';
import { type LengthUnit, printLength, printNumber } from '../../../../shared/words/print.ts';
import type { ThreadGeometry } from '../../../../shared/words/stud/thread.ts';
import type { Checked } from './checked.ts';

/**
 * A stud's thread with the pitch diameter that was measured, where that is less than its class allows.
 *   Δ = E_least − E_measured      E_least becomes E_measured      A_t = π/4 (√(4 A_t/π) − Δ/2)²
 *   E pitch diameter [mm] · A_t tensile stress area [mm²], that of a diameter half way between pitch and root
 *   Valid: wear on the flanks, root as it was; a stud that is necked is to be replaced, not worked out. A thread within
 *   its class is left as it is.
 *   Source: first principles on ISO 898-1's mean of pitch and root diameter; shear areas as in threadShearAreas.ts
 *   Example: 3/8-24, 0.10 mm below its least → A_t 56.66 to 56.00 mm² (calc/stud/numbers/wornThread.test.ts)
 */
export function wornThread(thread: ThreadGeometry, measuredMm: number | null): ThreadGeometry {
  const least = thread.pitchDiameterMm.min;
  if (measuredMm === null || least === null || measuredMm >= least) return thread;
  const worn = least - measuredMm;
  const diameterMm = Math.sqrt((4 * thread.tensileStressAreaMm2) / Math.PI) - worn / 2;
  const areaMm2 = (Math.PI / 4) * diameterMm ** 2;
  const p = (x: number) => printNumber(x, 3);
  return {
    ...thread,
    pitchDiameterMm: { ...thread.pitchDiameterMm, min: measuredMm },
    tensileStressAreaMm2: areaMm2,
    how: [
      ...thread.how,
      {
        formula: 'Δ = E_least − E_measured; A_t = π/4 (√(4 A_t/π) − Δ/2)²',
        numbers: `Δ = ${p(least)} − ${p(measuredMm)} = ${p(worn)} mm; A_t = ${printNumber(areaMm2, 2)} mm²`,
        source: 'first principles; worn flanks',
      },
    ],
  };
}

/** The measured pitch diameter against its class; nothing where it was not measured. */
export function wornThreadFinding(
  thread: ThreadGeometry,
  measuredMm: number | null,
  unit: LengthUnit,
): Checked[] {
  const { min: least, max: most } = thread.pitchDiameterMm;
  if (measuredMm === null || least === null || most === null) return [];
  const mm = (x: number) => printLength(x, unit);
  const [below, above] = [measuredMm < least - 1e-9, measuredMm > most + 1e-9];
  const answer: Answer = {
    symbol: 'E',
    value: measuredMm,
    unit: 'mm',
    how: thread.how,
    warnings: [],
  };
  const sentence = below
    ? `The pitch diameter, ${mm(measuredMm)}, is ${mm(least - measuredMm)} under its class: worn or stretched. Strengths are worked out with it. Replace the stud if you can.`
    : above
      ? `The pitch diameter, ${mm(measuredMm)}, is ${mm(measuredMm - most)} over its class: another thread, or plated. Measure again.`
      : `The pitch diameter, ${mm(measuredMm)}, is within its class.`;
  return [
    {
      finding: {
        id: 'thread-worn',
        title: 'Measured pitch diameter',
        status: below || above ? 'caution' : 'pass',
        value: measuredMm,
        limit: above ? most : least,
        unit: 'mm',
        sentence,
        source: `the class of ${thread.designation}`,
        answer,
      },
      field: 'pitchDiameterMeasuredMm',
      missMm: below ? least - measuredMm : above ? measuredMm - most : 0,
      short: below ? 'its thread is worn or stretched' : 'its pitch diameter is over its class',
      mend: '',
      counts: true,
      answers: {},
    },
  ];
}

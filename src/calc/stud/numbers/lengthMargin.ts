import type { Status } from '../../../../shared/words/finding.ts';
import { type LengthUnit, printLength } from '../../../../shared/words/print.ts';

const DUST = 1e-9;

/** What is left above a limit: as drawn, with the likely spread of sizes (RSS), with every size at its worst. */
export interface Margin {
  readonly nominalMm: number;
  readonly rssMm: number;
  readonly worstMm: number;
  readonly status: Extract<Status, 'pass' | 'caution' | 'fail'>;
  /** How far what decided the status is short of the limit; 0 when it passes. */
  readonly missMm: number;
}

/**
 * A length against its limit, three ways.   worst = m − Σ tᵢ      RSS = m − √(Σ tᵢ²)
 *   m margin as drawn [mm] · tᵢ tolerances ± of the sizes it is made of, independent [mm]
 *   Fails if the nominal or the RSS margin is negative; cautions if only the worst case is. A margin of 0 passes.
 *   Valid: sizes independent of each other; margins compared to 1e-9.
 *   Source: tolerance stacks by arithmetic and by root sum of squares, common practice, no source; first principles
 *   Example: margin 0.30, tolerances 0.20 and 0.15 → RSS 0.05, worst −0.05: caution (calc/stud/numbers/lengthMargin.test.ts)
 */
export function lengthMargin({
  marginMm,
  tolerancesMm,
}: {
  marginMm: number;
  tolerancesMm: readonly number[];
}): Margin {
  const rssMm = marginMm - Math.hypot(...tolerancesMm);
  const worstMm = marginMm - tolerancesMm.reduce((sum, t) => sum + t, 0);
  const status = marginMm < -DUST || rssMm < -DUST ? 'fail' : worstMm < -DUST ? 'caution' : 'pass';
  const missMm = status === 'fail' ? -Math.min(marginMm, rssMm) : status === 'caution' ? -worstMm : 0;
  return { nominalMm: marginMm, rssMm, worstMm, status, missMm };
}

/** A sentence of its own when the sizes as drawn pass and their tolerances do not; '' otherwise. */
export function spreadInWords(margin: Margin, unit: LengthUnit, of: string): string {
  if (margin.status === 'caution') {
    return ` Worst case: ${printLength(margin.missMm, unit, 'coarse')} short of ${of}.`;
  }
  if (margin.status === 'fail' && margin.nominalMm >= -DUST) {
    return ` Likely spread of sizes (RSS): ${printLength(margin.missMm, unit, 'coarse')} short of ${of}.`;
  }
  return '';
}

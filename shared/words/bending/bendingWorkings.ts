import type { Answer } from '../answer.ts';
import { printNumber } from '../print.ts';
import { type Bending, CASE_WORD, type PistonRange } from './bending.ts';

/** The formulas of the columns of the table of bending, as the calculation writes them. */
export const BENDING_FORMULA = {
  peak: 'p = k_l·max(0, d − w), the greatest on the mesh’s lines and three circles between each two',
  waviness: 'Δw = max w − min w around the middle of the friction surface',
  center: 'w_c = w at the center of the cover',
  stress: 'σ = √(σ_r² − σ_r·σ_θ + σ_θ² + 3τ²) at the surface',
} as const;

/** What the columns come to, case by case: where a figure leads to its formula, these are the values here and now. */
export function bendingWorkings({ cases }: Pick<Bending, 'cases'>): readonly Answer[] {
  const last = cases.at(-1);
  if (last === undefined) return [];
  const working = (
    symbol: string,
    unit: Answer['unit'],
    formula: string,
    of: (one: (typeof cases)[number]) => PistonRange,
    told: (value: number) => string,
  ): Answer => ({
    symbol,
    value: of(last).conforming,
    unit,
    how: [
      {
        formula,
        numbers: cases
          .map((one) => {
            const { rigid, conforming } = of(one);
            return `${CASE_WORD[one.id]}: ${symbol} = ${told(rigid)} (stiffest piston), ${told(conforming)} (most flexible)`;
          })
          .join('; '),
        source: 'this program’s own model',
      },
    ],
    warnings: [],
  });
  return [
    working(
      'p_max/p_m',
      '',
      BENDING_FORMULA.peak,
      (one) => one.peakOverMean,
      (value) => printNumber(value, 3),
    ),
    working(
      'Δw',
      'mm',
      BENDING_FORMULA.waviness,
      (one) => one.rippleMm,
      (mm) => `${printNumber(1000 * mm, 2)} µm`,
    ),
    working(
      'w_c',
      'mm',
      BENDING_FORMULA.center,
      (one) => one.bossDeflectionMm,
      (mm) => `${printNumber(mm, 4)} mm`,
    ),
    working(
      'σ',
      'MPa',
      BENDING_FORMULA.stress,
      (one) => one.greatestStressMPa,
      (MPa) => `${printNumber(MPa, 1)} MPa`,
    ),
  ];
}

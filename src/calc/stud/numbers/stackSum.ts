import type { Answer } from '../../../../shared/words/answer.ts';
import { printNumber } from '../../../../shared/words/print.ts';
import type { Layer } from '../../../../shared/words/stud/stud.ts';

/**
 * Thickness of the stack.   S = Σ thicknessᵢ, worst cases S ∓ Σ toleranceᵢ
 *   Valid: layers flat on each other; a washer under the nut is not part of it.   Source: first principles
 *   Example: 3.2 ± 0.1 and 8.0 ± 0.15 → 11.2, 10.95 to 11.45 (calc/stud/match/matchStuds.test.ts)
 */
export function stackSum(layers: readonly Layer[]): {
  readonly nominal: number;
  readonly least: number;
  readonly most: number;
  readonly answer: Answer;
} {
  const nominal = layers.reduce((sum, layer) => sum + layer.thicknessMm, 0);
  const spread = layers.reduce((sum, layer) => sum + layer.toleranceMm, 0);
  const each = layers.map(
    (layer) => `${printNumber(layer.thicknessMm, 2)} ± ${printNumber(layer.toleranceMm, 2)}`,
  );
  return {
    nominal,
    least: nominal - spread,
    most: nominal + spread,
    answer: {
      symbol: 'S',
      value: nominal,
      unit: 'mm',
      how: [
        {
          formula: 'S = Σ thickness; worst ∓ Σ tolerance',
          numbers: `S = ${each.join(' + ')} = ${printNumber(nominal, 2)} mm, ${printNumber(nominal - spread, 2)} to ${printNumber(nominal + spread, 2)} mm`,
          source: 'first principles',
        },
      ],
      warnings: [],
    },
  };
}

import type { Answer } from '../../../../shared/words/answer.ts';
import { printNumber } from '../../../../shared/words/print.ts';
import type { MeasuredStation } from '../measuredStations.ts';
import { rings } from '../rings.ts';

/**
 * How far the face is dished: inner ring against outer.   mean z(inner ring) − mean z(outer ring)
 *
 * z indicator reading, + proud [mm]; the innermost and the outermost ring. + the face is proud inside.
 * Valid: two rings; else null.   Source: first principles
 * Example: design set one: 0.00625 − 0.005 → 0.00125 (tests/calc/cover/checkCover.test.ts)
 */
export function dish(stations: readonly MeasuredStation[]): Answer {
  const found = rings(stations);
  const shape = { symbol: 'Δ', unit: 'mm' } as const;
  if (found.length < 2) {
    const text = 'A second row of stations is needed.';
    return { ...shape, value: null, how: [], warnings: [{ code: 'one-ring', text }] };
  }
  const mean = (members: readonly number[]) =>
    members.reduce((sum, index) => sum + stations[index]!.faceMm!, 0) / members.length;
  const [inner, outer] = [mean(found[0]!.stations), mean(found.at(-1)!.stations)];
  return {
    ...shape,
    value: inner - outer,
    how: [
      {
        formula: 'Δ = mean z(inner ring) − mean z(outer ring)',
        numbers: `Δ = ${printNumber(inner, 4)} − (${printNumber(outer, 4)}) = ${printNumber(inner - outer, 4)} mm`,
        source: 'first principles',
      },
    ],
    warnings: [],
  };
}

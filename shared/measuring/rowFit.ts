import { type Place, turned } from '../words/places.ts';

export interface Height extends Place {
  readonly valueMm: number;
}

const RAD = Math.PI / 180;

/**
 * Indicator readings round a row, as tilt leaves them.   z = a + b·cos θ + c·sin θ, by least squares
 *
 * What the fit gives at an angle, and the largest that any reading it was fitted to is off. null for fewer than five
 * readings, which three figures fit too easily, and for readings that do not go round.
 */
export function rowFit(
  heights: readonly Height[],
): { readonly at: (angleDeg: number) => number; readonly worstMm: number } | null {
  if (heights.length < 5) return null;
  const rows = heights.map(({ angleDeg, valueMm }) => ({ of: termsAt(angleDeg), valueMm }));
  const sum = (pick: (row: (typeof rows)[number]) => number) => rows.reduce((all, row) => all + pick(row), 0);
  const matrix = [0, 1, 2].map((i) => [0, 1, 2].map((j) => sum(({ of }) => of[i]! * of[j]!)));
  const right = [0, 1, 2].map((i) => sum(({ of, valueMm }) => of[i]! * valueMm));
  const found = solved(matrix, right);
  if (found === null) return null;
  const at = (angleDeg: number) => termsAt(angleDeg).reduce((z, term, i) => z + term * found[i]!, 0);
  const off = heights.map(({ angleDeg, valueMm }) => Math.abs(valueMm - at(angleDeg)));
  return { at, worstMm: Math.max(...off) };
}

function termsAt(angleDeg: number): readonly [number, number, number] {
  const angle = turned(angleDeg) * RAD;
  return [1, Math.cos(angle), Math.sin(angle)];
}

/** Cramer’s rule for three equations; null where they do not say enough. */
function solved(matrix: readonly (readonly number[])[], right: readonly number[]): readonly number[] | null {
  const whole = determinant(matrix);
  if (Math.abs(whole) < 1e-6) return null;
  return right.map((_, column) => {
    const replaced = matrix.map((row, i) => row.map((value, j) => (j === column ? right[i]! : value)));
    return determinant(replaced) / whole;
  });
}

function determinant(m: readonly (readonly number[])[]): number {
  const [[a, b, c], [d, e, f], [g, h, i]] = m as [number[], number[], number[]];
  return a! * (e! * i! - f! * h!) - b! * (d! * i! - f! * g!) + c! * (d! * h! - e! * g!);
}

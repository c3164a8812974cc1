import { Matrix } from 'ml-matrix';
import type { Skyline } from '../../../../src/calc/plate/elements/skyline.ts';

/** The same matrix with every entry written out, for a general library. */
export function denseOf({ size, first, start, values }: Skyline): Matrix {
  const dense = Matrix.zeros(size, size);
  for (let i = 0; i < size; i++) {
    for (let j = first[i]!; j <= i; j++) {
      dense.set(i, j, values[start[i]! + j]!);
      dense.set(j, i, values[start[i]! + j]!);
    }
  }
  return dense;
}

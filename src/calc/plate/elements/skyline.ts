import { Refusal } from '../../../../shared/words/refusal.ts';

/**
 * A symmetric matrix of which each row keeps what lies from its first entry to its diagonal: entry (i, j) of the
 * lower half is `values[start[i] + j]`.
 */
export interface Skyline {
  readonly size: number;
  readonly first: Int32Array;
  readonly start: Int32Array;
  readonly values: Float64Array;
}

export function emptySkyline(first: Int32Array): Skyline {
  const size = first.length;
  const start = new Int32Array(size);
  let held = 0;
  for (let i = 0; i < size; i++) {
    start[i] = held - first[i]!;
    held += i - first[i]! + 1;
  }
  return { size, first, start, values: new Float64Array(held) };
}

/** Pivots below this share of their own diagonal are rounding, not stiffness. */
const LEAST_PIVOT = 1e-13;

/**
 * Turns a stiff, symmetric matrix into its Cholesky factor, in place.   A = L·Lᵀ,  L_ij = (A_ij − Σ L_ik L_jk)/L_jj
 *
 * Rows before `from` are taken as factored already: no row needs a later one, so that when only the last rows have
 * changed only these are done again.
 * Valid: positive definite; a pivot that is not refuses, because the plate can then move without bending.
 * Source: Jennings, Matrix Computation for Engineers and Scientists, variable-bandwidth Cholesky (from memory)
 * Throws: a Refusal where a pivot is not positive.
 * Example: against a general library's dense factor (tests/calc/plate/elements/skyline.test.ts)
 */
export function factor({ size, first, start, values }: Skyline, from = 0): void {
  for (let i = from; i < size; i++) {
    const row = start[i]!;
    const firstI = first[i]!;
    const before = values[row + i]!;
    let pivot = before;
    // Two columns at a time share what they read of row i.
    for (let j = firstI; j < i; j += 2) {
      const paired = j + 1 < i;
      const one = start[j]!;
      const other = paired ? start[j + 1]! : one;
      const fromOne = Math.max(firstI, first[j]!);
      const fromOther = paired ? Math.max(firstI, first[j + 1]!) : j;
      const both = Math.min(j, Math.max(fromOne, fromOther));
      let sumOne = 0;
      let sumOther = 0;
      for (let k = fromOne; k < both; k++) sumOne += values[row + k]! * values[one + k]!;
      for (let k = fromOther; k < both; k++) sumOther += values[row + k]! * values[other + k]!;
      let oddOne = 0;
      let oddOther = 0;
      let k = both;
      for (; k + 1 < j; k += 2) {
        const even = values[row + k]!;
        const odd = values[row + k + 1]!;
        sumOne += even * values[one + k]!;
        oddOne += odd * values[one + k + 1]!;
        sumOther += even * values[other + k]!;
        oddOther += odd * values[other + k + 1]!;
      }
      if (k < j) {
        sumOne += values[row + k]! * values[one + k]!;
        sumOther += values[row + k]! * values[other + k]!;
      }
      const entry = (values[row + j]! - sumOne - oddOne) / values[one + j]!;
      values[row + j] = entry;
      pivot -= entry * entry;
      if (!paired) break;
      if (fromOther <= j) sumOther += entry * values[other + j]!;
      const next = (values[row + j + 1]! - sumOther - oddOther) / values[other + j + 1]!;
      values[row + j + 1] = next;
      pivot -= next * next;
    }
    if (!(pivot > LEAST_PIVOT * before)) {
      throw new Refusal('plate-unsolved', [
        {
          path: '',
          message: `The bending could not be solved: the plate gives way without resistance at unknown ${i + 1} of ${size}. Its sizes or stiffnesses differ too much; check the smallest and the largest.`,
        },
      ]);
    }
    values[row + i] = Math.sqrt(pivot);
  }
}

/** Solves L·Lᵀ·x = b in place, b given in `x`. */
export function solveFactored({ size, first, start, values }: Skyline, x: Float64Array): void {
  for (let i = 0; i < size; i++) {
    const row = start[i]!;
    let sum = x[i]!;
    for (let j = first[i]!; j < i; j++) sum -= values[row + j]! * x[j]!;
    x[i] = sum / values[row + i]!;
  }
  for (let i = size - 1; i >= 0; i--) {
    const row = start[i]!;
    const value = x[i]! / values[row + i]!;
    x[i] = value;
    for (let j = first[i]!; j < i; j++) x[j] = x[j]! - values[row + j]! * value;
  }
}

/** A·x of a matrix not yet factored: what the stiffness answers to a deflection. */
export function times({ size, first, start, values }: Skyline, x: Float64Array): Float64Array {
  const out = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    const row = start[i]!;
    let sum = values[row + i]! * x[i]!;
    for (let j = first[i]!; j < i; j++) {
      sum += values[row + j]! * x[j]!;
      out[j] = out[j]! + values[row + j]! * x[i]!;
    }
    out[i] = out[i]! + sum;
  }
  return out;
}

/** Σ aᵢ bᵢ. */
export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

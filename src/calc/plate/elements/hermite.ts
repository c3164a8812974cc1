/**
 * The four cubic Hermite functions on a stretch of length h, with first and second derivatives, at share x of it.
 *   value at the start 1 − 3x² + 2x³ · slope there h(x − 2x² + x³) · value at the end 3x² − 2x³ · slope there h(x³ − x²)
 *
 * `out` takes twelve numbers from `at` on: the four functions, then their first, then their second derivatives by
 * length; h in mm or rad.
 * Valid: any x; meant for 0…1.   Source: Zienkiewicz & Taylor, The Finite Element Method, beam functions (from memory)
 * Example: they carry any cubic exactly (tests/calc/plate/elements/element.test.ts)
 */
export function hermite(x: number, h: number, out: Float64Array, at = 0): void {
  out[at] = 1 + x * x * (2 * x - 3);
  out[at + 1] = h * x * (1 + x * (x - 2));
  out[at + 2] = x * x * (3 - 2 * x);
  out[at + 3] = h * x * x * (x - 1);
  out[at + 4] = (6 * x * (x - 1)) / h;
  out[at + 5] = 1 + x * (3 * x - 4);
  out[at + 6] = (6 * x * (1 - x)) / h;
  out[at + 7] = x * (3 * x - 2);
  out[at + 8] = (12 * x - 6) / (h * h);
  out[at + 9] = (6 * x - 4) / h;
  out[at + 10] = (6 - 12 * x) / (h * h);
  out[at + 11] = (6 * x - 2) / h;
}

/**
 * Four-point Gauss rule on 0…1: ∫₀¹ f(x) dx ≈ Σ wₖ f(xₖ), exact to the seventh power of x.
 *
 * Valid: smooth f.   Source: Abramowitz & Stegun, Handbook of Mathematical Functions, table 25.4 (from memory), moved
 * from −1…1 to 0…1
 * Example: ∫₀¹ x⁷ dx = 1/8 (tests/calc/plate/elements/element.test.ts)
 */
export const GAUSS_AT = new Float64Array([
  0.06943184420297371, 0.33000947820757187, 0.6699905217924281, 0.9305681557970263,
]);
export const GAUSS_WEIGHT = new Float64Array([
  0.17392742256872692, 0.32607257743127305, 0.32607257743127305, 0.17392742256872692,
]);
export const GAUSS_COUNT = 4;

/** Nodes of the 15-point Kronrod rule on 0…1, outermost first; every second one is also a Gauss node. */
const NODES = [
  0.9914553711208126, 0.9491079123427585, 0.8648644233597691, 0.7415311855993945, 0.5860872354676911,
  0.4058451513773972, 0.20778495500789848, 0,
];
const KRONROD = [
  0.022935322010529224, 0.06309209262997856, 0.10479001032225019, 0.14065325971552592, 0.1690047266392679,
  0.19035057806478542, 0.20443294007529889, 0.20948214108472782,
];
const GAUSS = [0.1294849661688697, 0.27970539148927664, 0.3818300505051189, 0.4179591836734694];
const DEEPEST = 40;
/** Relative rounding error of a stretch: asking for less would halve it forever without gain. */
const FLOAT_DUST = 1e-14;

/**
 * The integral of a function over stretches laid end to end, by halving until each stretch is good enough.
 *   ∫ f(x) dx ≈ Σ wₖ f(xₖ), 15-point Kronrod, its error judged by the 7-point Gauss rule inside it
 *
 * `edges`: the ends of the stretches, rising; put one wherever f bends sharply.
 * Valid: f finite and smooth between edges.   Source: Kronrod's rule as tabulated in QUADPACK (Piessens and
 * others, 1983), routine QK15
 * Example: ∫₀¹ eˣ dx → 1.718281828459 (tests/calc/measure/integral.test.ts)
 */
export function integral(f: (x: number) => number, edges: readonly number[], tolerance = 1e-10): number {
  let sum = 0;
  for (let i = 1; i < edges.length; i++) {
    const [from, to] = [edges[i - 1]!, edges[i]!];
    if (to > from) sum += stretch(f, from, to, tolerance, 0);
  }
  return sum;
}

function stretch(
  f: (x: number) => number,
  from: number,
  to: number,
  tolerance: number,
  depth: number,
): number {
  const [middle, half] = [(from + to) / 2, (to - from) / 2];
  let [kronrod, gauss] = [0, 0];
  for (const [k, node] of NODES.entries()) {
    const value = node === 0 ? f(middle) : f(middle - half * node) + f(middle + half * node);
    kronrod += KRONROD[k]! * value;
    if (k % 2 === 1) gauss += GAUSS[(k - 1) / 2]! * value;
  }
  const enough = Math.max(tolerance, FLOAT_DUST * Math.abs(kronrod) * half);
  if (Math.abs(kronrod - gauss) * half <= enough || depth >= DEEPEST) return kronrod * half;
  return (
    stretch(f, from, middle, tolerance / 2, depth + 1) + stretch(f, middle, to, tolerance / 2, depth + 1)
  );
}

import { describe, expect, it } from 'vitest';
import { assembleStiffness } from '../../../../src/calc/plate/elements/assemble.ts';
import { curvatures, shapes } from '../../../../src/calc/plate/elements/element.ts';
import { numberFreedoms } from '../../../../src/calc/plate/elements/freedoms.ts';
import { GAUSS_AT, GAUSS_WEIGHT } from '../../../../src/calc/plate/elements/gauss.ts';
import { hermite } from '../../../../src/calc/plate/elements/hermite.ts';
import { dot, times } from '../../../../src/calc/plate/elements/skyline.ts';

describe('Gauss rule', () => {
  const sum = (power: number) => GAUSS_AT.reduce((all, x, k) => all + GAUSS_WEIGHT[k]! * x ** power, 0);
  it.each([0, 1, 2, 3, 4, 5, 6, 7])(
    'the Gauss rule gives ∫₀¹ x^%i dx exactly (elementary calculus)',
    (power) => {
      expect(sum(power)).toBeCloseTo(1 / (power + 1), 14);
    },
  );
  it('the Gauss rule is no longer exact for x⁸', () => {
    expect(Math.abs(sum(8) - 1 / 9)).toBeGreaterThan(1e-5);
  });
});

describe('Hermite functions', () => {
  it('the Hermite functions carry 2 − x + 3x² − 4x³ on 1…3.5 exactly, with both derivatives (elementary calculus)', () => {
    const f = (x: number) => 2 - x + 3 * x ** 2 - 4 * x ** 3;
    const slope = (x: number) => -1 + 6 * x - 12 * x ** 2;
    const out = new Float64Array(12);
    hermite(0.3, 2.5, out);
    const ends = [f(1), slope(1), f(3.5), slope(3.5)];
    const at = (first: number) => ends.reduce((sum, end, k) => sum + end * out[first + k]!, 0);
    const x = 1.75;
    expect(at(0)).toBeCloseTo(f(x), 10);
    expect(at(4)).toBeCloseTo(slope(x), 10);
    expect(at(8)).toBeCloseTo(6 - 24 * x, 10);
  });
});

/** w = r³·θ² and what it bends to, by hand. */
const FIELD = {
  w: (r: number, a: number) => r ** 3 * a ** 2,
  wr: (r: number, a: number) => 3 * r ** 2 * a ** 2,
  wa: (r: number, a: number) => 2 * r ** 3 * a,
  wra: (r: number, a: number) => 6 * r ** 2 * a,
};

describe('Bogner–Fox–Schmit element in polar coordinates', () => {
  const [r0, r1, a0, a1] = [2, 3.2, 0.1, 0.7];
  const corners = [
    [r0, a0],
    [r1, a0],
    [r0, a1],
    [r1, a1],
  ] as const;
  const u = corners.flatMap(([r, a]) => [FIELD.w(r, a), FIELD.wr(r, a), FIELD.wa(r, a), FIELD.wra(r, a)]);

  it('the plate element carries r³·θ² exactly, with its curvatures (by hand)', () => {
    const [r, a] = [2.5, 0.4];
    const [hr, ha] = [new Float64Array(12), new Float64Array(12)];
    hermite((r - r0) / (r1 - r0), r1 - r0, hr);
    hermite((a - a0) / (a1 - a0), a1 - a0, ha);
    const [shape, bent] = [new Float64Array(16), new Float64Array(48)];
    shapes(hr, 0, ha, 0, shape);
    curvatures(r, hr, 0, ha, 0, bent);
    const carried = (from: Float64Array, at = 0) => u.reduce((sum, one, k) => sum + one * from[at + k]!, 0);
    expect(carried(shape)).toBeCloseTo(FIELD.w(r, a), 11);
    expect(carried(bent)).toBeCloseTo(-6 * r * a ** 2, 10);
    expect(carried(bent, 16)).toBeCloseTo(-(3 * r * a ** 2 + 2 * r), 10);
    expect(carried(bent, 32)).toBeCloseTo(-(6 * r * a - 2 * r * a), 10);
  });

  it('the plate element stores the energy of the field r³·θ² (integral by hand)', () => {
    // With no symmetric line in between, every freedom is set by hand: the energy of one element.
    const mesh = { radiiMm: Float64Array.of(r0, r1), anglesRad: Float64Array.of(a0, a1) };
    const free = numberFreedoms({ mesh, inner: 'free', outer: 'free' });
    const unknown = Int32Array.from({ length: 16 }, (_, i) => i);
    const freedoms = { ...free, size: 16, unknown };
    const [poisson, rigidity] = [0.3, 7];
    const stiffness = assembleStiffness({
      mesh,
      freedoms,
      rigidityNmm: Float64Array.of(rigidity),
      poisson,
    });
    // κ_r = −6rθ², κ_θ = −r(3θ² + 2), κ_rθ = −4rθ. Nodes run ring by ring, so corners 0, 2, 1, 3.
    const w = Float64Array.from([...u.slice(0, 4), ...u.slice(8, 12), ...u.slice(4, 8), ...u.slice(12)]);
    const power = (n: number) => (a1 ** (n + 1) - a0 ** (n + 1)) / (n + 1);
    const overRadius = (r1 ** 4 - r0 ** 4) / 4;
    const [square, fourth, none] = [power(2), power(4), power(0)];
    const radial = 36 * fourth;
    const around = 9 * fourth + 12 * square + 4 * none;
    const cross = 2 * poisson * (18 * fourth + 12 * square);
    const twist = 2 * (1 - poisson) * 16 * square;
    const twice = rigidity * overRadius * (radial + around + cross + twist);
    expect(dot(w, times(stiffness, w)) / twice).toBeCloseTo(1, 12);
  });
});

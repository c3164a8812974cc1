import { describe, expect, it } from 'vitest';
import { numberFreedoms } from '../../../src/calc/plate/elements/freedoms.ts';
import { GAUSS_AT } from '../../../src/calc/plate/elements/gauss.ts';
import { greatestStress } from '../../../src/calc/plate/greatestStress.ts';
import type { PadPatch } from '../../../src/calc/plate/model/padPatch.ts';

const [youngMPa, poisson, t, studRadiusMm] = [206_000, 0.3, 4, 100];
const PAD: PadPatch = { innerMm: 80, outerMm: 120, halfAngleRad: 0.1, clipped: true };
const mesh = {
  radiiMm: Float64Array.of(60, 90, 120),
  anglesRad: Float64Array.of(0, 0.1, 0.15, 0.5),
};

/** Every freedom of the mesh set by hand to w = c·r³·(a + b·θ), which the elements carry exactly. */
function bent(a: number, b: number, pad: PadPatch, wallMm = 5) {
  const c = 1e-8;
  const free = numberFreedoms({ mesh, inner: 'free', outer: 'free' });
  const unknown = Int32Array.from({ length: free.unknown.length }, (_, i) => i);
  const w = Float64Array.from(
    [...mesh.radiiMm].flatMap((r) =>
      [...mesh.anglesRad].flatMap((angle) => [
        c * r ** 3 * (a + b * angle),
        3 * c * r ** 2 * (a + b * angle),
        c * r ** 3 * b,
        3 * c * r ** 2 * b,
      ]),
    ),
  );
  const freedoms = { ...free, size: w.length, unknown };
  const thicknessMm = new Float64Array(6).fill(t);
  const found = greatestStress({ mesh, pad, stiff: pad, freedoms, thicknessMm }, w, {
    youngMPa,
    poisson,
    wallMm,
    studRadiusMm,
  });
  // κ_r = −6cr(a + bθ), κ_θ = −3cr(a + bθ), κ_rθ = −2crb, by hand.
  const by = (r: number, angle: number) => {
    const bending = (youngMPa * t) / (2 * (1 - poisson ** 2));
    const curved = 3 * c * r * (a + b * angle);
    const [sr, st] = [bending * curved * (2 + poisson), bending * curved * (1 + 2 * poisson)];
    const shear = ((youngMPa * t) / (2 * (1 + poisson))) * 2 * c * r * b;
    return Math.sqrt(sr ** 2 - sr * st + st ** 2 + 3 * shear ** 2);
  };
  return { found, by };
}

describe('greatest stress (curvatures by hand)', () => {
  it('the greatest stress is von Mises’ at the outermost Gauss point of a field that grows with radius and angle', () => {
    const { found, by } = bent(1, 3, { ...PAD, innerMm: 1000, outerMm: 1001 });
    const [r, angle] = [90 + 30 * GAUSS_AT[3]!, 0.15 + 0.35 * GAUSS_AT[3]!];
    expect(found.radiusMm).toBeCloseTo(r, 9);
    expect(found.angleRad).toBeCloseTo(angle, 9);
    expect(found.stressMPa / by(r, angle)).toBeCloseTo(1, 10);
  });

  it.each([
    ['on a wide pad, beside its line of symmetry', 0.1, 5, 0.1 * GAUSS_AT[0]!],
    ['one wall beyond the side of a narrow pad', 0.04, 5, 0.1 * GAUSS_AT[3]!],
    ['only after a whole wall is passed', 0.05, 6, 0.1 + 0.05 * GAUSS_AT[1]!],
  ])(
    'the greatest stress of a field that falls with the angle is looked for %s',
    (_, halfAngleRad, wallMm, angle) => {
      const { found } = bent(1, -1, { ...PAD, innerMm: 0, halfAngleRad }, wallMm);
      expect(found.angleRad).toBeCloseTo(angle, 9);
    },
  );
});

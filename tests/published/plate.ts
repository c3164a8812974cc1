import { assembleLoad, assembleStiffness } from '../../src/calc/plate/elements/assemble.ts';
import { curvatures } from '../../src/calc/plate/elements/element.ts';
import { type Edge, numberFreedoms, unknownsOf } from '../../src/calc/plate/elements/freedoms.ts';
import { hermite } from '../../src/calc/plate/elements/hermite.ts';
import { gradedLines } from '../../src/calc/plate/elements/mesh.ts';
import { factor, solveFactored } from '../../src/calc/plate/elements/skyline.ts';

interface Plate {
  readonly inner: Edge;
  readonly outer: Edge;
  /** Of the outer, which is 1. */
  readonly innerRadius: number;
  readonly poisson: number;
  readonly pressure?: number;
  /** Total, spread along the edge. */
  readonly innerForce?: number;
  readonly outerForce?: number;
  /** Point supports on the outer edge, the first at angle 0; without, all is alike round the axis. */
  readonly supports?: number;
  readonly finest?: number;
}

const ALIKE_SWEEP = 0.3;

/** A plate of radius 1 and rigidity 1, solved with the elements of the cover. */
export function solvePlate({
  inner,
  outer,
  innerRadius,
  poisson,
  pressure = 0,
  innerForce = 0,
  outerForce = 0,
  supports,
  finest = 0.03,
}: Plate) {
  const sweep = supports === undefined ? ALIKE_SWEEP : Math.PI / supports;
  const radiiMm = gradedLines({
    // The lines are counted by samples, which must see how much finer they are near the middle.
    breaks: [innerRadius, ...[0.01, 0.03, 0.1, 0.3].filter((r) => r > innerRadius), 1],
    sizeAt: (r) =>
      supports === undefined
        ? Math.min((innerRadius < 0.05 ? 0.2 : 0.03) * r, 0.024, (1 - innerRadius) / 40)
        : Math.min(0.5 * r, finest + 0.35 * (1 - r)),
  });
  const anglesRad =
    supports === undefined
      ? Float64Array.of(0, sweep)
      : gradedLines({ breaks: [0, sweep], sizeAt: (angle) => finest + 0.35 * angle });
  const mesh = { radiiMm, anglesRad };
  const [rings, rays] = [radiiMm.length, anglesRad.length];
  const held = supports === undefined ? [] : [{ ring: rings - 1, ray: 0 }];
  const freedoms = numberFreedoms({ mesh, inner, outer, held });
  const rigidityNmm = new Float64Array((rings - 1) * (rays - 1)).fill(1);
  const stiffness = assembleStiffness({ mesh, freedoms, rigidityNmm, poisson });
  const w = assembleLoad({ mesh, freedoms, pressureAt: () => pressure });
  const share = sweep / (2 * Math.PI);
  const push = (ring: number, ray: number, force: number) => {
    const i = freedoms.unknown[4 * (ring * rays + ray)]!;
    if (i >= 0) w[i] = w[i]! + force;
  };
  if (inner === 'rigid') push(0, 0, (innerForce + pressure * Math.PI * innerRadius ** 2) * share);
  else if (innerForce !== 0) for (const ray of [0, 1]) push(0, ray, (innerForce * share) / 2);
  if (outerForce !== 0) for (const ray of [0, 1]) push(rings - 1, ray, (outerForce * share) / 2);
  factor(stiffness);
  solveFactored(stiffness, w);

  const [alongRadius, alongAngle, bent, of] = [
    new Float64Array(12),
    new Float64Array(12),
    new Float64Array(48),
    new Int32Array(16),
  ];
  /** At a share of a row of elements, on the first ray. */
  const inRow = (row: number, x: number) => {
    const width = radiiMm[row + 1]! - radiiMm[row]!;
    hermite(x, width, alongRadius);
    hermite(0, anglesRad[1]! - anglesRad[0]!, alongAngle);
    curvatures(radiiMm[row]! + x * width, alongRadius, 0, alongAngle, 0, bent);
    unknownsOf(freedoms, row, 0, of);
    let [deflection, slope, radial, around] = [0, 0, 0, 0];
    for (const [k, i] of of.entries()) {
      if (i < 0) continue;
      radial += bent[k]! * w[i]!;
      around += bent[k + 16]! * w[i]!;
      // Only corners on the first ray count there: freedoms w and w_r of corners 0 and 1.
      if (k !== 0 && k !== 1 && k !== 4 && k !== 5) continue;
      const at = 2 * (k >> 2) + (k & 1);
      deflection += alongRadius[at]! * w[i]!;
      slope += alongRadius[4 + at]! * w[i]!;
    }
    return {
      deflection,
      slope,
      radialMoment: radial + poisson * around,
      hoopMoment: around + poisson * radial,
    };
  };
  const everywhere = Array.from({ length: rings - 1 }, (_, row) =>
    [0, 0.25, 0.5, 0.75, 1].map((x) => inRow(row, x)),
  ).flat();
  return {
    at: (radius: number) => {
      const row = Math.min(rings - 2, Math.max(0, radiiMm.findIndex((line) => line > radius) - 1));
      return inRow(row, (radius - radiiMm[row]!) / (radiiMm[row + 1]! - radiiMm[row]!)).deflection;
    },
    inside: inRow(0, 0),
    outside: inRow(rings - 2, 1),
    everywhere,
    /** Deflection of a node on the outer edge, the first or last ray. */
    outerNode: (ray: number) => w[freedoms.unknown[4 * ((rings - 1) * rays + (ray < 0 ? rays - 1 : ray))]!]!,
    unknowns: freedoms.size,
  };
}

/** Half a unit of the last digit printed, and what the finite elements are allowed, 0.2 %. */
export function printed(figure: string): { readonly value: number; readonly within: number } {
  const decimals = figure.split('.')[1]?.length ?? 0;
  return { value: Number(figure), within: 0.5 * 10 ** -decimals + 0.002 * Math.abs(Number(figure)) };
}

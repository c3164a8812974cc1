import { describe, expect, it } from 'vitest';
import type { StiffnessInput } from '../../../shared/words/bending/stiffness.ts';
import { assembleLoad, assembleStiffness } from '../../../src/calc/plate/elements/assemble.ts';
import { numberFreedoms } from '../../../src/calc/plate/elements/freedoms.ts';
import { times } from '../../../src/calc/plate/elements/skyline.ts';
import { type SolvedCover, solveCover } from '../../../src/calc/plate/solveCover.ts';
import { COVER } from './example.ts';

/**
 * What the side wall pulls the whole cover back with: the rim is let go, the deflections found are put in, and what
 * the stiffness then asks for at the rim beyond the load that stands there is the side wall's.
 */
function sideWallN({ model, pressed }: SolvedCover, { poisson }: StiffnessInput): number {
  const { mesh, rigidityNmm, rimSpringN, pressureAt, share } = model;
  const freedoms = numberFreedoms({ mesh, inner: 'rigid', outer: 'free' });
  const stiffness = assembleStiffness({ mesh, freedoms, rigidityNmm, poisson, outerEdgeSpringN: rimSpringN });
  const load = assembleLoad({ mesh, freedoms, pressureAt });
  const w = new Float64Array(freedoms.size);
  for (const [k, i] of freedoms.unknown.entries()) {
    const held = model.freedoms.unknown[k]!;
    if (i >= 0 && held >= 0) w[i] = pressed.w[held]!;
  }
  const asked = times(stiffness, w);
  const [rays, rings] = [mesh.anglesRad.length, mesh.radiiMm.length];
  let sum = 0;
  for (let ray = 0; ray < rays; ray++) {
    const i = freedoms.unknown[4 * ((rings - 1) * rays + ray)]!;
    sum += load[i]! - asked[i]!;
  }
  return sum / share;
}

describe('the converter floats: its studs carry only the thrust (first principles)', () => {
  it.each([
    ['rigid', {}],
    ['conforming', {}],
    ['conforming', { studCircleDiameterMm: 250, studCount: 3 }],
    [
      'rigid',
      { trackWallMm: 3, ring: { innerDiameterMm: 270, outerDiameterMm: 300, thicknessMm: 6, bonded: true } },
    ],
  ] as const)('cover, boss and pads balance the impeller with a %s piston and %j', (piston, change) => {
    const input: StiffnessInput = { ...COVER, ...change, piston };
    const solved = solveCover(input);
    // Oil presses the impeller back between its hub and the rim; the side wall carries that to the cover.
    const impellerN = input.pressureMPa * Math.PI * (150 ** 2 - 24 ** 2);
    expect(sideWallN(solved, input) / impellerN).toBeCloseTo(1, 7);
  });

  it('rotation by itself adds the oil’s head on the flat, no more', () => {
    const input: StiffnessInput = { ...COVER, piston: 'conforming', speedRpm: 2500 };
    const omega = (2500 * Math.PI) / 30;
    const half = 0.5 * 840e-12 * omega ** 2;
    const head = half * Math.PI * ((150 ** 4 - 45 ** 4) / 2 - 24 ** 2 * (150 ** 2 - 45 ** 2));
    const still = 0.7 * Math.PI * (150 ** 2 - 24 ** 2);
    expect(sideWallN(solveCover(input), input) / (still + head)).toBeCloseTo(1, 7);
  });
});

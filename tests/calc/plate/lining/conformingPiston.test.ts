import { describe, expect, it } from 'vitest';
import { GAUSS_AT, GAUSS_WEIGHT } from '../../../../src/calc/plate/elements/gauss.ts';
import { times } from '../../../../src/calc/plate/elements/skyline.ts';
import { addPoint } from '../../../../src/calc/plate/lining/lining.ts';
import { solveCover } from '../../../../src/calc/plate/solveCover.ts';
import { COVER } from '../example.ts';

describe('a conforming piston on a cover so soft that the lining lets go in places (calculations page, 3.4)', () => {
  const modulus = 3000;
  const solved = solveCover({
    ...COVER,
    piston: 'conforming',
    wallMm: 2,
    trackWallMm: 1.2,
    liningModulusMPaPerMm: modulus,
  });
  const { model, pressed, field } = solved;
  const { areaMm2, circles, perCircle } = model.track;

  it('the lining under a conforming piston lets go of a very soft cover in places', () => {
    expect(pressed.active.some((one) => one === 0)).toBe(true);
    expect(pressed.active.some((one) => one === 1)).toBe(true);
  });

  it('every circle under a conforming piston carries the even pressure', () => {
    for (let circle = 0; circle < circles; circle++) {
      let [force, area] = [0, 0];
      for (let i = circle * perCircle; i < (circle + 1) * perCircle; i++) {
        area += areaMm2[i]!;
        if (pressed.active[i] === 1) force += modulus * areaMm2[i]! * pressed.squeezedMm[i]!;
      }
      expect(force / area / model.forces.meanPressureMPa, `circle ${circle}`).toBeCloseTo(1, 6);
    }
  });

  it('the plate’s stiffness balances its loads and what the lining’s springs carry', () => {
    const left = times(model.stiffness, pressed.w);
    const most = Math.max(...left.map(Math.abs));
    for (let i = 0; i < left.length; i++) left[i] = left[i]! - model.load[i]!;
    for (let i = 0; i < areaMm2.length; i++) {
      if (pressed.active[i] === 1) {
        addPoint(model.track, i, -modulus * areaMm2[i]! * pressed.squeezedMm[i]!, left);
      }
    }
    expect(Math.max(...left.map(Math.abs)) / most).toBeLessThan(1e-7);
  });

  it('any other circle where pressure is asked for carries the even pressure too, at the points of the mesh', () => {
    const { anglesRad } = model.mesh;
    const all = anglesRad.at(-1)!;
    for (const radius of [107, 112.3, 121, 132]) {
      let mean = 0;
      for (let i = 0; i + 1 < anglesRad.length; i++) {
        const sweep = anglesRad[i + 1]! - anglesRad[i]!;
        for (let g = 0; g < 4; g++) {
          const angle = anglesRad[i]! + sweep * GAUSS_AT[g]!;
          mean += (field.pressureMPa(radius, angle) * sweep * GAUSS_WEIGHT[g]!) / all;
        }
      }
      expect(mean / model.forces.meanPressureMPa, `radius ${radius}`).toBeCloseTo(1, 9);
    }
  });
});

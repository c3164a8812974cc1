import { describe, expect, it } from 'vitest';
import { coverForces } from '../../../src/calc/plate/model/coverForces.ts';
import { flexuralRigidity } from '../../../src/calc/plate/model/flexuralRigidity.ts';
import { padPatch } from '../../../src/calc/plate/model/padPatch.ts';
import { sideWallSpring } from '../../../src/calc/plate/model/sideWallSpring.ts';
import { stiffPad } from '../../../src/calc/plate/model/stiffPad.ts';
import { COVER } from './example.ts';

const STEEL = { youngMPa: 206_000, poisson: 0.29 };

describe('what the model is made of', () => {
  it('a plate twice as thick is eight times as stiff (by formula)', () => {
    const thin = flexuralRigidity({ ...STEEL, thicknessMm: 2.5 });
    expect(flexuralRigidity({ ...STEEL, thicknessMm: 5 })).toBeCloseTo(8 * thin, 6);
    expect(thin).toBeCloseTo((206_000 * 15.625) / (12 * 0.9159), 6);
  });

  it('a side wall of 4 mm on R 150 holds with 2·β·D_s (arithmetic on Timoshenko & Woinowsky-Krieger §114, from memory)', () => {
    const { betaPerMm, springN } = sideWallSpring({ ...STEEL, rimRadiusMm: 150, sideWallMm: 4 });
    expect(betaPerMm).toBeCloseTo(0.05256, 5);
    // The same by energy: a long beam on the elastic foundation E·t/R², turned at an end that does not move.
    const rigidity = flexuralRigidity({ ...STEEL, thicknessMm: 4 });
    const foundation = (206_000 * 4) / 150 ** 2;
    expect(springN).toBeCloseTo(2 * rigidity * (foundation / (4 * rigidity)) ** 0.25, 6);
    expect(springN / 1000).toBeCloseTo(126.1, 1);
  });

  it('a pad Ø 24 on Ø 286 is a square of 21.269 mm, clipped at the rim (arithmetic)', () => {
    const pad = padPatch(COVER);
    const side = 21.2694;
    expect(side ** 2).toBeCloseTo((Math.PI / 4) * 24 ** 2, 1);
    expect(pad.innerMm).toBeCloseTo(143 - side / 2, 4);
    expect(pad).toMatchObject({ outerMm: 150, clipped: true });
    expect(pad.halfAngleRad).toBeCloseTo(side / 2 / 143, 6);
    expect(padPatch({ ...COVER, studCircleDiameterMm: 260 })).toMatchObject({ clipped: false });
  });

  it('the stiff part of a pad begins 0.44 walls within its edge: of Ø 24 and 5 mm a square of 17.370 mm (arithmetic)', () => {
    const stiff = stiffPad({ ...COVER, padInsetWalls: null });
    const side = (19.6 * Math.sqrt(Math.PI)) / 2;
    expect(side).toBeCloseTo(17.37, 3);
    expect(stiff.innerMm).toBeCloseTo(143 - side / 2, 9);
    expect(stiff.halfAngleRad).toBeCloseTo(side / 2 / 143, 9);
    expect(stiff).toMatchObject({ outerMm: 150, clipped: true });
    expect(stiffPad({ ...COVER, padInsetWalls: 0 })).toEqual(padPatch(COVER));
    expect(stiffPad({ ...COVER, padDiameterMm: 4, padInsetWalls: null }).halfAngleRad).toBe(0);
  });

  it('the root of a pad gives way by 0.424 to 0.477 walls: a rigid one, and one with stress in a straight line (by quadrature)', () => {
    // −∬ y·s·ln|y − s| over the square of side 2, for E = 1 − ν² and h = 2; by Chebyshev sums −ln|y − s| = ln 2 + Σ 2/n·T_n(y)·T_n(s).
    const count = 4000;
    let sum = 0;
    for (let n = 1; n < 60; n += 2) {
      let moment = 0;
      for (let i = 0; i < count; i++) {
        const y = -1 + (2 * (i + 0.5)) / count;
        moment += (y * Math.cos(n * Math.acos(y)) * 2) / count;
      }
      sum += (2 / n) * moment ** 2;
    }
    expect(sum).toBeCloseTo(1, 4);
    // θ·M = (2/π)·(12·M/h³)²·(h/2)⁴·sum, so k = 18·sum/π; a punch of half width a: M = π·a²·θ/4, so k = 16/π.
    expect(((18 / Math.PI) * sum) / 12).toBeCloseTo(0.4775, 3);
    expect(16 / Math.PI / 12).toBeCloseTo(0.4244, 4);
  });

  it('the forces of check values 10.1 give a mean pressure of 1.8539 MPa (independent second implementation, not published)', () => {
    const forces = coverForces({ ...COVER, speedRpm: 2500 });
    expect(forces.meanPressureMPa.toFixed(4)).toBe('1.8539');
    expect(forces.bossN).toBeCloseTo(0.7 * Math.PI * 40 ** 2, 9);
    expect(forces.perPadN).toBeCloseTo((-0.7 * Math.PI * 24 ** 2) / 4, 9);
    // ½·840·(2500·π/30)²·(0.15² − 0.024²) Pa
    expect(forces.headMPa(150)).toBeCloseTo(0.63111, 5);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StiffnessInput } from '../../shared/words/bending/stiffness.ts';
import { bendCover } from '../../src/calc/plate/bendCover.ts';
import { assembleLoad, assembleStiffness } from '../../src/calc/plate/elements/assemble.ts';
import { numberFreedoms } from '../../src/calc/plate/elements/freedoms.ts';
import type { PlateMesh } from '../../src/calc/plate/elements/mesh.ts';
import { dot, factor, solveFactored, times } from '../../src/calc/plate/elements/skyline.ts';
import { type SolvedCover, solveCover } from '../../src/calc/plate/solveCover.ts';
import { COVER } from '../calc/plate/example.ts';

/** What any cover must obey, whatever its sizes. */

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const cover: fc.Arbitrary<StiffnessInput> = fc
  .record({
    piston: fc.constantFrom('rigid' as const, 'conforming' as const),
    studCount: fc.constantFrom(3, 4, 6),
    rim: between(240, 340),
    boss: between(0.2, 0.4),
    inner: between(0.68, 0.75),
    outer: between(0.82, 0.92),
    stud: between(0.9, 0.97),
    wall: between(3, 7),
    faced: between(0.6, 1),
    pad: between(15, 30),
    ringed: fc.constantFrom(null, true, false),
  })
  .map(({ rim, boss, inner, outer, stud, wall, faced, pad, ringed, piston, studCount }) => ({
    ...COVER,
    piston,
    studCount,
    rimDiameterMm: rim,
    bossDiameterMm: boss * rim,
    trackInnerDiameterMm: inner * rim,
    trackOuterDiameterMm: outer * rim,
    studCircleDiameterMm: stud * rim,
    padDiameterMm: pad,
    wallMm: wall,
    trackWallMm: faced * wall,
    pistonSealDiameterMm: 0.25 * rim,
    hubDiameterMm: 0.16 * rim,
    ring:
      ringed === null
        ? null
        : { innerDiameterMm: 0.85 * rim, outerDiameterMm: rim, thicknessMm: 6, bonded: ringed },
  }));

const law = (check: (input: StiffnessInput, solved: SolvedCover) => void, numRuns = 5) =>
  fc.assert(
    fc.property(cover, (input) => check(input, solveCover(input))),
    { numRuns, endOnFailure: true },
  );

const boss = ({ model, pressed }: SolvedCover) => pressed.w[model.boss]!;

/** Forces of the springs of half a sector that are pressed, with what each is shortened by. */
function lining({ model, pressed }: SolvedCover, modulus: number) {
  const { areaMm2 } = model.track;
  return [...pressed.active.keys()]
    .filter((i) => pressed.active[i] === 1)
    .map((i) => ({
      forceN: modulus * areaMm2[i]! * pressed.squeezedMm[i]!,
      squeezedMm: pressed.squeezedMm[i]!,
    }));
}

describe('laws of bending', () => {
  it('all of the lining carries the piston’s force, and none of it pulls', () => {
    law((input, solved) => {
      const springs = lining(solved, input.liningModulusMPaPerMm);
      const total = springs.reduce((sum, { forceN }) => sum + forceN, 0);
      expect(total / (solved.model.forces.liningN * solved.model.share)).toBeCloseTo(1, 6);
      for (const { squeezedMm } of springs) expect(squeezedMm).toBeGreaterThan(0);
    });
  });

  it('a spring that does not touch has no reason to', () => {
    law((_, { pressed }) => {
      for (const [i, squeezed] of pressed.squeezedMm.entries()) {
        if (pressed.active[i] === 0) expect(squeezed).toBeLessThanOrEqual(0);
      }
    });
  });

  it('the loads’ work is twice the energy that plate and lining store', () => {
    law((input, solved) => {
      const { model, pressed } = solved;
      const stored = dot(pressed.w, times(model.stiffness, pressed.w));
      const springs = lining(solved, input.liningModulusMPaPerMm);
      const inLining = springs.reduce((sum, { forceN, squeezedMm }) => sum + forceN * squeezedMm, 0);
      // The far end of a spring is w + squeezed: the piston's work is over that way.
      const { areaMm2, shape, unknown } = model.track;
      let byPiston = 0;
      for (let i = 0; i < areaMm2.length; i++) {
        if (pressed.active[i] === 0) continue;
        let w = 0;
        for (let k = 16 * i; k < 16 * i + 16; k++)
          if (unknown[k]! >= 0) w += shape[k]! * pressed.w[unknown[k]!]!;
        byPiston +=
          input.liningModulusMPaPerMm * areaMm2[i]! * pressed.squeezedMm[i]! * (w + pressed.squeezedMm[i]!);
      }
      const work = dot(model.load, pressed.w) + byPiston;
      // Narrow elements cost digits: a gap of 0.04 mm leaves six.
      expect(work / (stored + inLining)).toBeCloseTo(1, 5);
    });
  });

  it('twice the pressure bends the cover twice as much, and the peak over the mean stays', () => {
    law((input) => {
      const [once, twice] = [1, 2].map((n) => bendCover({ ...input, pressureMPa: 0.5 * n }));
      expect(twice!.bossDeflectionMm / once!.bossDeflectionMm).toBeCloseTo(2, 8);
      expect(twice!.rippleMm / once!.rippleMm).toBeCloseTo(2, 6);
      expect(twice!.greatestStressMPa / once!.greatestStressMPa).toBeCloseTo(2, 8);
      expect(twice!.peakOverMean).toBeCloseTo(once!.peakOverMean, 8);
    }, 2);
  });

  it('a cover twice as thick everywhere bends as with eight times Young’s modulus', () => {
    law((input) => {
      // The side wall's spring is not cubed (β counts too): it is made nothing here.
      const soft = { ...input, sideWallMm: 1e-3, wallMm: 3, trackWallMm: 2.5 };
      const thick = {
        ...soft,
        padThicknessMm: 20,
        wallMm: 6,
        trackWallMm: 5,
        ring: soft.ring && { ...soft.ring, thicknessMm: 12 },
      };
      // The mesh has lines one wall from a pad: the two meshes differ, and so do the last digits.
      const stiff = solveCover({ ...soft, youngMPa: 8 * soft.youngMPa });
      const doubled = solveCover(thick);
      expect(boss(doubled) / boss(stiff)).toBeCloseTo(1, 2);
      expect(doubled.peak.peakOverMean / stiff.peak.peakOverMean).toBeCloseTo(1, 2);
    }, 2);
  });

  it('a cover in another unit of length bends the same', () => {
    law((input, solved) => {
      const scale = 1 / 25.4;
      const lengths = Object.entries(input).map(([key, value]) => [
        key,
        key.endsWith('Mm') && typeof value === 'number' && key !== 'liningModulusMPaPerMm'
          ? value * scale
          : value,
      ]);
      const ring = input.ring && {
        bonded: input.ring.bonded,
        innerDiameterMm: input.ring.innerDiameterMm * scale,
        outerDiameterMm: input.ring.outerDiameterMm * scale,
        thicknessMm: input.ring.thicknessMm * scale,
      };
      const small: StiffnessInput = {
        ...(Object.fromEntries(lengths) as unknown as StiffnessInput),
        ring,
        liningModulusMPaPerMm: input.liningModulusMPaPerMm / scale,
      };
      const there = solveCover(small);
      expect(boss(there) / scale / boss(solved)).toBeCloseTo(1, 5);
      expect(there.peak.peakOverMean).toBeCloseTo(solved.peak.peakOverMean, 4);
    }, 2);
  });

  it('the mean of the pressure over the track is the mean pressure', () => {
    law((input, { model, field }) => {
      const [from, to] = [input.trackInnerDiameterMm / 2, input.trackOuterDiameterMm / 2];
      const end = Math.PI / input.studCount;
      let [sum, area] = [0, 0];
      for (let i = 0; i < 40; i++) {
        const r = from + ((to - from) * (i + 0.5)) / 40;
        for (let j = 0; j < 40; j++) {
          sum += r * field.pressureMPa(r, (end * (j + 0.5)) / 40);
          area += r;
        }
      }
      expect(sum / area / model.forces.meanPressureMPa).toBeCloseTo(1, 2);
    }, 2);
  });

  it('pressure and deflection are level midway between two studs', () => {
    law((input, { field }) => {
      const end = Math.PI / input.studCount;
      const mid = (input.trackInnerDiameterMm + input.trackOuterDiameterMm) / 4;
      const step = 1e-4;
      const slope = (angle: number, inward: number) =>
        (field.deflectionMm(mid, angle + inward * step) - field.deflectionMm(mid, angle)) / step;
      const steepest = Math.max(
        ...Array.from({ length: 9 }, (_, i) => Math.abs(slope((end * (i + 1)) / 10, 1))),
      );
      // Over so short a way a level line has risen by its curvature alone: a thousandth of the steepest slope or so.
      for (const [line, inward] of [
        [0, 1],
        [end, -1],
      ] as const) {
        expect(Math.abs(slope(line, inward)) / steepest).toBeLessThan(0.005);
      }
    }, 2);
  });

  it('a half sector from midway to a stud bends as one from a stud to midway', () => {
    law((input, { model }) => {
      const { mesh, rigidityNmm, rimSpringN, pressureAt, boss: bossUnknown, share, forces } = model;
      const last = mesh.anglesRad.length - 1;
      const end = mesh.anglesRad[last]!;
      const anglesRad = mesh.anglesRad.map((_, i) => end - mesh.anglesRad[last - i]!);
      const swapped = { radiiMm: mesh.radiiMm, anglesRad };
      const mirrored = (at: number) => at - (at % last) + (last - 1 - (at % last));
      const solve = (
        half: PlateMesh,
        rigidity: Float64Array,
        pressure: (radius: number, row: number, column: number) => number,
      ) => {
        const freedoms = numberFreedoms({ mesh: half, inner: 'rigid', outer: 'simple' });
        const stiffness = assembleStiffness({
          mesh: half,
          freedoms,
          rigidityNmm: rigidity,
          poisson: input.poisson,
          outerEdgeSpringN: rimSpringN,
        });
        const w = assembleLoad({ mesh: half, freedoms, pressureAt: pressure });
        w[bossUnknown] = w[bossUnknown]! + forces.bossN * share;
        factor(stiffness);
        solveFactored(stiffness, w);
        return (ring: number, ray: number) => w[freedoms.unknown[4 * (ring * (last + 1) + ray)]!] ?? 0;
      };
      // The lining aside, for it is even round the track.
      const one = solve(mesh, rigidityNmm, pressureAt);
      const other = solve(
        swapped,
        rigidityNmm.map((_, at) => rigidityNmm[mirrored(at)]!),
        (radius, row, column) => pressureAt(radius, row, last - 1 - column),
      );
      for (let ring = 0; ring < mesh.radiiMm.length - 1; ring++) {
        for (let ray = 0; ray <= last; ray++) {
          expect(Math.abs(one(ring, ray) - other(ring, last - ray))).toBeLessThan(1e-6 * Math.abs(one(0, 0)));
        }
      }
    }, 2);
  });
});

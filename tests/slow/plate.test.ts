import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StiffnessInput } from '../../shared/words/bending/stiffness.ts';
import { Refusal } from '../../shared/words/refusal.ts';
import { bendCover } from '../../src/calc/plate/bendCover.ts';
import { coverAnswers } from '../../src/calc/plate/coverAnswers.ts';
import { solveCover } from '../../src/calc/plate/solveCover.ts';
import { COVER } from '../calc/plate/example.ts';

const at = (input: StiffnessInput, fineness: number) =>
  coverAnswers(input, solveCover(input, fineness), null);
const off = (found: number, wanted: number) => Math.abs(found / wanted - 1);

describe('the mesh of an answer against one three times as fine (against itself; rate, not value)', () => {
  const others: readonly [string, Partial<StiffnessInput>][] = [
    ['as it is', {}],
    ['faced', { trackWallMm: 4 }],
    ['three studs, on the track’s edge', { studCount: 3, studCircleDiameterMm: 262 }],
    ['six small pads', { studCount: 6, padDiameterMm: 18 }],
    ['two studs', { studCount: 2 }],
    ['thin', { wallMm: 2.5, trackWallMm: 2 }],
    ['a small boss', { bossDiameterMm: 30 }],
    [
      'with a ring',
      {
        ring: {
          innerDiameterMm: 262,
          outerDiameterMm: 298,
          thicknessMm: 8,
          bonded: true,
          joinedToPads: true,
        },
      },
    ],
  ];
  const rows = others.flatMap(([name, change]) =>
    (['rigid', 'conforming'] as const).map((piston) => ({ name, input: { ...COVER, ...change, piston } })),
  );
  it.each(rows)(
    'agrees to 1 % in peak, 2 % in ripple, 0.4 % at the boss and 7 % in stress: $name, $input.piston',
    ({ input }) => {
      const [found, fine] = [at(input, 1), at(input, 3)];
      expect(off(found.peakOverMean, fine.peakOverMean)).toBeLessThan(0.01);
      expect(off(found.rippleMm, fine.rippleMm)).toBeLessThan(0.02);
      expect(off(found.bossDeflectionMm, fine.bossDeflectionMm)).toBeLessThan(0.004);
      expect(off(found.greatestStressMPa, fine.greatestStressMPa)).toBeLessThan(0.07);
    },
  );

  it('comes nearer at the boss with each halving', () => {
    const boss = [1, 2, 4, 6].map(
      (fineness) => at({ ...COVER, piston: 'conforming' }, fineness).bossDeflectionMm,
    );
    const errors = boss.slice(0, 3).map((one) => Math.abs(one / boss[3]! - 1));
    expect(errors[1]!).toBeLessThan(0.7 * errors[0]!);
    expect(errors[2]!).toBeLessThan(0.7 * errors[1]!);
  });
});

/** Shares of the rim, so that most are covers; `extreme` goes to where no cover is. */
function sizes(extreme: boolean): fc.Arbitrary<StiffnessInput> {
  const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  return fc
    .record({
      piston: fc.constantFrom('rigid' as const, 'conforming' as const),
      studCount: fc.integer({ min: 2, max: 8 }),
      rim: between(200, 400),
      boss: extreme ? between(0.02, 0.5) : between(0.15, 0.45),
      inner: between(0.5, 0.8),
      outer: extreme ? between(0.55, 1) : between(0.82, 0.95),
      stud: extreme ? between(0.3, 1) : between(0.8, 0.98),
      pad: extreme ? between(0.005, 0.3) : between(0.05, 0.12),
      padThicknessMm: between(0, 20),
      wallMm: extreme ? between(0.3, 30) : between(2.5, 8),
      faced: between(0.5, 1),
      sideWallMm: extreme ? between(0.1, 30) : between(2, 8),
      liningModulusMPaPerMm: extreme ? fc.constantFrom(0.01, 1, 60, 1e4, 1e6) : between(5, 500),
      speedRpm: fc.constantFrom(null, 2500, 6000),
      pressureMPa: between(0.2, 1.5),
    })
    .map(({ rim, boss, inner, outer, stud, pad, faced, ...rest }) => ({
      ...COVER,
      ...rest,
      rimDiameterMm: rim,
      bossDiameterMm: boss * rim,
      trackInnerDiameterMm: inner * rim,
      trackOuterDiameterMm: outer * rim,
      studCircleDiameterMm: stud * rim,
      padDiameterMm: pad * rim,
      trackWallMm: faced * rest.wallMm,
      pistonSealDiameterMm: 0.25 * rim,
    }));
}

function finite(input: StiffnessInput): void {
  const { peakOverMean, rippleMm, bossDeflectionMm, greatestStressMPa, touchingShare } = bendCover(input);
  for (const one of [peakOverMean, rippleMm, bossDeflectionMm, greatestStressMPa]) {
    expect(Number.isFinite(one)).toBe(true);
  }
  expect(peakOverMean).toBeGreaterThan(0.95);
  expect(touchingShare).toBeGreaterThan(0);
}

describe('a cover of any sizes', () => {
  it('that a shop may see is answered, contact settled', () => {
    fc.assert(fc.property(sizes(false), finite), { numRuns: 100, endOnFailure: true });
  });

  it('that no shop sees is answered with finite numbers, or refused in a sentence', () => {
    const codes = ['cover-geometry', 'plate-unsolved'];
    fc.assert(
      fc.property(sizes(true), (input) => {
        try {
          finite(input);
        } catch (thrown) {
          if (!(thrown instanceof Refusal)) throw thrown;
          expect(codes).toContain(thrown.code);
          for (const { message } of thrown.faults) expect(message).toMatch(/[.]$/);
        }
      }),
      { numRuns: 100, endOnFailure: true },
    );
  });
});

import { describe, expect, it } from 'vitest';
import { distinctBreaks, gradedLines } from '../../../../src/calc/plate/elements/mesh.ts';
import { coverMesh } from '../../../../src/calc/plate/model/coverMesh.ts';
import { COVER } from '../example.ts';

describe('graded lines (first principles)', () => {
  it('mesh lines of an even size give even lines through every break', () => {
    const lines = gradedLines({ breaks: [0, 10, 14], sizeAt: () => 2 });
    expect([...lines].map((x) => Number(x.toFixed(9)))).toEqual([0, 2, 4, 6, 8, 10, 12, 14]);
  });
  it('mesh lines follow a size that grows', () => {
    const lines = gradedLines({ breaks: [1, 16], sizeAt: (x) => x });
    expect(lines).toHaveLength(4);
    expect(lines[2]! / lines[1]!).toBeCloseTo(16 ** (1 / 3), 1);
  });
  it('of two breaks that nearly meet, the one that must be a mesh line stays', () => {
    expect(distinctBreaks({ must: [0, 10, 5], may: [5.001, -1, 11, 8], closest: 0.01 })).toEqual([
      0, 5, 8, 10,
    ]);
  });
});

describe('mesh of a cover (calculations page, 3.4)', () => {
  const near = (lines: Float64Array, x: number) => Math.min(...lines.map((line) => Math.abs(line - x)));
  const ring = { innerDiameterMm: 240, outerDiameterMm: 296, thicknessMm: 6, bonded: true };
  const mesh = coverMesh({ ...COVER, studCircleDiameterMm: 250, ring });

  it.each([
    ['boss', 45],
    ['rim', 150],
    ['track, inner', 107],
    ['track, outer', 132],
    ['ring, inner', 120],
    ['ring, outer', 148],
    ['pad, inner', mesh.pad.innerMm],
    ['pad, outer', mesh.pad.outerMm],
    ['one wall within the pad’s inner edge', mesh.pad.innerMm - 5],
    ['one wall beyond the pad’s outer edge', mesh.pad.outerMm + 5],
  ])('a mesh line lies at the %s, %s mm', (_, radius) => {
    expect(near(mesh.radiiMm, radius)).toBeLessThan(1e-9);
  });
  it('a mesh line lies at the pad’s side, and one wall from it', () => {
    expect(near(mesh.anglesRad, mesh.pad.halfAngleRad)).toBeLessThan(1e-12);
    expect(near(mesh.anglesRad, mesh.pad.halfAngleRad + 5 / 125)).toBeLessThan(1e-12);
    expect(mesh.anglesRad.at(-1)).toBeCloseTo(Math.PI / 4, 12);
  });
  it('mesh lines never meet, for any number of studs', () => {
    for (const studCount of [2, 3, 6, 12]) {
      const { radiiMm, anglesRad } = coverMesh({ ...COVER, studCount });
      for (const lines of [radiiMm, anglesRad]) {
        for (let i = 1; i < lines.length; i++) expect(lines[i]!).toBeGreaterThan(lines[i - 1]!);
      }
      expect(radiiMm.length * anglesRad.length).toBeLessThan(500);
    }
  });
});

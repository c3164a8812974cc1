import { describe, expect, it } from 'vitest';
import { SOLID } from '../../../data/examples/solidCovers.ts';
import { bendCover } from '../../../src/calc/plate/bendCover.ts';
import { padsOverTrack } from '../../../src/calc/plate/padsOverTrack.ts';

describe('pads that reach over the friction surface', () => {
  it('pads reach over the friction surface by how much they are wider (arithmetic): pads Ø 29 on Ø 218 over a surface to Ø 196', () => {
    const cover = SOLID[2]!.cover;
    expect(padsOverTrack(cover).overlapMm).toBeCloseTo((196 - (218 - 29)) / 2, 12);
    expect(padsOverTrack({ ...cover, studCircleDiameterMm: 230 }).overlapMm).toBe(0);
    expect(padsOverTrack({ ...cover, studCircleDiameterMm: 160 }).overlapMm).toBeCloseTo((189 - 142) / 2, 12);
  });

  it('pads over the friction surface are warned of where the solid’s peak is higher than the model’s, and nowhere else', () => {
    for (const { cover, cutMm, cut } of SOLID) {
      const found = bendCover({ ...cover, trackWallMm: cutMm });
      const tooLow = found.peakOverMean < 0.95 * cut.peak;
      expect(padsOverTrack(cover).peakTooLow).toBe(tooLow);
      expect(found.warnings.some(({ code }) => code === 'pads-over-track')).toBe(tooLow);
    }
  });
});

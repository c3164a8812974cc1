import { describe, expect, it } from 'vitest';
import { bendCover } from '../../../src/calc/plate/bendCover.ts';
import { wallForPeak } from '../../../src/calc/plate/wallForPeak.ts';
import { COVER } from './example.ts';

const cover = { ...COVER, piston: 'conforming' as const };

describe('the wall at which a limit on the peak is reached', () => {
  it('at the wall found for a limit the peak is that limit (root)', () => {
    const { wallForPeakMm } = bendCover({ ...cover, peakLimit: 1.35 });
    expect(wallForPeakMm!).toBeGreaterThan(4);
    expect(wallForPeakMm!).toBeLessThan(5);
    expect(bendCover({ ...cover, trackWallMm: wallForPeakMm! }).peakOverMean).toBeCloseTo(1.35, 3);
  });
  it('a search that takes more rounds of contact than it may is refused, and says what to change', () => {
    const refused = () => wallForPeak({ input: cover, peakLimit: 1.35, mostRounds: 1 });
    expect(refused).toThrow('leave the limit out');
    expect(wallForPeak({ input: cover, peakLimit: 1.35 }).wallMm).not.toBeNull();
  });
  it('a limit that even the full wall passes, and one that no wall reaches, have no wall and say why', () => {
    const tight = bendCover({ ...cover, peakLimit: 1.1 });
    expect(tight.wallForPeakMm).toBeNull();
    expect(tight.warnings.at(-1)).toMatchObject({ code: 'peak-above-limit-at-full-wall' });
    const loose = bendCover({ ...cover, peakLimit: 50 });
    expect(loose.wallForPeakMm).toBeNull();
    expect(loose.warnings.at(-1)).toMatchObject({ code: 'peak-below-limit' });
  });
});

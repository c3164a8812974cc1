import { describe, expect, it } from 'vitest';
import { coverage } from '../../../src/calc/cover/coverage.ts';
import { stationLayout } from '../../../src/calc/cover/stationLayout.ts';

describe('where to measure (common practice, no source)', () => {
  it('the layout for track Ø 214–264 and 4 studs is eight stations at r 110 and four at r 128', () => {
    const stations = stationLayout({ studCount: 4, trackInnerDiameterMm: 214, trackOuterDiameterMm: 264 });
    expect(stations.map(({ angleDeg, radiusMm }) => `${angleDeg}/${radiusMm}`)).toEqual([
      '0/110',
      '45/110',
      '90/110',
      '135/110',
      '180/110',
      '225/110',
      '270/110',
      '315/110',
      '0/128',
      '90/128',
      '180/128',
      '270/128',
    ]);
  });
  it.each([2, 3, 4, 5, 6, 7, 12])(
    'the layout for %i studs misses no place that coverage asks for',
    (studCount) => {
      const stations = stationLayout({ studCount, trackInnerDiameterMm: 200, trackOuterDiameterMm: 240 });
      expect(new Set(stations.map(({ angleDeg, radiusMm }) => `${angleDeg}/${radiusMm}`)).size).toBe(
        3 * studCount,
      );
      expect(coverage(stations, studCount)).toMatchObject({ missingPlaces: [], secondRing: true });
    },
  );
  it('a friction surface given in inches is measured at radii of a sixteenth of an inch', () => {
    const radiiOf = (inner: number, outer: number) => {
      const track = { trackInnerDiameterMm: inner * 25.4, trackOuterDiameterMm: outer * 25.4 };
      return [...new Set(stationLayout({ studCount: 4, ...track }).map(({ radiusMm }) => radiusMm))];
    };
    // 8.5 to 10.375 in: 4.25 + 0.9375/8 = 4.367 → 4 3/8, 5.1875 − 0.9375/6 = 5.031 → 5 in.
    expect(radiiOf(8.5, 10.375)).toEqual([111.125, 127]);
    // 10 in is 254 mm, but 8.5 in is no whole number of millimeters.
    expect(
      radiiOf(8.5, 10).every((mm) => Math.abs((mm * 16) / 25.4 - Math.round((mm * 16) / 25.4)) < 1e-4),
    ).toBe(true);
    // What is whole in both is of a metric shop.
    expect(radiiOf(5, 10).every(Number.isInteger)).toBe(true);
  });
  it('a track narrower than 6 mm is read at its two edges', () => {
    const radii = stationLayout({ studCount: 3, trackInnerDiameterMm: 200, trackOuterDiameterMm: 208 }).map(
      (one) => one.radiusMm,
    );
    expect([...new Set(radii)]).toEqual([100, 104]);
  });
});

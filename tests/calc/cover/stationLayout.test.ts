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
  it('a track narrower than 6 mm is read at its two edges', () => {
    const radii = stationLayout({ studCount: 3, trackInnerDiameterMm: 200, trackOuterDiameterMm: 208 }).map(
      (one) => one.radiusMm,
    );
    expect([...new Set(radii)]).toEqual([100, 104]);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawnRadius, radiusDrawnAt, rowsApart, toScale } from '../../shared/measuring/planRadii.ts';

const RIM = { radiusMm: 125, drawn: 128 };

/** Evenly spread, in thousandths; numbers drawn as doubles are nearly all close to 0. */
const millimeters = (min: number, max: number) =>
  fc.integer({ min: min * 1000, max: max * 1000 }).map((thousandths) => thousandths / 1000);

describe('the plan for touching', () => {
  it('draws two close rows of stations a finger apart, and leaves far ones to scale', () => {
    const close = rowsApart([110, 119, 110, 119.3], RIM);
    expect(drawnRadius(close, 119.15) - drawnRadius(close, 110)).toBeCloseTo(53, 9);
    expect(rowsApart([60, 119], RIM)).toEqual(toScale(RIM));
    expect(rowsApart([110, 110.4], RIM)).toEqual(toScale(RIM));
    expect(rowsApart([], RIM)).toEqual(toScale(RIM));
  });

  it('keeps the middle in the middle and the rim at the rim', () => {
    const radii = rowsApart([100, 110, 119], RIM);
    expect([drawnRadius(radii, 0), drawnRadius(radii, 125)]).toEqual([0, 128]);
  });

  it('stays to scale where a station lies on or outside the rim, since it cannot be drawn inside it', () => {
    expect(rowsApart([110, 125], RIM)).toEqual(toScale(RIM));
    expect(rowsApart([120, 130], RIM)).toEqual(toScale(RIM));
  });

  it('keeps the order of everything, and finds back the radius of every point', () => {
    fc.assert(
      fc.property(
        fc.array(millimeters(20, 124), { minLength: 1, maxLength: 12 }),
        millimeters(0, 140),
        millimeters(0.01, 20),
        (rows, radiusMm, more) => {
          const radii = rowsApart(rows, RIM);
          expect(drawnRadius(radii, radiusMm + more)).toBeGreaterThan(drawnRadius(radii, radiusMm));
          expect(radiusDrawnAt(radii, drawnRadius(radii, radiusMm))).toBeCloseTo(radiusMm, 6);
        },
      ),
    );
  });
});

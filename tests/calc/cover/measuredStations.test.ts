import { describe, expect, it } from 'vitest';
import { turned } from '../../../shared/words/places.ts';
import { placeOnFace } from '../../../src/calc/cover/measuredStations.ts';

describe('a station’s place on the face', () => {
  it.each([
    [0, 100, 0],
    [45, 100 / Math.SQRT2, 100 / Math.SQRT2],
    [90, 0, 100],
    [180, -100, 0],
    [-90, 0, -100],
    [450, 0, 100],
  ])('at %s° and radius 100 is x %s, y %s', (angleDeg, xMm, yMm) => {
    const place = placeOnFace(angleDeg, 100);
    expect(place.xMm).toBeCloseTo(xMm, 9);
    expect(place.yMm).toBeCloseTo(yMm, 9);
  });

  it.each([
    [-60, 300],
    [360, 0],
    [-1e-15, 0],
    [725, 5],
  ])('%s° is %s° within one turn', (angleDeg, within) => expect(turned(angleDeg)).toBe(within));
});

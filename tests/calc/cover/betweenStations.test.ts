import { describe, expect, it } from 'vitest';
import { betweenStations } from '../../../src/calc/cover/betweenStations.ts';
import { measuredStations } from '../../../src/calc/cover/measuredStations.ts';
import { SET_ONE, unread } from './sets.ts';

const stations = measuredStations(SET_ONE);
const at = (angleDeg: number, radiusMm = 110) => betweenStations({ angleDeg, radiusMm }, stations);

describe('wall and height between stations (arithmetic)', () => {
  it('the wall halfway between stations of 4.92 and 4.90 mm is 4.91 mm', () => {
    expect(at(22.5).wallMm).toBeCloseTo(4.91, 12);
    expect(at(22.5).faceMm).toBeCloseTo(0.055, 12);
  });
  it('a place between the last station and the first takes its wall from both, past 360°', () => {
    // From 315° (4.90) a third of the way to 0° (4.92).
    expect(at(330).wallMm).toBeCloseTo(4.9 + 0.02 / 3, 12);
    expect(at(-30).wallMm).toBeCloseTo(4.9 + 0.02 / 3, 12);
  });
  it('a place at a station has that station’s wall and height', () =>
    expect(at(180)).toEqual({ wallMm: 4.8, faceMm: -0.05 }));
  it('a place takes its wall from the nearest ring, and of two equally near from the inner', () => {
    expect(at(45, 127).wallMm).toBeCloseTo((4.93 + 4.86) / 2, 12);
    expect(at(45, 119).wallMm).toBe(4.9);
    expect(at(45, 119.1).wallMm).toBeCloseTo((4.93 + 4.86) / 2, 12);
  });
  it('a place on a ring of one station has that station’s wall and height', () => {
    expect(betweenStations({ angleDeg: 77, radiusMm: 110 }, stations.slice(3, 4)).wallMm).toBe(4.83);
  });
  it('a place between stations without indicator readings has no height', () => {
    const found = betweenStations({ angleDeg: 10, radiusMm: 110 }, measuredStations(unread(SET_ONE)));
    expect(found.faceMm).toBeNull();
  });
});

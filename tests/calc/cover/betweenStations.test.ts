import { describe, expect, it } from 'vitest';
import { betweenStations } from '../../../src/calc/cover/betweenStations.ts';
import { measuredStations } from '../../../src/calc/cover/measuredStations.ts';
import { SET_ONE, unread } from './sets.ts';

const stations = measuredStations(SET_ONE);
const at = (angleDeg: number, radiusMm = 110) => betweenStations({ angleDeg, radiusMm }, stations);

describe('wall and height between stations (arithmetic)', () => {
  it('is halfway between 4.92 and 4.90', () => {
    expect(at(22.5).wallMm).toBeCloseTo(4.91, 12);
    expect(at(22.5).faceMm).toBeCloseTo(0.055, 12);
  });
  it('goes on past 360°', () => {
    // From 315° (4.90) a third of the way to 0° (4.92).
    expect(at(330).wallMm).toBeCloseTo(4.9 + 0.02 / 3, 12);
    expect(at(-30).wallMm).toBeCloseTo(4.9 + 0.02 / 3, 12);
  });
  it('is the station itself at a station', () => expect(at(180)).toEqual({ wallMm: 4.8, faceMm: -0.05 }));
  it('takes the nearest ring, and of two equally near the inner', () => {
    expect(at(45, 127).wallMm).toBeCloseTo((4.93 + 4.86) / 2, 12);
    expect(at(45, 119).wallMm).toBe(4.9);
    expect(at(45, 119.1).wallMm).toBeCloseTo((4.93 + 4.86) / 2, 12);
  });
  it('has that station’s values on a ring of one', () => {
    expect(betweenStations({ angleDeg: 77, radiusMm: 110 }, stations.slice(3, 4)).wallMm).toBe(4.83);
  });
  it('has no height where none was read', () => {
    const found = betweenStations({ angleDeg: 10, radiusMm: 110 }, measuredStations(unread(SET_ONE)));
    expect(found.faceMm).toBeNull();
  });
});

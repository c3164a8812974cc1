import { describe, expect, it } from 'vitest';
import { coverage } from '../../../src/calc/cover/coverage.ts';
import { placeName } from '../../../src/calc/cover/placeNames.ts';
import { SET_ONE } from './sets.ts';

const without = (...left: number[]) => SET_ONE.filter((_, i) => !left.includes(i));

describe('coverage (common practice, no source)', () => {
  it('coverage is complete with eight on one ring and any on a second', () => {
    expect(coverage(without(9, 10, 11), 4)).toEqual({
      ringRadiusMm: 110,
      ringStation: 0,
      missingPlaces: [],
      secondRing: true,
    });
  });
  it('coverage names the places that are missing', () => {
    expect(coverage(without(4, 7), 4).missingPlaces).toEqual(['behind stud 3', 'between studs 4 and 1']);
  });
  it('coverage does not add up places from two rings', () => {
    // Behind stud 3 is measured on the second ring only.
    expect(coverage(without(4), 4).missingPlaces).toEqual(['behind stud 3']);
  });
  it('coverage asks for a second ring where all stations are on one', () =>
    expect(coverage(SET_ONE.slice(0, 8), 4).secondRing).toBe(false));
  it('coverage takes a station within 360°/(8N), 11.25° for four studs, and none beyond', () => {
    const moved = (by: number) => SET_ONE.map((s, i) => (i === 2 ? { ...s, angleDeg: 90 + by } : s));
    expect(coverage(moved(11.25), 4).missingPlaces).toEqual([]);
    expect(coverage(moved(-11.25), 4).missingPlaces).toEqual([]);
    expect(coverage(moved(11.26), 4).missingPlaces).toEqual(['behind stud 2']);
  });
  it('coverage reports on the ring that comes nearest to complete', () => {
    const outer = SET_ONE.slice(0, 8).map((s) => ({ ...s, radiusMm: 128 }));
    const inner = SET_ONE.slice(8).map((s) => ({ ...s, radiusMm: 110 }));
    expect(coverage([...inner, ...outer], 4)).toMatchObject({ ringRadiusMm: 128, missingPlaces: [] });
  });
});

describe('the name of a place', () => {
  it.each([
    [0, 4, 'behind stud 1'],
    [359, 4, 'behind stud 1'],
    [45, 4, 'between studs 1 and 2'],
    [315, 4, 'between studs 4 and 1'],
    [240, 3, 'behind stud 3'],
    [-60, 3, 'between studs 3 and 1'],
    [22, 4, 'at 22°, nearest stud 1'],
    [70, 4, 'at 70°, nearest stud 2'],
  ])('the place at %s° with %s studs is named %s', (angle, studs, name) =>
    expect(placeName(angle, studs)).toBe(name),
  );
});

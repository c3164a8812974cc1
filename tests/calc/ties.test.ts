import { describe, expect, it } from 'vitest';
import { DIALLING_WORTH_MM } from '../../shared/words/cover.ts';
import { Refusal } from '../../shared/words/refusal.ts';
import { checkCover } from '../../src/calc/cover/checkCover.ts';
import { coverage } from '../../src/calc/cover/coverage.ts';
import { coverNumbers } from '../../src/calc/cover/coverNumbers.ts';
import { dialledInFinding } from '../../src/calc/judge/dialledInFinding.ts';
import { checkStud } from '../../src/calc/stud/checkStud.ts';
import { CRITERIA, coverInput, SET_ONE, SET_TWO } from './cover/sets.ts';
import { EXAMPLE, withNut } from './stud/example.ts';

/** What happens where two are alike, or a figure is exactly its limit. */

describe('two rings of stations as good as each other', () => {
  const ring = (radiusMm: number, angles: readonly number[]) =>
    angles.map((angleDeg) => ({ angleDeg, radiusMm }));
  const ROUND = [0, 45, 90, 135, 180, 225, 270];

  it('the inner one is reported on', () => {
    const both = [...ring(128, ROUND), ...ring(110, ROUND)];
    expect(coverage(both, 4)).toMatchObject({ ringRadiusMm: 110, ringStation: 7 });
    expect(coverage(both.toReversed(), 4)).toMatchObject({ ringRadiusMm: 110, ringStation: 0 });
  });
  it('the one with more stations is, where as many places are missing', () => {
    const more = [...ring(110, ROUND), ...ring(128, [...ROUND, 22.5])];
    expect(coverage(more, 4)).toMatchObject({ ringRadiusMm: 128, missingPlaces: ['between studs 4 and 1'] });
  });
  it('the one that misses fewer places is, however few stations it has', () => {
    const [fewer, crowded] = [ring(128, ROUND), ring(110, [0, 1, 2, 3, 4, 5, 45, 90])];
    expect(coverage([...crowded, ...fewer], 4)).toMatchObject({ ringRadiusMm: 128 });
  });
});

describe('a gain of exactly what is worth indicating in for', () => {
  const numbers = coverNumbers(
    coverInput({ stations: SET_TWO, criteria: { ...CRITERIA, faceRunoutLimitMm: 0.1 } }),
  );
  const said = (wallGainedMm: number) =>
    dialledInFinding({ ...numbers, dialledIn: { ...numbers.dialledIn!, wallGainedMm } }, 'mm').sentence;

  it('is worth it, and a hair less is not (common practice, no source)', () => {
    expect(DIALLING_WORTH_MM).toBe(0.01);
    expect(said(0.01)).toContain('The shims save 0.010 mm of wall.');
    expect(said(0.0099)).toBe('Indicating it in with shims would save only 0.010 mm of wall: not worth it.');
    expect(said(0)).toBe('Indicating it in with shims would save no wall: not worth it.');
  });
});

describe('a nut without height', () => {
  const faultsOf = (nut: Parameters<typeof withNut>[0]) => {
    try {
      checkStud(withNut(nut));
    } catch (error) {
      if (error instanceof Refusal) return error.faults.map(({ path }) => path);
      throw error;
    }
    return [];
  };

  it('is one fault; what is measured against the height is not blamed for it', () => {
    expect(EXAMPLE.nut!.toleranceMm).toBeGreaterThan(0);
    expect(faultsOf({ heightMm: 0 })).toEqual(['nut.heightMm']);
    expect(faultsOf({ heightMm: -1 })).toEqual(['nut.heightMm']);
  });
  it('with a second fault has two sentences', () => {
    expect(faultsOf({ heightMm: 0, toleranceMm: -0.1 })).toEqual(['nut.heightMm', 'nut.toleranceMm']);
    expect(faultsOf({ heightMm: 0, countersinkMm: -0.1 })).toEqual(['nut.heightMm', 'nut.countersinkMm']);
  });
  it('a tolerance as large as the height, and a countersink of half of it, leave nothing', () => {
    expect(faultsOf({ heightMm: 8, toleranceMm: 8 })).toEqual(['nut.toleranceMm']);
    expect(faultsOf({ heightMm: 8, toleranceMm: 7.99 })).toEqual([]);
    expect(faultsOf({ heightMm: 8, countersinkMm: 4 })).toEqual(['nut.countersinkMm']);
    expect(faultsOf({ heightMm: 8, countersinkMm: 3.99 })).toEqual([]);
  });
});

describe('a wall of exactly the minimum', () => {
  it('is not too thin', () => {
    const input = coverInput({ stations: SET_ONE, criteria: { ...CRITERIA, minimumWallMm: null } });
    const { afterMm } = checkCover(input).leastWall;
    const at = (makerMinimumWallMm: number) =>
      checkCover({ ...input, makerMinimumWallMm, makerMinimumWallSource: 'drawing' }).findings.find(
        ({ id }) => id === 'wall-left',
      )?.status;
    expect(at(afterMm)).not.toBe('fail');
    expect(at(afterMm + 0.001)).toBe('fail');
  });
});

import { describe, expect, it } from 'vitest';
import { studTolerances } from '../../../../src/calc/stud/match/studTolerances.ts';
import { EXAMPLE, layer, withNut, withStack, withStud } from '../example.ts';

const P = 25.4 / 24;

describe('sizes drawn from their tolerances', () => {
  it('two even spreads add to a triangle, with 7/8 of the draws within half its height', () => {
    // start ± 0.1 and S ± 0.1, 0.1 to spare: the triangle of ± 0.2 exceeds 0.1 with probability ½ · (½)² = 1/8.
    const input = withStud(
      { threadStartMm: 3.2 - P - 0.1, lengthToleranceMm: 0.1 },
      withStack({ layers: [layer(3.2, { toleranceMm: 0.1 })] }),
    );
    expect(Math.abs(studTolerances(input).clamps - 7 / 8)).toBeLessThan(0.004);
  });
  it('one even spread with half of it to spare passes in three quarters of the draws', () => {
    const input = withStud(
      { threadEndMm: 11.5 + P + 0.1, lengthToleranceMm: 0 },
      withNut({ toleranceMm: 0.2 }, withStack({ layers: [layer(3.2, { toleranceMm: 0 })] })),
    );
    expect(Math.abs(studTolerances(input).protrudes! - 0.75)).toBeLessThan(0.005);
  });
  it('the draws are the same every time, and others with another seed', () => {
    const input = withStud({ threadStartMm: 3.2 - P - 0.1 });
    expect(studTolerances(input)).toEqual(studTolerances(input));
    expect(studTolerances(input, { seed: 2 }).clamps).not.toBe(studTolerances(input, { seed: 1 }).clamps);
  });
  it('a check that passes at its worst passes in every draw, and one that fails at its best in none', () => {
    expect(studTolerances(EXAMPLE)).toMatchObject({
      clamps: 1,
      fullyEngaged: 1,
      protrudes: 1,
      startsByHand: 1,
      allWell: 1,
    });
    expect(studTolerances(withStud({ threadEndMm: 9 }))).toMatchObject({
      fullyEngaged: 0,
      protrudes: 0,
      allWell: 0,
    });
    expect(studTolerances(withNut({ prevailing: true })).startsByHand).toBe(0);
  });
  it('a tip with ± 0.2 and 0.1 to spare strikes the engine side in one draw of four', () => {
    const input = withStud({ projectionMm: 23, lengthToleranceMm: 0.2 }, withStack({ tipRoomMm: 23.1 }));
    const found = studTolerances(input);
    expect(Math.abs(found.tipClears! - 0.75)).toBeLessThan(0.005);
    expect([found.noneFails, found.allWell]).toEqual([found.tipClears, found.tipClears]);
  });
  it('the draws leave out checks that cannot be made', () => {
    const found = studTolerances({ ...EXAMPLE, nut: null, pullForwardMm: null });
    expect([found.fullyEngaged, found.protrudes, found.startsByHand, found.clamps]).toEqual([
      null,
      null,
      null,
      1,
    ]);
    expect([found.tipShows, found.entersHole, found.tipClears]).toEqual([null, null, 1]);
    expect(studTolerances(withStack({ tipRoomMm: null }))).toMatchObject({ tipClears: null, noneFails: 1 });
  });
});

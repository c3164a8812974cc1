import { describe, expect, it } from 'vitest';
import { checkCover } from '../../../src/calc/cover/checkCover.ts';
import { CRITERIA, coverInput, NO_GAUGE, SET_ONE, stationsOf, unread } from './sets.ts';

/** Walls 5.00 behind stud 1 falling to 4.80 opposite, a 0.10 mark there; eight on one ring and one on a second. */
const WALLS = [5, 4.97, 4.9, 4.83, 4.8, 4.83, 4.9, 4.97];
const LEANING = unread(
  stationsOf([
    ...WALLS.map((wall, i) => [i * 45, 110, wall, 0, i === 4 ? 0.1 : 0] as const),
    [0, 128, 4.9, 0, 0] as const,
  ]),
);
const check = (minimumWallMm: number | null, over: Parameters<typeof coverInput>[0] = {}) =>
  checkCover(coverInput({ stations: LEANING, criteria: { ...CRITERIA, minimumWallMm }, ...over }));
const bounds = (found: ReturnType<typeof check>) => found.findings.find(({ id }) => id === 'bounds')!;

describe('without indicator readings (arithmetic)', () => {
  const found = check(4.3);
  // Mean wall 4.9. Pad side flat: z = t − 4.9 from 0.1 to −0.1; c = −0.1 − 0.1 − 0.05; wall left 4.9 − 0.25 all over.
  // Face flat: c = −0.15; wall left t − 0.15, least 4.65.
  it('a face that was not indicated is worked out both ways: pad side flat and face flat', () => {
    expect(found.bounds!.padSideFlat.dialledMm).toBeCloseTo(0.35, 9);
    expect(found.bounds!.padSideFlat.leastWallMm).toBeCloseTo(4.65, 9);
    expect(found.bounds!.faceFlat.dialledMm).toBeCloseTo(0.15, 9);
    expect(found.bounds!.faceFlat.leastWallMm).toBeCloseTo(4.65, 9);
  });
  it('a face that was not indicated takes the larger cut, and each station the lower wall of both ways', () => {
    expect(found.cut.dialledMm).toBeCloseTo(0.35, 9);
    expect(found.stations[0]!.wallAfterMm).toBeCloseTo(4.65, 9); // not 4.85, the face-flat wall
    expect(found.stations[4]!.wallAfterMm).toBeCloseTo(4.65, 9);
    expect(found.leastWall.afterMm).toBeCloseTo(4.65, 9);
  });
  it('a face that was not indicated has no runout, flatness or dish', () => {
    expect(found.face).toEqual({
      runoutMm: null,
      indicatorReadingMm: null,
      flatnessLeastSquaresMm: null,
      flatnessMinimumZoneMm: null,
      dishMm: null,
    });
  });
  it('a face that was not indicated is faced where the larger cut suits both ways, and the answer says what would settle it', () => {
    expect(found.verdict).toBe('face');
    expect(bounds(found)).toMatchObject({ status: 'not-checked', value: expect.closeTo(4.45, 9) });
    expect(bounds(found).sentence).toContain('indicator readings may allow a smaller one');
  });
  it('a cover is measured again where the larger cut would leave a flat face too thin, though both ways pass', () => {
    // Both leave 4.65; but 4.80 − 0.35 = 4.45.
    const risky = check(4.5);
    expect(risky.stations.every(({ marginMm }) => marginMm! > 0)).toBe(true);
    expect(risky.verdict).toBe('measure-again');
    expect(risky.because).toContain('The larger cut leaves 4.450 mm if the face runs true');
    expect(check(4.45).verdict).toBe('face'); // exactly the minimum
  });
  it('a planned cut never passes where no single cut is safe both ways', () => {
    expect(check(4.5, { plannedCutMm: 0.3 }).verdict).toBe('measure-again');
  });
  it('a cover is measured again where the wall the larger cut leaves is not sure enough', () => {
    const gauge = { ...NO_GAUGE, standardUncertaintyMm: 0.02 };
    expect(check(4.44, { gauge }).verdict).toBe('measure-again');
    expect(check(4.3, { gauge }).verdict).toBe('face');
  });
  it('a planned cut that suits both ways passes', () => {
    expect(check(4.3, { plannedCutMm: 0.3 }).cut.cleansUp).toBe(false);
    const deep = check(4.3, { plannedCutMm: 0.6 });
    expect(deep.leastWall.afterMm).toBeCloseTo(4.2, 9); // 4.80 − 0.60, the face flat
    expect(deep.verdict).toBe('plan-again');
  });
});

describe('one of two bounds, or both, below the minimum (arithmetic)', () => {
  // A mark behind stud 1, where the wall is thick: pad side flat 4.9 − 0.25 + 0.2 = … the plane stops at 0.1 − 0.1 − 0.05
  // or at −0.1 − 0.05, so wall left 4.75; face flat 4.80 − 0.15 = 4.65.
  const stations = LEANING.map((s, i) => ({ ...s, markDepthMm: i === 0 ? 0.1 : 0 }));
  it('a cover below the minimum one way only is measured again', () => {
    const one = check(4.7, { stations });
    expect(one.bounds!.padSideFlat.leastWallMm).toBeCloseTo(4.75, 9);
    expect(one.bounds!.faceFlat.leastWallMm).toBeCloseTo(4.65, 9);
    expect(one.verdict).toBe('measure-again');
    expect(one.because).toContain('Only one of the two');
  });
  it('a cover below the minimum both ways is replaced', () => {
    expect(check(4.76, { stations }).verdict).toBe('replace');
    expect(check(4.75, { stations }).verdict).toBe('measure-again');
  });
  it('a face that was not indicated is not judged without a minimum wall', () => {
    const advice = check(null);
    expect(advice.verdict).toBe('advice-only');
    expect(bounds(advice).status).toBe('not-checked');
  });
});

it('the indicator’s uncertainty is left out where no indicator was used', () => {
  const gauge = { ...NO_GAUGE, standardUncertaintyMm: 0.003, faceStandardUncertaintyMm: 0.004 };
  const read = checkCover(coverInput({ gauge }));
  const notRead = checkCover(coverInput({ gauge, stations: unread(SET_ONE) }));
  expect(read.leastWall.standardUncertaintyMm).toBeCloseTo(0.005, 12);
  expect(notRead.leastWall.standardUncertaintyMm).toBeCloseTo(0.003, 12);
});

import { expect, it } from 'vitest';
import { readingsToCheck } from '../../shared/measuring/toCheck.ts';

const EXPECTED = { nominalWallMm: 5, repeatabilityMm: null, resolutionMm: null, cut: null };
const MM = { unit: 'mm', sign: 'point' } as const;

/** Invented: heights round a row that tilts by 0.06, the first one slipped where it is said. */
function row(first: number, confirmed = false) {
  return [0, 45, 90, 135, 180, 225, 270, 315].map((angleDeg, i) => {
    const valueMm = i === 0 ? first : Number((0.06 * Math.cos((angleDeg * Math.PI) / 180)).toFixed(3));
    return {
      kind: 'face' as const,
      angleDeg,
      radiusMm: 110,
      valueMm,
      shown: String(valueMm),
      doubtful: false,
      confirmed: i === 0 && confirmed,
    };
  });
}

it('a slip in the first indicator reading, of which nothing could be known then, is found by the rest', () => {
  const found = readingsToCheck(row(0.6), EXPECTED, MM);
  expect(found.map(({ reading, doubt }) => [reading.angleDeg, reading.valueMm, doubt?.meantMm])).toEqual([
    [0, 0.6, 0.06],
  ]);
});

it('a row that only tilts has nothing to check, nor has what was confirmed', () => {
  expect(readingsToCheck(row(0.06), EXPECTED, MM)).toEqual([]);
  expect(readingsToCheck(row(0.6, true), EXPECTED, MM)).toEqual([]);
});

it('what was kept unconfirmed is to be checked, whatever stands beside it', () => {
  const [first, ...rest] = row(0.06);
  const found = readingsToCheck([{ ...first!, doubtful: true }, ...rest], EXPECTED, MM);
  expect(found.map(({ reading, doubt }) => [reading.angleDeg, doubt])).toEqual([[0, null]]);
});

import { describe, expect, it } from 'vitest';
import { METRIC_PITCHES, UNIFIED_SIZES } from '../../shared/quantity/threadTables.ts';

/**
 * The tables of standard threads, whole, against a second list that was put together otherwise: by series and pitch, as
 * the standard's own text goes, not by size as the program's table does.
 *
 * Source: Machinery's Handbook, 29th ed., p. 1816, "Unified Screw Threads: UNC, UNF and UNEF" (seen in a stored copy of
 * its rows #0 to 1 in), and the limits of its standard series (seen: 5/8 in has 12, 16, 20, 28 and 32 UN besides its
 * named ones, 11/16 in 12, 16 and 20 UN and 24 UNEF). Sizes above 1 in and the other constant pitches: ASME B1.1-2003,
 * table 1, from memory. A constant pitch that falls together with a named series bears that name (note to table 1).
 */
const NUMBERED = [60, 73, 86, 99, 112, 125, 138, 164, 190, 216].map((thousandths) => thousandths / 1000);
const FRACTIONS = [
  ...[4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24].map(
    (sixteenths) => sixteenths / 16,
  ),
];
/** Threads per inch of a series against sizes, in the order of the sizes; 0 where the series leaves a size out. */
const COARSE = {
  numbered: [0, 64, 56, 48, 40, 40, 32, 32, 24, 24],
  fractions: '20 18 16 14 13 12 11 - 10 - 9 - 8 - 7 - 7 - 6 - 6',
};
const FINE = {
  numbered: [80, 72, 64, 56, 48, 44, 40, 36, 32, 28],
  fractions: '28 24 24 20 20 18 18 - 16 - 14 - 12 - 12 - 12 - 12 - 12',
};
const EXTRA_FINE = {
  numbered: [0, 0, 0, 0, 0, 0, 0, 0, 0, 32],
  fractions: '32 32 32 28 28 24 24 24 20 20 20 20 20 18 18 18 18 18 18 18 18',
};
/** Each constant pitch with the sizes it is standard for, in sixteenths of an inch. */
const CONSTANT: readonly (readonly [tpi: number, sixteenths: readonly number[]])[] = [
  [6, [22, 23, 24]],
  [8, [16, 17, 18, 19, 20, 21, 22, 23, 24]],
  [12, [9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24]],
  [16, [6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24]],
  [20, [4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24]],
  [28, [4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24]],
  [32, [4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16]],
];

describe('the table of Unified threads', () => {
  const sizes = [...NUMBERED, ...FRACTIONS];
  const seriesOf = ({ numbered, fractions }: typeof COARSE) =>
    [...numbered, ...fractions.split(' ').map((tpi) => (tpi === '-' ? 0 : Number(tpi)))].map(
      (tpi) => tpi || null,
    );

  it('has every size of the standard up to 1-1/2 in, and writes it as a shop does', () => {
    expect(UNIFIED_SIZES.map(({ inch }) => inch)).toEqual(sizes);
    for (const { written, inch } of UNIFIED_SIZES) {
      const [, number] = /^#(\d+)$/.exec(written) ?? [];
      const [, whole = '0', top = '0', bottom = '1'] =
        /^(?:(\d+)(?:-|$))?(?:(\d+)\/(\d+))?$/.exec(written) ?? [];
      // A numbered size is 0.060 in and 0.013 in more for each number.
      const wanted =
        number === undefined ? Number(whole) + Number(top) / Number(bottom) : 0.06 + 0.013 * Number(number);
      expect(inch, written).toBeCloseTo(wanted, 12);
      expect(written).not.toMatch(/[02468]\/(?:[02468]|16|32)$/);
    }
  });

  it.each([
    ['UNC', COARSE],
    ['UNF', FINE],
    ['UNEF', EXTRA_FINE],
  ] as const)('has for every size the threads per inch of %s', (series, wanted) => {
    expect(UNIFIED_SIZES.map((size) => size[series])).toEqual(seriesOf(wanted));
  });

  it('has for every size the constant pitches that bear no other name', () => {
    const named = [COARSE, FINE, EXTRA_FINE].map(seriesOf);
    for (const [index, { written, inch, UN }] of UNIFIED_SIZES.entries()) {
      const wanted = CONSTANT.filter(([, sixteenths]) => sixteenths.includes(16 * inch))
        .map(([tpi]) => tpi)
        .filter((tpi) => !named.some((series) => series[index] === tpi));
      expect(UN, written).toEqual(wanted);
    }
  });
});

describe('the table of metric threads', () => {
  // ISO 261:1998, table 2: coarse pitches, and the fine ones of each, M3 to M30 without 15, 17, 25, 26, 28. From memory;
  // put together by pitch. ISO 262 keeps of them: M8 × 1, M10 × 1.25 and 1, M12 × 1.5 and 1.25, M14 × 1.5, M16 × 1.5 …
  const COARSE_MM: readonly (readonly [pitch: number, diameters: readonly number[]])[] = [
    [0.5, [3]],
    [0.6, [3.5]],
    [0.7, [4]],
    [0.75, [4.5]],
    [0.8, [5]],
    [1, [6, 7]],
    [1.25, [8, 9]],
    [1.5, [10, 11]],
    [1.75, [12]],
    [2, [14, 16]],
    [2.5, [18, 20, 22]],
    [3, [24, 27]],
    [3.5, [30]],
  ];
  const FINE_MM: readonly (readonly [pitch: number, diameters: readonly number[]])[] = [
    [3, [30]],
    [2, [18, 20, 22, 24, 27, 30]],
    [1.5, [12, 14, 16, 18, 20, 22, 24, 27, 30]],
    [1.25, [10, 12, 14]],
    [1, [8, 9, 10, 11, 12, 14, 16, 18, 20, 22, 24, 27, 30]],
    [0.75, [6, 7, 8, 9, 10, 11]],
    [0.5, [4, 4.5, 5]],
    [0.35, [3, 3.5]],
  ];

  it('has the coarse pitch first and then every fine one, the larger first', () => {
    const diameters = COARSE_MM.flatMap(([, those]) => those);
    expect([...METRIC_PITCHES.keys()]).toEqual(diameters);
    for (const [diameter, pitches] of METRIC_PITCHES) {
      const [coarse] = COARSE_MM.find(([, those]) => those.includes(diameter))!;
      const fine = FINE_MM.filter(([, those]) => those.includes(diameter)).map(([pitch]) => pitch);
      expect(pitches, `M${diameter}`).toEqual([coarse, ...fine]);
    }
  });
});

import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { marksRound, meanRound } from '../../../../src/calc/cover/marks/marksRound.ts';

const round = (count: number, depth: (deg: number) => number, from = 0) =>
  Array.from({ length: count }, (_, i) => {
    const angleDeg = from + (360 * i) / count;
    return { angleDeg, depthMm: depth(angleDeg) };
  });
const cos = (deg: number) => Math.cos((deg * Math.PI) / 180);
const sin = (deg: number) => Math.sin((deg * Math.PI) / 180);

describe('how heat marks lie round a row', () => {
  it('0.2 mm behind four studs and none between is 0.1 mm on average and 0.1 mm more behind the studs', () => {
    const found = marksRound(
      round(8, (deg) => (deg % 90 === 0 ? 0.2 : 0)),
      4,
    )!;
    expect(found.meanMm).toBeCloseTo(0.1, 12);
    expect(found.behindStudsMm).toBeCloseTo(0.1, 12);
    expect(Math.hypot(...found.towardMm)).toBeCloseTo(0, 12);
  });

  it('depths of the model’s own kind give its terms back, for any number of studs, whichever way the row is spaced', () => {
    const term = fc.double({ min: -0.2, max: 0.2, noNaN: true });
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 12 }),
        fc.tuple(term, term, term, term),
        fc.array(fc.double({ min: -4, max: 4, noNaN: true }), { minLength: 24, maxLength: 24 }),
        (studs, [d0, a, b, c], off) => {
          const places = Array.from({ length: 2 * studs }, (_, i) => {
            const angleDeg = (180 / studs) * i + off[i]!;
            return {
              angleDeg,
              depthMm: d0 + a * cos(angleDeg) + b * sin(angleDeg) + c * cos(studs * angleDeg),
            };
          });
          const found = marksRound(places, studs)!;
          expect(found.meanMm).toBeCloseTo(d0, 9);
          expect(found.towardMm[0]).toBeCloseTo(a, 9);
          expect(found.towardMm[1]).toBeCloseTo(b, 9);
          expect(found.behindStudsMm).toBeCloseTo(c, 9);
        },
      ),
    );
  });

  it('uneven rows of any depths agree with ml-matrix, a general library, on the weighed equations', () => {
    const places = [0, 40, 95, 130, 181, 222, 270, 290, 316, 350].map((angleDeg, i) => ({
      angleDeg,
      depthMm: [0.21, 0.02, 0.19, 0, 0.16, 0.05, 0.2, 0.1, 0, 0.18][i]!,
    }));
    const arcs = places.map(({ angleDeg }, i) => {
      const before = i === 0 ? 350 - 360 : places[i - 1]!.angleDeg;
      const after = i === 9 ? 360 : places[i + 1]!.angleDeg;
      expect(after).toBeGreaterThan(angleDeg);
      return Math.sqrt((after - before) / 2);
    });
    const terms = places.map(({ angleDeg }, i) =>
      [1, cos(angleDeg), sin(angleDeg), cos(4 * angleDeg)].map((term) => term * arcs[i]!),
    );
    const depths = places.map(({ depthMm }, i) => [depthMm * arcs[i]!]);
    const theirs = solve(new Matrix(terms), new Matrix(depths), true).to1DArray();
    const ours = marksRound(places, 4)!;
    for (const [i, own] of [ours.meanMm, ...ours.towardMm, ours.behindStudsMm].entries())
      expect(own).toBeCloseTo(theirs[i]!, 12);
  });

  it('places all midway between stud and gap tell nothing of the studs', () => {
    expect(
      marksRound(
        round(8, () => 0.1, 22.5),
        4,
      ),
    ).toBeNull();
  });
  it('places on one side only tell nothing', () => {
    expect(
      marksRound(
        round(8, () => 0.1).map((one) => ({ ...one, angleDeg: one.angleDeg / 20 })),
        4,
      ),
    ).toBeNull();
  });
});

describe('the mean of a row with few places', () => {
  it('weighs each place by its arc: two close by count as one', () => {
    const places = [
      { angleDeg: 0, depthMm: 0.2 },
      { angleDeg: 0, depthMm: 0.2 },
      { angleDeg: 180, depthMm: 0.1 },
    ];
    expect(meanRound(places)).toBeCloseTo(0.15, 12);
  });
  it('is the one depth where there is one place', () => {
    expect(meanRound([{ angleDeg: 77, depthMm: 0.13 }])).toBeCloseTo(0.13, 12);
  });
});

import { randomInt } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { studyOrder } from '../../../src/shop/gauging/studyOrder.ts';

const plan = { covers: 4, stations: 2, people: ['AA', 'BB', 'CC'], rounds: 3 };
const key = ({ station, person, round }: { station: number; person: number; round: number }) =>
  `${round}/${person}/${station}`;

describe('the order of a study', () => {
  it('asks each person for each station once a round, round by round', () => {
    const order = studyOrder(plan, (below) => randomInt(below));
    expect(new Set(order.map(key)).size).toBe(4 * 2 * 3 * 3);
    expect(order.map(({ round }) => round)).toEqual([...order.map(({ round }) => round)].sort());
  });

  it('never asks one person for the same station twice in a row', () => {
    // 2 people and 2 stations: without the rule about every eighth of these orders would.
    const small = { covers: 2, stations: 1, people: ['AA', 'BB'], rounds: 2 };
    for (let i = 0; i < 200; i++) {
      const order = studyOrder(small, (below) => randomInt(below));
      for (const [i, turn] of order.entries()) {
        const before = order[i - 1];
        expect(before?.person === turn.person && before.station === turn.station).toBe(false);
      }
    }
  });

  it('is another each time, and every cover may be first', () => {
    const firsts = new Set(
      Array.from({ length: 200 }, () => studyOrder(plan, (below) => randomInt(below))[0]!.station),
    );
    expect(firsts.size).toBeGreaterThan(5);
  });
});

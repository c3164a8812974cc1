import { describe, expect, it } from 'vitest';
import { rings } from '../../../src/calc/cover/rings.ts';

const of = (...radii: number[]) =>
  rings(radii.map((radiusMm) => ({ radiusMm }))).map(({ stations }) => stations);

describe('rings: radii within 0.5 mm (common practice, no source)', () => {
  it('stations are sorted into rings, the innermost first', () => {
    expect(of(128, 110, 110.4)).toEqual([[1, 2], [0]]);
  });
  it('a ring takes in a radius 0.5 mm away, and none farther', () => {
    expect(of(110, 110.5)).toEqual([[0, 1]]);
    expect(of(110, 110.51)).toEqual([[0], [1]]);
  });
  it('a ring does not grow by small steps', () => expect(of(110, 110.4, 110.8)).toEqual([[0, 1], [2]]));
});

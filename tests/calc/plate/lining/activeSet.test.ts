import { describe, expect, it } from 'vitest';
import { activeSet } from '../../../../src/calc/plate/lining/activeSet.ts';

describe('springs that only push', () => {
  /** A tilted bar on two springs of 1 N/mm, one 3 mm out of reach, pressed with a force (by hand). */
  const pressed = (forceN: number) =>
    activeSet({
      count: 2,
      squeezedBy: ([near, far]) => {
        const d = (forceN + 3 * far!) / (near! + far!);
        return Float64Array.of(d, d - 3);
      },
    });
  it('a force of 2 N does not reach the far spring', () => {
    expect([...pressed(2).active]).toEqual([1, 0]);
  });
  it('a force of 5 N reaches the far spring', () => {
    expect([...pressed(5).active]).toEqual([1, 1]);
  });
  it('springs that do not settle are refused with a sentence', () => {
    let flip = 1;
    const restless = () => {
      flip = -flip;
      return Float64Array.of(flip);
    };
    expect(() => activeSet({ count: 1, squeezedBy: restless })).toThrow(/did not settle in 100 rounds/);
  });
});

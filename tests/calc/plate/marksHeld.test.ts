import { describe, expect, it } from 'vitest';
import { bendCover } from '../../../src/calc/plate/bendCover.ts';
import { marksHeld } from '../../../src/calc/plate/marksHeld.ts';
import { COVER } from './example.ts';

const answers = { rigid: bendCover(COVER), conforming: bendCover({ ...COVER, piston: 'conforming' }) };
const held = (marks: readonly (readonly [angle: number, radius: number, depth: number])[]) =>
  marksHeld({
    marks: marks.map(([angleDeg, radiusMm, depthMm]) => ({ angleDeg, radiusMm, depthMm })),
    studCount: 4,
    answers,
  });

describe('whether the marks sit where the model says', () => {
  it('the model agrees with marks behind the four studs (common practice, no source), and turned by any number of studs', () => {
    const behind = held([
      [0, 120, 0.2],
      [90, 120, 0.2],
      [-90, 120, 0.2],
    ]);
    // A rigid piston presses its outer edge first, so there the middle of the track bears less than the mean.
    expect(behind).toMatchObject({ count: 3, agree: 'one', onPressed: { rigid: 0, conforming: 1 } });
    expect(behind!.pressedArea.conforming).toBeGreaterThan(0.2);
    expect(behind!.pressedArea.conforming).toBeLessThan(0.6);
  });

  it('the model agrees under both bounds of the piston with marks behind the studs and near the outer edge', () => {
    const outer = held([
      [0, 128, 0.2],
      [90, 128, 0.2],
      [180, 128, 0.2],
    ]);
    expect(outer).toMatchObject({ agree: 'yes', onPressed: { rigid: 1, conforming: 1 } });
  });

  it('the model does not agree with marks midway between the studs on the track’s inner edge', () => {
    const between = held([
      [45, 108, 0.2],
      [135, 108, 0.2],
      [225, 108, 0.2],
    ]);
    expect(between).toMatchObject({ agree: 'no', onPressed: { rigid: 0, conforming: 0 } });
  });

  it('marks are weighed by depth: deep marks behind studs outweigh shallow ones between', () => {
    const mixed = held([
      [0, 120, 0.3],
      [90, 120, 0.3],
      [45, 108, 0.05],
      [135, 108, 0.05],
    ]);
    expect(mixed!.onPressed.conforming).toBeCloseTo(0.6 / 0.7, 9);
  });

  it('the comparison says nothing of two marks, nor of marks without depth', () => {
    expect(
      held([
        [0, 120, 0.2],
        [90, 120, 0.2],
        [180, 120, 0],
      ]),
    ).toBeNull();
  });
});

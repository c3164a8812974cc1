import { describe, expect, it } from 'vitest';
import { placeLengths } from '../../views/drawings/dimension.tsx';
import { fitText, overlaps, pointToSegment, spread, textWidth } from '../../views/drawings/lettering.ts';
import { STACK_WIDTH } from '../../views/drawings/stackParts.tsx';
import { roundScale } from '../../views/drawings/ticks.ts';

describe('round scales', () => {
  it('start and end on a tick, hold both ends, and carry only the decimals they need', () => {
    const scale = roundScale(4.37, 4.98, 'mm', 5);
    expect(scale.leastMm).toBeLessThanOrEqual(4.37);
    expect(scale.mostMm).toBeGreaterThanOrEqual(4.98);
    const texts = scale.ticks.flatMap((tick) => tick.text ?? []);
    expect(texts).toEqual(['4.4', '4.6', '4.8', '5.0']);
    const inches = roundScale(4.37, 4.98, 'in', 5).ticks.flatMap((tick) => tick.text ?? []);
    expect(inches).toEqual(['0.170', '0.175', '0.180', '0.185', '0.190', '0.195']);
  });
});

describe('a row of lengths', () => {
  const length = (from: number, to: number, figure = '10.00') => ({
    from,
    to,
    figure,
    word: 'stack',
    partFrom: 0,
    partTo: 0,
  });

  it('puts the figure between the arrows where it fits, outside where it does not', () => {
    expect(placeLengths([length(100, 200)], 0, STACK_WIDTH)[0]).toMatchObject({
      lettering: 'between',
      arrows: 'inside',
    });
    expect(placeLengths([length(100, 110)], 0, STACK_WIDTH)[0]).toMatchObject({
      lettering: 'left',
      arrows: 'outside',
    });
    expect(placeLengths([length(4, 14)], 0, STACK_WIDTH)[0]).toMatchObject({ lettering: 'right' });
  });

  it('keeps a chain in one row, and takes another row when figures would meet', () => {
    const chain = placeLengths([length(50, 150), length(150, 250)], 0, STACK_WIDTH);
    expect(chain.map((one) => one.row)).toEqual([0, 0]);
    const close = placeLengths([length(100, 160), length(160, 166), length(166, 260)], 0, STACK_WIDTH);
    for (const [index, one] of close.entries()) {
      for (const other of close.slice(index + 1)) expect(overlaps(one.box, other.box)).toBe(false);
    }
    expect(Math.max(...close.map((one) => one.row))).toBe(1);
  });
});

describe('lettering', () => {
  it('is spread without changing its order or leaving its ends', () => {
    expect(spread([10, 11, 12], 5, 0, 100)).toEqual([10, 15, 20]);
    expect(spread([98, 97, 99], 5, 0, 100)).toEqual([95, 90, 100]);
    expect(spread([-20], 5, 0, 100)).toEqual([0]);
  });

  it('is kept off a line by the shortest way to it, whichever way the line runs', () => {
    const from = { x: 1, y: 2 };
    for (const [to, point, away] of [
      [{ x: 1, y: 12 }, { x: 4, y: 7 }, 3],
      [{ x: 11, y: 2 }, { x: 7, y: 6 }, 4],
      [{ x: 9, y: 8 }, { x: 2, y: 9 }, 5],
      [{ x: 11, y: 2 }, { x: 14, y: 6 }, 5],
      [{ x: 1, y: 12 }, { x: 1, y: -3 }, 5],
      [from, { x: 4, y: 6 }, 5],
    ] as const)
      expect(pointToSegment(point, from, to)).toBeCloseTo(away, 9);
  });

  it('is cut to its room with an ellipsis', () => {
    expect(fitText('plate', 13, 100)).toBe('plate');
    const cut = fitText('a casting with a long name', 13, 60);
    expect(cut).toMatch(/^a cas.*…$/);
    expect(textWidth(cut, 13)).toBeLessThanOrEqual(60);
  });
});

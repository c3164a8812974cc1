import { describe, expect, it } from 'vitest';
import { type Pasted, pastedReadings } from '../../../src/web/measuring/pastedReadings.ts';

const STATIONS = [0, 90, 180, 270].map((angleDeg) => ({ angleDeg, radiusMm: 110 }));
const POINT = { lengthUnit: 'mm', decimalSign: 'point' } as const;
const COMMA = { lengthUnit: 'mm', decimalSign: 'comma' } as const;

function read(text: string, pasted: Pasted = 'wall', writing: typeof POINT | typeof COMMA = POINT) {
  const { boxes, refused } = pastedReadings(text, STATIONS, { writing, pasted });
  return { boxes: Object.fromEntries(boxes), refused };
}

describe('readings pasted as', () => {
  it.each([
    [
      'a column',
      '4.92\n4.91\r\n4.90\n\n4.89\n',
      'wall',
      { 'w.0': '4.92', 'w.1': '4.91', 'w.2': '4.90', 'w.3': '4.89' },
    ],
    [
      'two columns of repeats',
      '4.92\t4.93\n4.91\t4.90',
      'wall',
      { 'w.0': '4.92; 4.93', 'w.1': '4.91; 4.90' },
    ],
    ['numbered lines', '2\t4.91\n4\t4.89\n2\t4.92', 'wall', { 'w.1': '4.91; 4.92', 'w.3': '4.89' }],
    [
      'a table without headings',
      '4.92\t0.05\t0.1\n4.91\t\t',
      'all',
      { 'w.0': '4.92', 'f.0': '0.05', 'd.0': '0.1', 'w.1': '4.91' },
    ],
    [
      'a CSV file with headings and units',
      'Station,"Wall (mm)",Runout (in),Heat mark\n3,4.90,0.002,0.12\n',
      'wall',
      { 'w.2': '4.90 mm', 'f.2': '0.002 in', 'd.2': '0.12' },
    ],
    [
      'the print of a machine',
      'Point 1    4.921 mm\nPoint 2    4.918 mm\n',
      'wall',
      { 'w.0': '4.921 mm', 'w.1': '4.918 mm' },
    ],
    [
      'places instead of numbers',
      'angle;radius;wall\n90;110;4.9\n360;110;4.8',
      'wall',
      { 'w.1': '4.9', 'w.0': '4.8' },
    ],
    ['fractions of an inch, in quotes', '"3/16""",0.187"\n', 'wall', { 'w.0': '3/16"; 0.187"' }],
  ] as const)('%s', (_what, text, pasted, boxes) => {
    expect(read(text, pasted)).toEqual({ boxes, refused: [] });
  });

  it('a column with a comma for decimals, in a shop that writes so', () => {
    expect(read('4,92\n4,91', 'wall', COMMA)).toEqual({
      boxes: { 'w.0': '4,92', 'w.1': '4,91' },
      refused: [],
    });
  });
});

it('what cannot be read is told with its line and column, and holds up nothing else', () => {
  const { boxes, refused } = read(
    'Station\tWall\tIndicator\n1\t4.9x\t0.02\nrim\t4.9\t\n9\t4.9\t\n2\t4,92\t0.1\n2\t4.9\t0.2',
  );
  expect(boxes).toEqual({ 'f.0': '0.02', 'f.1': '0.1', 'w.1': '4.9' });
  expect(refused.map(({ line, column }) => [line, column])).toEqual([
    [2, 2],
    [3, null],
    [4, null],
    [5, 2],
    [6, 3],
  ]);
  expect(refused.map(({ message }) => message)).toEqual([
    expect.stringContaining('"4.9x" is not a plain number'),
    '"rim" is no station number. Enter it as 1, 2, 3.',
    'There is no station 9. This job has 4 stations.',
    expect.stringContaining('Did you mean 4.92?'),
    'Indicator reading at station 2 is 0.1 from a line above already. Leave one of them out.',
  ]);
});

it('more lines than stations are refused, each by its number', () => {
  const { boxes, refused } = read('4.9\n4.9\n4.9\n4.9\n4.9\n4.9');
  expect(Object.keys(boxes)).toHaveLength(4);
  expect(refused.map(({ line, column }) => [line, column])).toEqual([
    [5, null],
    [6, null],
  ]);
});

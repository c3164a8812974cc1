import { expect, test } from 'vitest';
import { notTypedFor } from '../../shared/schemas/typedAs.ts';

test.each<[typed: string, valueMm: number]>([
  ['', 4.9],
  ['4.9', 4.9],
  ['4,90', 4.9],
  ['4.9 mm', 4.9],
  ['0.193', 4.9022],
  ['.1929 in', 4.89966],
  ['0.1929', 4.9],
  ['3/16', 4.7625],
  ['193 thou', 4.902],
  ['-0.02', -0.02],
])('"%s" may have been typed for %f mm', (typed, valueMm) => {
  expect(notTypedFor('the reading', typed, valueMm)).toBeNull();
});

test.each<[typed: string, valueMm: number]>([
  ['banana', 4.9],
  ['4.91', 4.9],
  ['0.194', 4.9022],
  ['4.9 in', 4.9],
  ['-4.9', 4.9],
  ['49', 4.9],
])('"%s" cannot have been typed for %f mm, and the sentence names both', (typed, valueMm) => {
  expect(notTypedFor('the reading', typed, valueMm)).toBe(
    `"${typed}" was typed, which does not read as ${valueMm} mm for the reading. Send what was typed, or leave it empty.`,
  );
});

test('a text without a value is refused', () => {
  expect(notTypedFor('the planned cut', '0.2', null)).toBe(
    '"0.2" was typed, but the planned cut has no value. Send both, or neither.',
  );
  expect(notTypedFor('the planned cut', '', null)).toBeNull();
});

/** The color from each temperature on, for clean carbon steel held there for minutes. */
const COLOURS: readonly (readonly [fromC: number, colour: string])[] = [
  [205, 'pale yellow'],
  [220, 'straw'],
  [240, 'brown yellow'],
  [260, 'purple'],
  [285, 'violet to blue'],
  [310, 'pale blue'],
  [330, 'gray blue'],
];

/**
 * The color clean steel takes at a temperature. A rough guide to what was seen: time at heat, alloy and oil change it.
 *
 * Valid: plain carbon steel, minutes at heat; a slip of a second colors less.   Source: temper colors of workshop
 * handbooks, rounded (from memory)   Example: 250 °C → brown yellow (tests/calc/heat/heatCover.test.ts)
 */
export function temperColour(temperatureC: number): string | null {
  return COLOURS.findLast(([fromC]) => temperatureC >= fromC)?.[1] ?? null;
}

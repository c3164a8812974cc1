/**
 * The mean of repeated readings of one wall.   t = Σ tₖ / n
 *
 * tₖ one reading [mm] · n how many.
 * Valid: at least one reading.   Source: JCGM 100:2008, 4.2.1
 * Example: JCGM 100 Table 1, twenty temperatures → 100.145 (tests/published/gum.test.ts)
 */
export function meanOfRepeats(readings: readonly number[]): number {
  // Deviations from the first reading keep 4.92, 4.92, 4.92 at exactly 4.92.
  const first = readings[0]!;
  let deviations = 0;
  for (const reading of readings) deviations += reading - first;
  return first + deviations / readings.length;
}

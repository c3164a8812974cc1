/**
 * Bending stiffness of a plate.   D = E·t³/(12·(1 − ν²))
 *
 * E Young's modulus [MPa] · t thickness [mm] · ν Poisson's ratio · D [N·mm].
 * Valid: thin, elastic, alike in all directions.   Source: Timoshenko & Woinowsky-Krieger, 2nd ed., eq. 3 (from memory)
 * Example: twice as thick, eight times as stiff (tests/calc/plate/springs.test.ts)
 */
export function flexuralRigidity({
  youngMPa,
  poisson,
  thicknessMm,
}: {
  readonly youngMPa: number;
  readonly poisson: number;
  readonly thicknessMm: number;
}): number {
  return (youngMPa * thicknessMm ** 3) / (12 * (1 - poisson ** 2));
}

import { flexuralRigidity } from './flexuralRigidity.ts';

/**
 * How firmly the side wall holds the rim against turning, as a long cylinder.   k = 2·β·D_s,  β⁴ = 3(1 − ν²)/(R·t_s)²
 *
 * R rim radius [mm] · t_s side wall [mm] · D_s its bending stiffness [N·mm] · k [N·mm/rad per mm of rim], which is N.
 * Valid: a wall longer than about π/β, its rim kept round.   Source: Timoshenko & Woinowsky-Krieger, 2nd ed., §114,
 * edge moment on a long cylinder with no edge displacement (from memory)
 * Example: R 150, t_s 4, E 206 000, ν 0.29 → β 0.05256/mm, k 126 100 N (tests/calc/plate/springs.test.ts)
 */
export function sideWallSpring({
  rimRadiusMm,
  sideWallMm,
  youngMPa,
  poisson,
}: {
  readonly rimRadiusMm: number;
  readonly sideWallMm: number;
  readonly youngMPa: number;
  readonly poisson: number;
}): { readonly betaPerMm: number; readonly springN: number } {
  const betaPerMm = (3 * (1 - poisson ** 2)) ** 0.25 / Math.sqrt(rimRadiusMm * sideWallMm);
  const springN = 2 * betaPerMm * flexuralRigidity({ youngMPa, poisson, thicknessMm: sideWallMm });
  return { betaPerMm, springN };
}

import { type PadPatch, padPatch } from './padPatch.ts';

/** How far the stiff part of a pad begins within its edge, in walls, where nobody says otherwise. */
const PAD_INSET_WALLS = 0.44;

/**
 * The part of a pad that is stiff: a round pad less δ all around, as the square of the same area. δ = 0.44·h,
 * d_s = d − 2δ
 *
 * d pad diameter · h wall [mm]. A wall under bending moment M per length ends in a thick pad, and its root gives way:
 * it turns by θ = k·M·(1 − ν²)/(E·h²), as if the wall were longer by δ: M·δ/D = θ, D = E·h³/(12(1 − ν²)), so δ = k·h/12.
 * The pad taken as an elastic half plane, k lies between two bounds that can be worked out by hand. A root that stays
 * straight (a rigid punch of width h that is tilted, M = π·E·h²·θ/(16(1 − ν²))) gives k = 16/π and δ = 0.424 h. Stress
 * in a straight line over the root, σ = 12·M·y/h³, turned by the work it does, gives k = 18/π and δ = 0.477 h.
 * O'Donnell’s k = 16.67/π lies between: δ = 0.442 h, kept to two digits. The load of the pad still lies on all of it.
 * Of several plain rules (each edge alone, the square inset instead of the round pad, the rim’s edge left out) this is
 * the one whose cut over new, pressure peak and waviness all come within what was wanted of a solid model. The rim cuts
 * the smaller square off as it does the whole one, so that no pad a hair wider bends otherwise.
 * Valid: a pad wider than two walls and thicker than the wall; its corner on the lining side, which a half plane does
 * not have, is left out. Source: W. J. O'Donnell, J. Appl. Mech. 27 (1960), p. 461 (from memory); both bounds from the
 * half plane’s own solution (first principles)
 * Example: Ø 24 and a wall of 5 mm: 2.2 mm, a square of 17.370 mm (tests/calc/plate/springs.test.ts); against the solid
 * (tests/calc/plate/solid.test.ts)
 */
export function stiffPad(cover: {
  readonly padDiameterMm: number;
  readonly studCircleDiameterMm: number;
  readonly rimDiameterMm: number;
  readonly wallMm: number;
  /** null: the rule above; 0: pads as drawn. */
  readonly padInsetWalls: number | null;
}): PadPatch {
  const insetMm = (cover.padInsetWalls ?? PAD_INSET_WALLS) * cover.wallMm;
  return padPatch({ ...cover, padDiameterMm: Math.max(0, cover.padDiameterMm - 2 * insetMm) });
}

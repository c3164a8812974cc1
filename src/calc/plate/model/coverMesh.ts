import type { StiffnessInput } from '../../../../shared/words/bending/stiffness.ts';
import { distinctBreaks, gradedLines, type PlateMesh } from '../elements/mesh.ts';
import { type PadPatch, padPatch } from './padPatch.ts';
import { stiffPad } from './stiffPad.ts';

/** Lines closer than this share of the rim radius become one: slivers of elements cost digits, a shift so small does not. */
export const CLOSEST = 3e-4;
/** Widths as shares of the rim radius: at a pad's edge over the radius and round it, at the rim, and at most. */
const AT_PAD = 0.03;
const ROUND_PAD = 0.024;
const AT_RIM = 0.012;
const WIDEST = 0.15;
/** How fast widths may grow away from these. */
const GROWTH_RADIUS = 0.45;
const GROWTH_ANGLE = 0.4;
/** An element is no wider than this share of its own radius, and the friction surface has at least so many over its width. */
const OF_RADIUS = 0.4;
const ON_TRACK = 7;

/**
 * Mesh lines of half a sector, 0 behind a stud to π/N midway between two: on every change of thickness and load, one
 * wall thickness outside a pad's edge and within its stiff part's, and closer the nearer the pad and the rim.
 *
 * `fineness` 2 halves every width.
 * Valid: sizes that make a cover.   Source: this program’s own model; widths by trial against finer meshes
 * Example: every change of thickness has its line (tests/calc/plate/elements/mesh.test.ts)
 */
export function coverMesh(
  input: StiffnessInput,
  fineness = 1,
): PlateMesh & { readonly pad: PadPatch; readonly stiff: PadPatch } {
  const rim = input.rimDiameterMm / 2;
  const boss = input.bossDiameterMm / 2;
  const pad = padPatch(input);
  const stiff = stiffPad(input);
  const closest = CLOSEST * rim;
  const outerOf = ({ clipped, outerMm }: PadPatch) => (clipped ? [] : [outerMm]);
  const edges = [stiff.innerMm, ...outerOf(stiff)];
  const { ring, wallMm } = input;
  const radii = distinctBreaks({
    must: [
      boss,
      rim,
      input.trackInnerDiameterMm / 2,
      input.trackOuterDiameterMm / 2,
      pad.innerMm,
      ...outerOf(pad),
      ...edges,
      ...(ring ? [ring.innerDiameterMm / 2, ring.outerDiameterMm / 2] : []),
    ],
    may: [
      pad.innerMm - wallMm,
      stiff.innerMm + wallMm,
      ...outerOf(stiff).map((edge) => edge - wallMm),
      ...outerOf(pad).map((edge) => edge + wallMm),
    ],
    closest,
  });
  const stud = input.studCircleDiameterMm / 2;
  const end = Math.PI / input.studCount;
  const angles = distinctBreaks({
    must: [0, end, pad.halfAngleRad, stiff.halfAngleRad],
    may: [pad.halfAngleRad + wallMm / stud],
    closest: closest / stud,
  });
  const [trackFrom, trackTo] = [input.trackInnerDiameterMm / 2, input.trackOuterDiameterMm / 2];
  const radial = (r: number) => {
    const fromPad = Math.min(...edges.map((edge) => Math.abs(r - edge)));
    return Math.min(
      WIDEST * rim,
      AT_PAD * rim + GROWTH_RADIUS * fromPad,
      AT_RIM * rim + GROWTH_RADIUS * (rim - r),
      OF_RADIUS * r,
      r > trackFrom && r < trackTo ? (trackTo - trackFrom) / ON_TRACK : rim,
    );
  };
  const around = (angle: number) =>
    Math.min(WIDEST * rim, ROUND_PAD * rim + GROWTH_ANGLE * Math.abs(angle - stiff.halfAngleRad) * stud);
  return {
    pad,
    stiff,
    radiiMm: gradedLines({ breaks: radii, sizeAt: (r) => radial(r) / fineness }),
    anglesRad: gradedLines({ breaks: angles, sizeAt: (angle) => around(angle) / (stud * fineness) }),
  };
}

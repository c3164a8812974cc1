import type { StiffnessInput } from '../../../../shared/words/bending/stiffness.ts';
import { assembleLoad, assembleStiffness } from '../elements/assemble.ts';
import { type Freedoms, numberFreedoms } from '../elements/freedoms.ts';
import type { PlateMesh } from '../elements/mesh.ts';
import type { Skyline } from '../elements/skyline.ts';
import { type LiningPoints, liningPoints } from '../lining/lining.ts';
import { type CoverForces, coverForces } from './coverForces.ts';
import { coverMesh } from './coverMesh.ts';
import { flexuralRigidity } from './flexuralRigidity.ts';
import type { PadPatch } from './padPatch.ts';
import { sideWallSpring } from './sideWallSpring.ts';

/** Half a sector of the cover, ready to be pressed on. */
export interface CoverModel {
  readonly mesh: PlateMesh;
  /** What a pad’s load lies on. */
  readonly pad: PadPatch;
  /** What of it is stiff. */
  readonly stiff: PadPatch;
  readonly forces: CoverForces;
  readonly freedoms: Freedoms;
  /** Thickness at whose surface the stress is greatest, of each element, ring by ring. */
  readonly thicknessMm: Float64Array;
  readonly rigidityNmm: Float64Array;
  readonly rimSpringN: number;
  /** On the flat, without the lining. */
  readonly pressureAt: (radiusMm: number, row: number, column: number) => number;
  /** Without the lining. */
  readonly stiffness: Skyline;
  /** Without the lining. */
  readonly load: Float64Array;
  /** The unknown that is the center's displacement. */
  readonly boss: number;
  /** 1/(2N): what half a sector is of the whole. */
  readonly share: number;
  readonly track: LiningPoints;
}

/**
 * The cover as a thin plate.
 *
 * Thickness of an element: the wall, on the friction surface the wall left there, under the stiff part of a pad that wall + pad.
 * Where a ring lies and no stiff pad stands: bonded t + t_ring as one piece, else D(t) + D(t_ring). The center is one stiff piece free along the
 * axis; the rim does not move and is held against turning by the side wall.
 * Valid: sizes that make a cover.   Source: this program’s own model
 * Example: the example’s cover (tests/calc/plate/bendCover.test.ts)
 */
export function coverModel(input: StiffnessInput, fineness = 1): CoverModel {
  const { pad, stiff, ...mesh } = coverMesh(input, fineness);
  const { youngMPa, poisson } = input;
  const outer = input.trackOuterDiameterMm / 2;
  const { middle, onTrack, underPad } = placesOf(input, mesh, pad);
  const { rigidityNmm, thicknessMm, padArea } = sectionsOf(input, mesh, pad, stiff);

  const forces = coverForces(input);
  const share = 1 / (2 * input.studCount);
  const freedoms = numberFreedoms({ mesh, inner: 'rigid', outer: 'simple' });
  const padMPa = forces.perPadN / 2 / padArea;
  const pressureAt = (radius: number, row: number, column: number) =>
    forces.headMPa(radius) +
    (middle(row) > outer ? input.pressureMPa : 0) +
    (underPad(row, column) ? padMPa : 0);
  const load = assembleLoad({ mesh, freedoms, pressureAt });
  const boss = freedoms.unknown[0]!;
  load[boss] = load[boss]! + forces.bossN * share;
  const { springN } = sideWallSpring({
    rimRadiusMm: input.rimDiameterMm / 2,
    sideWallMm: input.sideWallMm,
    youngMPa,
    poisson,
  });
  const stiffness = assembleStiffness({
    mesh,
    freedoms,
    rigidityNmm,
    poisson,
    outerEdgeSpringN: springN,
    whole: (row) => input.piston === 'conforming' && onTrack(row),
  });
  const track = liningPoints({ mesh, freedoms, onTrack });
  return {
    mesh,
    pad,
    stiff,
    forces,
    freedoms,
    thicknessMm,
    rigidityNmm,
    rimSpringN: springN,
    pressureAt,
    stiffness,
    load,
    boss,
    share,
    track,
  };
}

/** Which rows and elements lie on the friction surface, and under a patch. */
function placesOf(input: StiffnessInput, { radiiMm, anglesRad }: PlateMesh, patch: PadPatch) {
  const [inner, outer] = [input.trackInnerDiameterMm / 2, input.trackOuterDiameterMm / 2];
  const middle = (row: number) => (radiiMm[row]! + radiiMm[row + 1]!) / 2;
  return {
    middle,
    onTrack: (row: number) => middle(row) > inner && middle(row) < outer,
    underPad: (row: number, column: number) =>
      middle(row) > patch.innerMm &&
      middle(row) < patch.outerMm &&
      (anglesRad[column]! + anglesRad[column + 1]!) / 2 < patch.halfAngleRad,
  };
}

/** Thickness and stiffness of each element, and the area half a pad’s load lies on. */
function sectionsOf(input: StiffnessInput, mesh: PlateMesh, pad: PadPatch, stiff: PadPatch) {
  const { radiiMm, anglesRad } = mesh;
  const { youngMPa, poisson, ring } = input;
  const [rows, columns] = [radiiMm.length - 1, anglesRad.length - 1];
  const { middle, onTrack, underPad } = placesOf(input, mesh, pad);
  const { underPad: isStiff } = placesOf(input, mesh, stiff);
  const underRing = (row: number) =>
    ring !== null && middle(row) > ring.innerDiameterMm / 2 && middle(row) < ring.outerDiameterMm / 2;
  const rigidity = (thicknessMm: number) => flexuralRigidity({ youngMPa, poisson, thicknessMm });
  const rigidityNmm = new Float64Array(rows * columns);
  const thicknessMm = new Float64Array(rows * columns);
  let padArea = 0;
  for (let row = 0; row < rows; row++) {
    const wall = onTrack(row) ? input.trackWallMm : input.wallMm;
    for (let column = 0; column < columns; column++) {
      const at = row * columns + column;
      const onPad = isStiff(row, column);
      const added = onPad ? input.padThicknessMm : underRing(row) && ring ? ring.thicknessMm : 0;
      const apart = !onPad && ring !== null && !ring.bonded && added > 0;
      thicknessMm[at] = apart ? Math.max(wall, added) : wall + added;
      rigidityNmm[at] = apart ? rigidity(wall) + rigidity(added) : rigidity(wall + added);
      if (underPad(row, column)) {
        const sweep = anglesRad[column + 1]! - anglesRad[column]!;
        padArea += (sweep * (radiiMm[row + 1]! ** 2 - radiiMm[row]! ** 2)) / 2;
      }
    }
  }
  return { rigidityNmm, thicknessMm, padArea };
}

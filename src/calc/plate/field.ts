import { ELEMENT_FREEDOMS, shapes } from './elements/element.ts';
import { unknownsOf } from './elements/freedoms.ts';
import { GAUSS_AT, GAUSS_COUNT, GAUSS_WEIGHT } from './elements/gauss.ts';
import { hermite } from './elements/hermite.ts';
import type { Pressed } from './lining/pressed.ts';
import type { CoverModel } from './model/coverModel.ts';

/** What stands over the flat once it is solved. */
export interface CoverField {
  readonly deflectionMm: (radiusMm: number, angleRad: number) => number;
  /** On the friction surface; where the lining does not touch, 0. */
  readonly pressureMPa: (radiusMm: number, angleRad: number) => number;
}

/** Which stretch of rising lines holds x. */
function stretch(lines: Float64Array, x: number): number {
  let i = 0;
  while (i < lines.length - 2 && lines[i + 1]! <= x) i++;
  return i;
}

/**
 * Deflection and lining pressure anywhere.   p = k·max(0, d − w), d the piston's displacement at that radius
 *
 * A rigid piston's d is that of every spring. A conforming one's is found at each radius from Σ max(0, d − w) = even
 * pressure, over the Gauss points of the circle: the sum rises with d, so begin with all and drop those that pull.
 * Valid: on the flat, and for pressure on the friction surface.   Source: this program’s own model
 * Example: the mean over the friction surface is the mean pressure (tests/laws/plate.test.ts)
 */
export function coverField(
  { mesh, freedoms, track, forces, share }: CoverModel,
  { w, squeezedMm }: Pressed,
  { piston, liningModulusMPaPerMm }: { piston: 'rigid' | 'conforming'; liningModulusMPaPerMm: number },
): CoverField {
  const { radiiMm, anglesRad } = mesh;
  const alongRadius = new Float64Array(12);
  const alongAngle = new Float64Array(12);
  const shape = new Float64Array(ELEMENT_FREEDOMS);
  const of = new Int32Array(ELEMENT_FREEDOMS);

  const deflectionMm = (radiusMm: number, angleRad: number): number => {
    const row = stretch(radiiMm, radiusMm);
    const column = stretch(anglesRad, angleRad);
    const width = radiiMm[row + 1]! - radiiMm[row]!;
    const sweep = anglesRad[column + 1]! - anglesRad[column]!;
    hermite((radiusMm - radiiMm[row]!) / width, width, alongRadius);
    hermite((angleRad - anglesRad[column]!) / sweep, sweep, alongAngle);
    shapes(alongRadius, 0, alongAngle, 0, shape);
    unknownsOf(freedoms, row, column, of);
    let sum = 0;
    for (let k = 0; k < ELEMENT_FREEDOMS; k++) if (of[k]! >= 0) sum += shape[k]! * w[of[k]!]!;
    return sum;
  };

  const evenMm = (forces.liningN * share) / track.totalAreaMm2 / liningModulusMPaPerMm;
  const conformingAt = conformingPiston(anglesRad, track.perCircle, evenMm, deflectionMm);
  const rigidAt = squeezedMm[0]! + deflectionAtPoint(track, w);
  let [lastRadius, lastPiston] = [Number.NaN, 0];
  const pistonAt = (radiusMm: number): number => {
    if (piston === 'rigid') return rigidAt;
    if (radiusMm !== lastRadius) [lastRadius, lastPiston] = [radiusMm, conformingAt(radiusMm)];
    return lastPiston;
  };
  return {
    deflectionMm,
    pressureMPa: (radiusMm, angleRad) =>
      liningModulusMPaPerMm * Math.max(0, pistonAt(radiusMm) - deflectionMm(radiusMm, angleRad)),
  };
}

/** Where a conforming piston stands at a radius: even pressure in the mean, over the Gauss points of the circle. */
function conformingPiston(
  anglesRad: Float64Array,
  perCircle: number,
  evenMm: number,
  deflectionMm: CoverField['deflectionMm'],
): (radiusMm: number) => number {
  const onCircle = new Float64Array(perCircle);
  const sweepOf = (column: number) => anglesRad[column + 1]! - anglesRad[column]!;
  return (radiusMm) => {
    const all = anglesRad.at(-1)!;
    for (let i = 0; i < onCircle.length; i++) {
      const column = Math.floor(i / GAUSS_COUNT);
      const angle = anglesRad[column]! + sweepOf(column) * GAUSS_AT[i % GAUSS_COUNT]!;
      onCircle[i] = deflectionMm(radiusMm, angle);
    }
    let d = Number.POSITIVE_INFINITY;
    for (let [touched, before] = [0, -1]; touched !== before; ) {
      before = touched;
      touched = 0;
      let moved = 0;
      let touching = 0;
      for (let i = 0; i < onCircle.length; i++) {
        if (onCircle[i]! >= d) continue;
        const weight = sweepOf(Math.floor(i / GAUSS_COUNT)) * GAUSS_WEIGHT[i % GAUSS_COUNT]!;
        touched++;
        touching += weight;
        moved += weight * onCircle[i]!;
      }
      d = (moved + evenMm * all) / touching;
    }
    return d;
  };
}

/** Of the first lining point. */
function deflectionAtPoint({ shape, unknown }: CoverModel['track'], w: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < ELEMENT_FREEDOMS; k++) if (unknown[k]! >= 0) sum += shape[k]! * w[unknown[k]!]!;
  return sum;
}

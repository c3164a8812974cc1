import type { MeasuredStation } from '../measuredStations.ts';
import type { FaceLie } from './faceCut.ts';

export interface MeasuredMark {
  readonly angleDeg: number;
  readonly radiusMm: number;
  readonly depthMm: number;
  readonly wallMm: number;
  readonly faceMm: number | null;
}

/**
 * The ways the face may lie in the chuck. With indicator readings there is one. Without, two bounds:
 *   pad side flat  zᵢ = tᵢ − mean t        face flat  zᵢ = 0
 *
 * t wall [mm] · z indicator reading [mm].
 * Valid: the truth lies between the bounds only as far as wall and face go together; indicator readings settle it.
 * Source: geometry of a wall between two faces (first principles)
 * Example: tests/calc/cover/bounds.test.ts
 */
export function faceLies(
  stations: readonly MeasuredStation[],
  marks: readonly MeasuredMark[],
): readonly FaceLie[] {
  const lie = (
    name: FaceLie['name'],
    height: (at: { readonly wallMm: number; readonly faceMm: number | null }) => number,
  ): FaceLie => ({
    name,
    stations: stations.map((s) => ({ heightMm: height(s), depthMm: s.depthMm, wallMm: s.wallMm })),
    marks: marks.map((m) => ({ heightMm: height(m), depthMm: m.depthMm })),
  });
  if (stations.every((station) => station.faceMm !== null)) return [lie('measured', (at) => at.faceMm!)];
  const meanWall = stations.reduce((sum, station) => sum + station.wallMm, 0) / stations.length;
  return [lie('pad-side-flat', (at) => at.wallMm - meanWall), lie('face-flat', () => 0)];
}

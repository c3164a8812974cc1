import type { Station } from '../../../shared/words/cover.ts';
import { turned } from '../../../shared/words/places.ts';
import { meanOfRepeats } from '../measure/meanOfRepeats.ts';

/** A station as the calculations use it: one wall, and its place across the face. */
export interface MeasuredStation {
  /** From 0 to below 360. */
  readonly angleDeg: number;
  readonly radiusMm: number;
  readonly xMm: number;
  readonly yMm: number;
  readonly wallMm: number;
  readonly repeats: number;
  readonly faceMm: number | null;
  readonly depthMm: number;
}

/**
 * Where a station lies on the face.   x = r·cos θ,  y = r·sin θ
 *
 * θ angle clockwise from stud 1, looking at the clutch face [deg] · r radius from the crank axis [mm] · x, y [mm].
 * Valid: any angle; whole turns are taken off first.   Source: polar coordinates; the frame is this program's own rule
 * Example: 45° at radius 100 → x 70.711, y 70.711 (tests/calc/cover/measuredStations.test.ts)
 */
export function placeOnFace(angleDeg: number, radiusMm: number): { xMm: number; yMm: number } {
  const radians = (turned(angleDeg) * Math.PI) / 180;
  return { xMm: radiusMm * Math.cos(radians), yMm: radiusMm * Math.sin(radians) };
}

/** Each station with one wall, the mean of its repeats; a mark that was not read counts as none. */
export function measuredStations(stations: readonly Station[]): readonly MeasuredStation[] {
  return stations.map((station) => ({
    angleDeg: turned(station.angleDeg),
    radiusMm: station.radiusMm,
    ...placeOnFace(station.angleDeg, station.radiusMm),
    wallMm: meanOfRepeats(station.wallMm),
    repeats: station.wallMm.length,
    faceMm: station.faceMm,
    depthMm: station.markDepthMm ?? 0,
  }));
}

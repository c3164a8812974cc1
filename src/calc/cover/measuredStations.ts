import type { Station } from '../../../shared/words/cover.ts';
import { meanOfRepeats } from '../measure/meanOfRepeats.ts';

/** A station as the calculations use it: one wall, and its place across the face. */
export interface MeasuredStation {
  /** 0 up to 360. */
  readonly angleDeg: number;
  readonly radiusMm: number;
  readonly xMm: number;
  readonly yMm: number;
  readonly wallMm: number;
  readonly repeats: number;
  readonly faceMm: number | null;
  readonly depthMm: number;
}

/** An angle brought to 0 up to 360. */
export function turned(angleDeg: number): number {
  const turn = ((angleDeg % 360) + 360) % 360;
  return turn === 360 ? 0 : turn;
}

/** x = r cos, y = r sin of the clock position, in the frame of the clutch face. */
export function placeOnFace(angleDeg: number, radiusMm: number): { xMm: number; yMm: number } {
  const radians = (turned(angleDeg) * Math.PI) / 180;
  return { xMm: radiusMm * Math.cos(radians), yMm: radiusMm * Math.sin(radians) };
}

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

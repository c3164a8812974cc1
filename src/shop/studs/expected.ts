import { readThread } from '../../../shared/quantity/readThread.ts';

/**
 * What the lengths of studs, nuts and flexplates measure at all, so that a slipped decimal or the wrong unit is asked
 * about: common practice, no source. Nothing is judged by them.
 */
export interface LengthsExpected {
  readonly nutHeightMm: number;
  readonly washerFaceMm: number;
  readonly holeMm: number;
  readonly boltCircleMm: number;
  readonly studEndRoomMm: number;
  readonly threadEndMm: number;
  readonly lengthFromPadMm: number;
  readonly pilotMm: number;
  readonly pitchDiameterMm: number;
  readonly filletMm: number;
  readonly chamferMm: number;
  readonly washerMm: number;
  readonly toleranceMm: number;
  readonly stackMm: number;
  readonly depthMm: number;
  readonly hubMm: number;
}

const USUAL_THREAD_MM = 9.5;

/** With a thread that can be read, what goes with its diameter follows it. */
export function lengthsExpected(threadTyped: string): LengthsExpected {
  const read = readThread(threadTyped, 'internal');
  const d = !read.ok
    ? USUAL_THREAD_MM
    : read.thread.system === 'unified'
      ? read.thread.majorInch * 25.4
      : read.thread.majorMm;
  return {
    nutHeightMm: 0.85 * d,
    washerFaceMm: 1.45 * d,
    holeMm: 1.08 * d,
    boltCircleMm: 285,
    studEndRoomMm: 33,
    threadEndMm: 22,
    lengthFromPadMm: 26,
    pilotMm: 0.85 * d,
    pitchDiameterMm: 0.93 * d,
    filletMm: 3,
    chamferMm: 0.8,
    washerMm: 2.2,
    toleranceMm: 0.2,
    stackMm: 10,
    depthMm: 28,
    hubMm: 17,
  };
}

import type { Answer } from '../../../../shared/words/answer.ts';
import { cutDialled } from './cutDialled.ts';
import { cleanUpToolPlane, type ToClean } from './toolPlane.ts';

const TOLERANCE_MM = 1e-9;

/** One way the face may lie: as the indicator read it, or one of the two bounds when it was not read. */
export interface FaceLie {
  readonly name: 'measured' | 'pad-side-flat' | 'face-flat';
  readonly stations: readonly (ToClean & { readonly wallMm: number })[];
  readonly marks: readonly ToClean[];
}

export interface FaceCut {
  readonly name: FaceLie['name'];
  /** The least cut that cleans every mark. */
  readonly cleanUp: {
    readonly plane: Answer;
    readonly dialled: Answer;
    readonly wallsMm: readonly number[];
    readonly leastWallMm: number;
  };
  /** How far each station stands below the highest. */
  readonly downMm: readonly number[];
  /** The cut that is judged: the planned one, or the clean-up cut where none is planned. */
  readonly toolPlaneMm: number;
  readonly dialledMm: number;
  readonly cutsMm: readonly number[];
  readonly wallsAfterMm: readonly number[];
  readonly markCutsMm: readonly number[];
  /** Indexes, from 0 as sent, of stations and marks the cut does not clean. */
  readonly dirtyStations: readonly number[];
  readonly dirtyMarks: readonly number[];
}

/**
 * What a facing cut takes and leaves, station by station.   kᵢ = max(0, zᵢ − c),  wall left = tᵢ − kᵢ
 *
 * z indicator reading [mm] · c tool plane [mm]: the clean-up plane, or max zᵢ − p for a planned cut p · t wall [mm].
 * A place is clean when zᵢ − c ≥ dᵢ + ε. A place the tool does not reach keeps its wall and is not clean.
 * Valid: the cut is square to the axis.   Source: geometry of facing (first principles)
 * Example: design set one → walls from 4.50, station 1 first (tests/calc/cover/checkCover.test.ts)
 */
export function faceCut(
  lie: FaceLie,
  { allowanceMm, plannedCutMm }: { readonly allowanceMm: number; readonly plannedCutMm: number | null },
): FaceCut {
  const heightsMm = lie.stations.map((station) => station.heightMm);
  const plane = cleanUpToolPlane([...lie.stations, ...lie.marks], allowanceMm);
  const cleanUpPlaneMm = plane.value!;
  const dialled = cutDialled({ heightsMm, toolPlaneMm: cleanUpPlaneMm });
  const toolPlaneMm = plannedCutMm === null ? cleanUpPlaneMm : Math.max(...heightsMm) - plannedCutMm;

  const cleanUpWallsMm = lie.stations.map((s) => s.wallMm - (s.heightMm - cleanUpPlaneMm));

  const cut = (place: ToClean) => Math.max(0, place.heightMm - toolPlaneMm);
  const dirty = (place: ToClean) => place.heightMm - toolPlaneMm < place.depthMm + allowanceMm - TOLERANCE_MM;
  const which = (places: readonly ToClean[]) =>
    places.flatMap((place, index) => (dirty(place) ? [index] : []));
  return {
    name: lie.name,
    cleanUp: {
      plane,
      dialled,
      wallsMm: cleanUpWallsMm,
      leastWallMm: Math.min(...cleanUpWallsMm),
    },
    downMm: heightsMm.map((heightMm) => Math.max(...heightsMm) - heightMm),
    toolPlaneMm,
    dialledMm: plannedCutMm ?? dialled.value!,
    cutsMm: lie.stations.map(cut),
    wallsAfterMm: lie.stations.map((station) => station.wallMm - cut(station)),
    markCutsMm: lie.marks.map(cut),
    dirtyStations: which(lie.stations),
    dirtyMarks: which(lie.marks),
  };
}

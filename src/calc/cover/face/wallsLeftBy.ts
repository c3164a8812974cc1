import type { Station } from '../../../../shared/words/cover.ts';
import { measuredStations } from '../measuredStations.ts';
import { faceCut } from './faceCut.ts';
import { faceLies } from './faceLies.ts';

/**
 * The wall that a cut of a known depth should leave at each station.   tᵢ − kᵢ,   kᵢ = max(0, p − (max z − zᵢ))
 *
 * t wall, z indicator reading, p depth of cut from the highest point [mm]. Where the face was not indicated, the lower of the
 * two ways it may lie.
 * Valid: every station has a wall; the cover stays as it was chucked.   Source: geometry of facing (first principles)
 * Example: walls 4.90 and 4.80, heights 0.10 and 0, cut 0.25 → 4.65 and 4.65 (tests/calc/cover/wallsLeftBy.test.ts)
 */
export function wallsLeftBy(stations: readonly Station[], cutMm: number): readonly number[] {
  const measured = measuredStations(stations);
  const ways = faceLies(measured, []).map((lie) => faceCut(lie, { allowanceMm: 0, plannedCutMm: cutMm }));
  return measured.map((_, i) => Math.min(...ways.map((way) => way.wallsAfterMm[i]!)));
}

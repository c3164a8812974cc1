import type { StudCheckInput, ToleranceRow } from '../../../../shared/words/stud/stud.ts';
import { pilotLead } from '../holes/pilotLinesUp.ts';
import { lengthMargin } from '../numbers/lengthMargin.ts';
import { studNumbers } from '../numbers/studNumbers.ts';
import { studTolerances } from './studTolerances.ts';

export interface ToleranceTable {
  readonly rows: readonly ToleranceRow[];
  readonly draws: number;
  /** Share of assemblies in which at least one of them fails; a nut that does not start by hand is no failure if the tip shows. */
  readonly anyFails: number;
}

/**
 * Every length check at nominal, RSS and worst case, and how often it would fail.
 *   margins as in lengthMargin.ts, shares as in studTolerances.ts, one minus those that pass
 *   Valid: as those two.   Source: lengthMargin.ts, studTolerances.ts
 *   Throws: a Refusal that names each field it cannot work with (refuseStud.ts).
 *   Example: the JSON interface's stud → none of 100 000 fails (calc/stud/match/toleranceRows.test.ts)
 */
export function toleranceRows(input: StudCheckInput): ToleranceTable {
  const { stud, stack, nut, criteria, pullForwardMm: g } = input;
  const { gripMm, pitchMm: P, layerTolerancesMm, stackMm } = studNumbers(input);
  const drawn = studTolerances(input);
  const tl = stud.lengthToleranceMm;
  const row = (
    id: ToleranceRow['id'],
    marginMm: number,
    tolerancesMm: readonly number[],
    passes: number,
  ): ToleranceRow => {
    const { nominalMm, rssMm, worstMm } = lengthMargin({ marginMm, tolerancesMm });
    return { id, nominalMm, rssMm, worstMm, failShare: 1 - passes };
  };
  const S = [tl, ...layerTolerancesMm];
  const rows = [row('clamps', gripMm - P - stud.threadStartMm, S, drawn.clamps)];
  if (nut) {
    const top = gripMm + nut.heightMm;
    const all = [...S, nut.toleranceMm];
    const outer = stud.threadEndMm - (top - nut.countersinkMm);
    const inner = gripMm + nut.countersinkMm - stud.threadStartMm;
    rows.push(
      row('engaged', Math.min(outer, inner), outer <= inner ? all : S, drawn.fullyEngaged!),
      row('protrudes', stud.threadEndMm - top - criteria.protrusionThreads * P, all, drawn.protrudes!),
    );
  }
  if (g !== null && !nut?.prevailing) {
    const showing = stud.threadEndMm - g - stackMm.nominal - criteria.startThreads * P;
    rows.push(row('starts', showing, S, drawn.startsByHand!));
  }
  if (g !== null) {
    rows.push(
      row('shows', stud.projectionMm - g - stackMm.nominal, S, drawn.tipShows!),
      row('enters', stud.projectionMm - g, [tl], drawn.entersHole!),
    );
  }
  if (stack.tipRoomMm !== null)
    rows.push(row('clears', stack.tipRoomMm - stud.projectionMm, [tl], drawn.tipClears!));
  const lead = pilotLead({ input });
  if (lead !== null) rows.push(row('lines', lead.intoMm - lead.leadMm, lead.tolerancesMm, drawn.linesUp!));
  return { rows, draws: drawn.draws, anyFails: 1 - drawn.noneFails };
}

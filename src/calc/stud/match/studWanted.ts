import type { StudCheckInput } from '../../../../shared/words/stud/stud.ts';
import { pilotLead } from '../holes/pilotLinesUp.ts';
import { studNumbers } from '../numbers/studNumbers.ts';

export interface StudWanted {
  readonly threadStartMostMm: number;
  /** null without a nut: nothing says how far the thread must reach. */
  readonly threadEndLeastMm: number | null;
  readonly projectionLeastMm: number;
  /** null where the room for the tip is not known. */
  readonly projectionMostMm: number | null;
  readonly pilotDiameterBelowMm: number;
}

/**
 * The stud a stack wants: within these figures every length check passes, even with every size at its worst.
 *   start ≤ S + w − P − tol      end ≥ max(S + w + H + protrusion · P + tol, g + S + start threads · P + tol)
 *   end ≤ projection ≤ room − tol, projection > g + tol, projection ≥ end + E + lead + tol (pilotLinesUp.ts)
 *   pilot below the nut's least minor diameter
 *   S stack, w washer, H nut height, P pitch, g gap, tol the sum of the tolerances each check has [mm]
 *   Valid: this stud's own tolerance is kept. A gap not given is left out.
 *   Source: the checks of this folder, turned round.   Example: tests/calc/stud/match/whatWouldMend.test.ts
 *   Throws: a Refusal of a thread that cannot be worked out (threadGeometry.ts).
 */
export function studWanted(input: StudCheckInput): StudWanted {
  const { stud, stack, nut, criteria, pullForwardMm: g } = input;
  const { pitchMm: P, gripMm, stackMm, nutThread } = studNumbers(input);
  const tl = stud.lengthToleranceMm;
  const tS = stackMm.most - stackMm.nominal;
  const ends = [
    ...(nut ? [gripMm + nut.heightMm + criteria.protrusionThreads * P + tl + tS + nut.toleranceMm] : []),
    ...(g !== null && nut && !nut.prevailing
      ? [g + stackMm.nominal + criteria.startThreads * P + tl + tS]
      : []),
  ];
  const threadEndLeastMm = ends.length > 0 ? Math.max(...ends) : null;
  return {
    threadStartMostMm: gripMm - P - tl - tS,
    threadEndLeastMm,
    projectionLeastMm: Math.max(threadEndLeastMm ?? 0, g === null ? 0 : g + tl, linesUpFromMm(input)),
    projectionMostMm: stack.tipRoomMm === null ? null : stack.tipRoomMm - tl,
    pilotDiameterBelowMm: nutThread.minorMm.min!,
  };
}

/** How long a stud with this thread has to be for its pilot to line the pieces up, even at its worst; 0 with one piece. */
export function linesUpFromMm(input: StudCheckInput): number {
  const lead = pilotLead({ input });
  if (lead === null) return 0;
  const tolerance = lead.tolerancesMm.reduce((sum, t) => sum + t, 0);
  return input.stud.threadEndMm + lead.beforeMm + lead.leadMm + tolerance;
}

import type { Stud, StudCheckInput } from '../../../../shared/words/stud/stud.ts';
import { piecesToLineUp } from '../holes/pilotLinesUp.ts';
import { stackSum } from '../numbers/stackSum.ts';
import { studNumbers } from '../numbers/studNumbers.ts';

export interface StudWanted {
  readonly threadStartMostMm: number;
  /** null without a nut: nothing says how far the thread must reach. */
  readonly threadEndLeastMm: number | null;
  readonly projectionLeastMm: number;
  /** null where the room for the tip is not known. */
  readonly projectionMostMm: number | null;
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
export function studWanted(input: StudCheckInput): StudWanted & { readonly pilotDiameterBelowMm: number } {
  const { pitchMm, nutThread } = studNumbers(input);
  const lengths = lengthsWanted(asksOf(input), input.stud, pitchMm);
  return { ...lengths, pilotDiameterBelowMm: nutThread.minorMm.min! };
}

/** What a stack asks of any stud, summed up once. */
export interface StackAsks {
  readonly surroundings: Omit<StudCheckInput, 'stud'>;
  readonly stackMm: { readonly nominal: number; readonly most: number };
  /** To the nut's bearing face: the stack and a washer. */
  readonly gripMm: number;
  /** null with one piece. */
  readonly lineUp: { readonly fromThreadMm: number; readonly toleranceMm: number } | null;
}

export function asksOf(surroundings: Omit<StudCheckInput, 'stud'>): StackAsks {
  const { stack, nut } = surroundings;
  const stackMm = stackSum(stack.layers);
  const pieces = piecesToLineUp(surroundings);
  return {
    surroundings,
    stackMm,
    gripMm: stackMm.nominal + (nut?.washerMm ?? 0),
    lineUp: pieces && {
      fromThreadMm: pieces.beforeMm + pieces.leadMm,
      toleranceMm: pieces.tolerancesMm.reduce((sum, t) => sum + t, 0),
    },
  };
}

/** The lengths of `studWanted`, of a stud of this pitch P. */
export function lengthsWanted(
  { surroundings: { stack, nut, criteria, pullForwardMm: g }, stackMm, gripMm, lineUp }: StackAsks,
  { threadEndMm, lengthToleranceMm: tl }: Pick<Stud, 'threadEndMm' | 'lengthToleranceMm'>,
  P: number,
): StudWanted {
  const tS = stackMm.most - stackMm.nominal;
  const pastNut = nut
    ? gripMm + nut.heightMm + criteria.protrusionThreads * P + tl + tS + nut.toleranceMm
    : null;
  const toStart =
    g !== null && nut && !nut.prevailing ? g + stackMm.nominal + criteria.startThreads * P + tl + tS : null;
  const threadEndLeastMm = pastNut === null ? toStart : Math.max(pastNut, toStart ?? pastNut);
  return {
    threadStartMostMm: gripMm - P - tl - tS,
    threadEndLeastMm,
    projectionLeastMm: Math.max(
      threadEndLeastMm ?? 0,
      g === null ? 0 : g + tl,
      pilotFrom(lineUp, threadEndMm, tl),
    ),
    projectionMostMm: stack.tipRoomMm === null ? null : stack.tipRoomMm - tl,
  };
}

/** How long a stud with this thread has to be for its pilot to line the pieces up, even at its worst; 0 with one piece. */
export function linesUpFromMm(input: StudCheckInput): number {
  return pilotFrom(asksOf(input).lineUp, input.stud.threadEndMm, input.stud.lengthToleranceMm);
}

function pilotFrom(lineUp: StackAsks['lineUp'], threadEndMm: number, tl: number): number {
  return lineUp ? threadEndMm + lineUp.fromThreadMm + 2 * tl + lineUp.toleranceMm : 0;
}

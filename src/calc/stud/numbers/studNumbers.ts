import type { Answer } from '../../../../shared/words/answer.ts';
import type { StudCheckInput } from '../../../../shared/words/stud/stud.ts';
import type { ThreadGeometry, ThreadSpec } from '../../../../shared/words/stud/thread.ts';
import { threadGeometry } from '../thread/threadGeometry.ts';
import { stackSum } from './stackSum.ts';
import { wornThread } from './wornThread.ts';

/** What every check of a stud reads: the input with its sums and its two threads worked out once. */
export interface StudNumbers {
  readonly input: StudCheckInput;
  /** The stud's thread, with its measured pitch diameter where that is worn. */
  readonly thread: ThreadGeometry;
  /** Basic major diameter. */
  readonly diameterMm: number;
  readonly pitchMm: number;
  /** The nut's thread: its own, or the stud's 2B or 6H when it was not given. */
  readonly nutThread: ThreadGeometry;
  readonly nutThreadGiven: boolean;
  /** Whether nut and stud have the same system, diameter and pitch. */
  readonly nutGoesOn: boolean;
  /** S: the layers, without a washer. */
  readonly stackMm: { readonly nominal: number; readonly least: number; readonly most: number };
  readonly stackAnswer: Answer;
  readonly layerTolerancesMm: readonly number[];
  readonly washerMm: number;
  /** From the pad's seating face to the nut's bearing face. */
  readonly gripMm: number;
}

const INTERNAL = { '2A': '2B', '3A': '3B', '2B': '2B', '3B': '3B' } as const;

/** A nut's thread is internal, whatever class its callout was given. */
function asNutThread(spec: ThreadSpec): ThreadSpec {
  return spec.system === 'metric' ? { ...spec, class: '6H' } : { ...spec, class: INTERNAL[spec.class] };
}

/**
 * Both threads, the stack's sum and the grip, worked out once for all checks.
 * Throws: a Refusal of a thread that cannot be worked out (threadGeometry.ts).
 */
export function studNumbers(input: StudCheckInput): StudNumbers {
  const { stud, stack, nut } = input;
  const thread = wornThread(threadGeometry(stud.thread), stud.pitchDiameterMeasuredMm ?? null);
  const nutThread = threadGeometry(asNutThread(nut?.thread ?? loosest(stud.thread)));
  const { answer: stackAnswer, ...stackMm } = stackSum(stack.layers);
  const layerTolerancesMm = stack.layers.map((layer) => layer.toleranceMm);
  const washerMm = nut?.washerMm ?? 0;
  return {
    input,
    thread,
    diameterMm: thread.majorMm.basic,
    pitchMm: thread.pitchMm,
    nutThread,
    nutThreadGiven: nut?.thread != null,
    nutGoesOn: nut?.thread == null || sameThread(stud.thread, nut.thread),
    stackMm,
    stackAnswer,
    layerTolerancesMm,
    washerMm,
    gripMm: stackMm.nominal + washerMm,
  };
}

function loosest(spec: ThreadSpec): ThreadSpec {
  return spec.system === 'metric' ? spec : { ...spec, class: '2B' };
}

/** Whether two threads go together: system, diameter and pitch. */
export function sameThread(a: ThreadSpec, b: ThreadSpec): boolean {
  if (a.system === 'unified' && b.system === 'unified') {
    return Math.abs(a.majorInch - b.majorInch) < 1e-6 && a.threadsPerInch === b.threadsPerInch;
  }
  if (a.system === 'metric' && b.system === 'metric') {
    return Math.abs(a.majorMm - b.majorMm) < 1e-6 && Math.abs(a.pitchMm - b.pitchMm) < 1e-6;
  }
  return false;
}

/** The pitch a callout names. */
export function pitchOf(spec: ThreadSpec): number {
  return spec.system === 'metric' ? spec.pitchMm : 25.4 / spec.threadsPerInch;
}

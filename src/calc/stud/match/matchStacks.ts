import type { LengthUnit } from '../../../../shared/words/print.ts';
import { Refusal } from '../../../../shared/words/refusal.ts';
import type { NamedStack, StudCheckInput, StudMatch } from '../../../../shared/words/stud/stud.ts';
import { fitOf } from '../checkStud.ts';
import { bestFirst, matched } from './bestFirst.ts';

export interface MatchStacksInput extends Omit<StudCheckInput, 'stack' | 'nut' | 'pullForwardMm'> {
  readonly stacks: readonly NamedStack[];
}

/**
 * Which stacks suit the stud in hand, best first; each stack with its own nut and gap.
 * Throws: a Refusal, as checkStud; a field of a stack is named under `stacks.N`.
 */
export function matchStacks(input: MatchStacksInput, unit: LengthUnit = 'mm'): StudMatch[] {
  const { stacks, ...shared } = input;
  const ranked = stacks.map(({ id, stack, nut, pullForwardMm }, i) => {
    try {
      return { id, fit: fitOf({ ...shared, stack, nut, pullForwardMm }, unit) };
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      throw new Refusal(
        error.code,
        error.faults.map(({ path, message }) => ({
          path: /^(stack|nut|pullForwardMm)\b/.test(path) ? `stacks.${i}.${path}` : path,
          message,
        })),
      );
    }
  });
  return matched(bestFirst(ranked), unit);
}

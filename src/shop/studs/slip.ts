import type { JointFrom } from '../../../shared/words/job.ts';
import type { StudChoice } from '../../../shared/words/stud/choices.ts';
import type { CounterSlip } from '../../../shared/words/stud/slip.ts';
import { studCheckFor } from '../studChoices.ts';
import { nutClassOf, studClassOf } from './markings.ts';
import { notToTake, type StackAsked } from './onShelf.ts';

/** What the counter hands over for one stud of those that were checked. */
export function counterSlip(
  asked: StackAsked & { readonly stack: NonNullable<StackAsked['stack']> },
  choice: StudChoice,
  choices: readonly StudChoice[],
  torqueFrom: JointFrom['torque'],
): CounterSlip {
  const { stack, pullForwardMm, criteria, unit, joint } = asked;
  const other = notToTake(choice, choices);
  return {
    stack,
    stud: choice.entry,
    ...studCheckFor(choice.entry, stack, pullForwardMm, criteria, null, unit, joint),
    gapMeasured: pullForwardMm !== null,
    torqueFrom,
    studClass: studClassOf(choice.entry.stud),
    nutClass: stack.nut && nutClassOf(stack.nut),
    notThis: other && { name: other.entry.name, because: other.match.check.because },
  };
}

import type { JointFrom } from '../../../shared/words/job.ts';
import type { StudChoice } from '../../../shared/words/stud/choices.ts';
import type { CounterSlip, KeptSlip } from '../../../shared/words/stud/slip.ts';
import { checkStud, STUD_CALC_VERSION } from '../../calc/stud/checkStud.ts';
import type { Db } from '../../records/database/database.ts';
import type { Ctx } from '../../records/database/writing.ts';
import { type NewSlip, type PrintSlip, saveSlip } from '../../records/slips/slips.ts';
import { Remembered } from '../remembered.ts';
import { studCheckFor } from '../studChoices.ts';
import { type KitShelf, kitFor } from './kit.ts';
import { nutClassOf, studClassOf } from './markings.ts';
import { notToTake, type StackAsked } from './onShelf.ts';

const handedOver = new Remembered<CounterSlip>(50);

/** What the counter hands over for one stud of those that were checked; worked out with the nut of its kit. */
export function counterSlip(
  asked: StackAsked & { readonly stack: NonNullable<StackAsked['stack']> },
  choice: StudChoice,
  choices: readonly StudChoice[],
  torqueFrom: JointFrom['torque'],
  shelf: KitShelf,
): CounterSlip {
  const other = notToTake(choice, choices);
  const from = [asked, choice.entry, other, torqueFrom, shelf];
  return handedOver.once(from, () => slipOf(asked, choice, other, torqueFrom, shelf));
}

function slipOf(
  asked: StackAsked & { readonly stack: NonNullable<StackAsked['stack']> },
  choice: StudChoice,
  other: StudChoice | null,
  torqueFrom: JointFrom['torque'],
  shelf: KitShelf,
): CounterSlip {
  const { stack, pullForwardMm, criteria, unit, joint } = asked;
  const { input, check } = studCheckFor(choice.entry, stack, pullForwardMm, criteria, null, unit, joint);
  const kit = kitFor(input, check, shelf, unit);
  const { nut } = kit.input;
  return {
    stack,
    stud: choice.entry,
    input: kit.input,
    check: kit.nut === null ? check : checkStud(kit.input, unit),
    kit,
    gapMeasured: pullForwardMm !== null,
    torqueFrom,
    studClass: studClassOf(choice.entry.stud),
    nutClass: nut && nutClassOf(nut),
    notThis: other && { name: other.entry.name, because: other.match.check.because },
  };
}

/** Saves what was answered, with the version of the calculation that answered it. */
export function keepSlip(
  db: Db,
  ctx: Ctx,
  slip: Omit<NewSlip, 'calcVersion'>,
  print: PrintSlip,
): Promise<KeptSlip> {
  return saveSlip(db, ctx, { ...slip, calcVersion: STUD_CALC_VERSION }, print);
}

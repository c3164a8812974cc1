import { Refusal } from '../../../shared/words/refusal.ts';
import type { KeptSlip } from '../../../shared/words/stud/slip.ts';
import type { Fits, StudCheckInput } from '../../../shared/words/stud/stud.ts';
import type { SlipRestedOn, Wrong } from '../../../shared/words/trends/wrong.ts';
import { checkStud } from '../../calc/stud/checkStud.ts';
import { getEntry } from '../../records/catalogue.ts';
import type { Db } from '../../records/database/database.ts';
import { slipsResting } from '../../records/trends/wrong.ts';
import { breath } from '../work/breath.ts';

/** The counter slips that rested on it, answered again with what is right; the worst first, closed ones at the end. */
export async function slipsRestedOn(
  db: Db,
  wrong: Wrong,
  timeZone: string,
): Promise<readonly SlipRestedOn[]> {
  const slips: SlipRestedOn[] = [];
  for (const { slip, counted, closed } of await slipsResting(db, wrong, timeZone)) {
    const { number, day, who, customerReference, answered } = slip;
    slips.push({
      number,
      day,
      who,
      customerReference,
      stackName: answered.stack.name,
      studName: answered.stud.name,
      counted,
      before: answered.check.fits,
      ...(await answeredAgain(db, slip, wrong)),
      closed,
    });
    await breath();
  }
  return slips.sort((a, b) => weight(a) - weight(b));
}

async function answeredAgain(
  db: Db,
  slip: KeptSlip,
  { what, id }: Wrong,
): Promise<Pick<SlipRestedOn, 'now' | 'because'>> {
  const { answered, asked } = slip;
  try {
    const right = await withRight(db, answered.input, answered.stack.nut, { what, id });
    if (right === null) return { now: null, because: '' };
    const { fits, because } = checkStud(right, asked.unit);
    return { now: fits, because };
  } catch (error) {
    if (error instanceof Refusal) return { now: null, because: error.faults[0]?.message ?? '' };
    throw error;
  }
}

/** The question of then, with the stud or the flexplate stack of today; null where the catalog has none any more. */
async function withRight(
  db: Db,
  input: StudCheckInput,
  nutOfStack: StudCheckInput['nut'],
  { what, id }: Pick<Wrong, 'what' | 'id'>,
): Promise<StudCheckInput | null> {
  if (what === 'stud') {
    const entry = await getEntry(db, 'stud', id);
    return entry && { ...input, stud: entry.body.stud };
  }
  if (what === 'stack') {
    const entry = await getEntry(db, 'stack', id);
    // A nut of the shop's own shelf stays; the one of the stack comes with it.
    const own = JSON.stringify(input.nut) !== JSON.stringify(nutOfStack);
    return entry && { ...input, stack: entry.body.stack, nut: own ? input.nut : entry.body.nut };
  }
  return input;
}

const RANK: Readonly<Record<Fits, number>> = { no: 0, 'with-care': 1, yes: 2 };

/** Handed over as fitting and now not, then what can't be answered, then what is answered less well. */
function weight({ closed, counted, before, now }: SlipRestedOn): number {
  if (closed !== null) return 20;
  const here = counted ? 0 : 5;
  if (now === null) return here + 1;
  if (RANK[now] >= RANK[before]) return here + (now === before ? 4 : 3);
  return now === 'no' ? here : here + 2;
}

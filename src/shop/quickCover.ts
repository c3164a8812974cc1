import type { Bending } from '../../shared/words/bending/bending.ts';
import {
  type CoverCheck,
  type CoverCheckInput,
  type CoverShape,
  type CutPlanAnswer,
  isMeasured,
  type MeasuredCheck,
} from '../../shared/words/cover.ts';
import type { LengthUnit } from '../../shared/words/print.ts';
import { type Fault, Refusal } from '../../shared/words/refusal.ts';
import { checkWhatIsThere } from '../calc/cover/checkCover.ts';
import type { CoverNumbers } from '../calc/cover/coverNumbers.ts';
import { type BendingAsked, type BendingTold, bendingFor, lasts } from './bending/bendings.ts';
import { cutPlanFor } from './cutPlanFor.ts';
import { Remembered } from './remembered.ts';
import { whatDecides } from './whatDecides.ts';
import { judged, numbersOf } from './work/apart.ts';
import type { Asker } from './work/workPool.ts';

/** How a cover bends is asked with these; what is checked of it comes along. */
export type Bent = Omit<BendingAsked, 'check' | 'unit' | 'only'>;

/** A cover without a job, worked out once. */
export interface QuickAnswer {
  readonly check: CoverCheck | null;
  readonly bending: BendingTold | null;
  readonly plan: CutPlanAnswer | null;
  /** Ids of the findings that decided it, or that a person is to judge first. */
  readonly decides: readonly string[];
  readonly faults: readonly Fault[];
}

/** What the readings say, before anything is asked of the bending. */
export async function quickCheck(
  input: CoverCheckInput | null,
  unit: LengthUnit,
  asker?: Asker,
): Promise<Pick<QuickAnswer, 'check' | 'faults'> & { readonly numbers: CoverNumbers | null }> {
  const none = { numbers: null, check: null };
  if (input === null) return { ...none, faults: [] };
  try {
    if (input.stations.length === 0) {
      return { numbers: null, check: checkWhatIsThere(input, unit), faults: [] };
    }
    const numbers = await numbersOf(input, asker);
    return { numbers, check: await judged(numbers, unit, [], asker), faults: [] };
  } catch (error) {
    if (error instanceof Refusal) return { ...none, faults: error.faults };
    throw error;
  }
}

type Track = Pick<CoverShape, 'trackInnerDiameterMm' | 'trackOuterDiameterMm'>;

const remembered = new Remembered<QuickAnswer>(50);

/** What the readings say, how the cover bends, and the passes of the cut. */
export async function quickAnswer(
  input: CoverCheckInput | null,
  cover: Track | null,
  { asker, ...bent }: Bent,
  unit: LengthUnit,
): Promise<QuickAnswer> {
  const key = Remembered.key([input, cover, bent, unit]);
  const known = remembered.get(key);
  if (known !== undefined) return known;
  const answer = await workedOut(input, cover, { ...bent, asker }, unit);
  if (answer.bending === null || lasts(answer.bending)) remembered.set(key, answer);
  return answer;
}

async function workedOut(
  input: CoverCheckInput | null,
  cover: Track | null,
  bent: Bent,
  unit: LengthUnit,
): Promise<QuickAnswer> {
  const { asker } = bent;
  const { numbers, check: bare, faults } = await quickCheck(input, unit, asker);
  if (bare === null) return { check: null, bending: null, plan: null, decides: [], faults };
  const bending = isMeasured(bare) ? await bendingFor({ ...bent, check: bare, unit }) : null;
  const found = bending?.findings ?? [];
  const check = numbers === null || found.length === 0 ? bare : await judged(numbers, unit, found, asker);
  const plan = cutPlanFor(check, cover, bent.criteria.lathe);
  return { check, bending, plan, decides: whatDecides(check), faults };
}

/** What follows the cut that is tried; the other cases do not move with it. */
const FOLLOWS = ['new', 'after', 'ring-unbonded'] as const;

/** The same cover with another cut: what it leaves, and how it then bends. Nothing where that cannot be worked out. */
export async function triedCut(
  input: CoverCheckInput | null,
  cutMm: number,
  bent: Bent,
  unit: LengthUnit,
): Promise<{ readonly check: MeasuredCheck | null; readonly bending: Bending | null }> {
  const nothing = { check: null, bending: null };
  if (input === null || !Number.isFinite(cutMm) || cutMm < 0) return nothing;
  const cut = { ...input, plannedCutMm: cutMm };
  try {
    const { asker } = bent;
    const numbers = await numbersOf(cut, asker);
    const bare = await judged(numbers, unit, [], asker);
    const { bending, findings } = await bendingFor({ ...bent, check: bare, unit, only: FOLLOWS });
    return { check: findings.length === 0 ? bare : await judged(numbers, unit, findings, asker), bending };
  } catch (error) {
    if (error instanceof Refusal) return nothing;
    throw error;
  }
}

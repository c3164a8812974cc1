import type { CoverCheck, CoverCheckInput, MeasuredCheck } from '../../../shared/words/cover.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import type { StudMatch } from '../../../shared/words/stud/stud.ts';
import { judgeCover, workOutCover } from '../../calc/cover/checkCover.ts';
import type { CoverNumbers } from '../../calc/cover/coverNumbers.ts';
import { type MatchStudsInput, matchStuds } from '../../calc/stud/match/matchStuds.ts';
import { checkAsked } from '../doubts/coverDoubts.ts';
import { BEST_TOLD } from '../studChoices.ts';
import type { Answers, QuestionName } from './questions.ts';
import { type Asker, WorkPool } from './workPool.ts';

const pool = new WorkPool();

/** The program stops: nothing more is worked out. */
export function stopWork(): Promise<void> {
  return pool.close();
}

/** For a machine so loaded that the time limit would refuse what it only has no time for. */
export const giveTime = pool.giveTime.bind(pool);

/** How much is worked out beside the requests, and waits for it. */
export const workWaiting = pool.waiting.bind(pool);

/** One answer, worked out beside the requests. Throws as the pool does. */
export function apart<Name extends QuestionName>(
  name: Name,
  asked: Parameters<Answers[Name]>,
  asker?: Asker,
): Promise<ReturnType<Answers[Name]>> {
  return pool.ask(name, asked, asker);
}

/** A cover measured by hand is worked out at once, quicker than it is handed over; one of more readings beside the requests. */
const MOST_AT_ONCE = 60;

export function isLarge({ stations, marks }: Pick<CoverCheckInput, 'stations' | 'marks'>): boolean {
  const walls = stations.reduce((sum, { wallMm }) => sum + wallMm.length, 0);
  return walls + marks.length > MOST_AT_ONCE;
}

export async function numbersOf(input: CoverCheckInput, asker?: Asker): Promise<CoverNumbers> {
  return isLarge(input) ? apart('numbers', [input], asker) : workOutCover(input);
}

export async function judged(
  numbers: CoverNumbers,
  unit: LengthUnit,
  further: readonly Finding[] = [],
  asker?: Asker,
): Promise<MeasuredCheck> {
  return isLarge(numbers.input)
    ? apart('judged', [numbers, unit, further], asker)
    : judgeCover(numbers, unit, further);
}

/** A cover sent by a script; see `checkAsked`. */
export async function askedCover(
  input: CoverCheckInput,
  confirmed: readonly string[],
  asker: Asker,
): Promise<CoverCheck> {
  return isLarge(input) ? apart('asked', [input, confirmed], asker) : checkAsked(input, confirmed);
}

/** Studs that a script sent, every one in full. */
export async function matchedStuds(input: MatchStudsInput, asker: Asker): Promise<readonly StudMatch[]> {
  return input.studs.length > MOST_AT_ONCE ? apart('studs', [input], asker) : matchStuds(input);
}

/** The best of the catalog's. */
export async function bestOfCatalog(input: MatchStudsInput, asker: Asker): Promise<readonly StudMatch[]> {
  return input.studs.length > MOST_AT_ONCE ? apart('best', [input, BEST_TOLD], asker) : matchStuds(input);
}

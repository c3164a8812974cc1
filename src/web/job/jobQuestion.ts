import { day as daySchema } from '../../../shared/schemas/fields.ts';
import { DECISION_KINDS, OPEN_STAGES, STAGES } from '../../../shared/words/job.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import {
  isPlaceInList,
  JOB_ORDERS,
  type JobQuestion,
  type JobSort,
  MOST_LISTED,
} from '../../records/jobs/findJobs.ts';
import type { Fields } from '../request/typed.ts';

/** A column, or with a "-" from its other end. */
export const JOB_SORTS = JOB_ORDERS.flatMap((by) => [by, `-${by}`] as const);

function jobSort(typed: (typeof JOB_SORTS)[number]): JobSort {
  const by = JOB_ORDERS.find((one) => typed.endsWith(one))!;
  return { by, down: typed.startsWith('-') };
}

const aDay = daySchema('The day');

/**
 * Which jobs are asked for: by the page, by the CSV and by JSON alike. What cannot be used is refused with a sentence
 * for each field, never left out in silence.
 */
export function jobQuestion(query: Fields, otherwise: { readonly limit: number }): JobQuestion {
  const faults: Fault[] = [];
  const given = (name: string) => (query[name] ?? '').trim();
  const refuse = (name: string, sentence: string): undefined => {
    faults.push({ path: name, message: `"${given(name).slice(0, 40)}" ${sentence}` });
    return undefined;
  };
  const oneOf = <T extends string>(name: string, what: string, choices: readonly T[]): T | undefined => {
    if (given(name) === '') return undefined;
    const found = choices.find((choice) => choice === given(name));
    return found ?? refuse(name, `is not a ${what}; choose one of ${choices.join(', ')}.`);
  };
  const day = (name: string): string | undefined => {
    if (given(name) === '') return undefined;
    if (aDay.safeParse(given(name)).success) return given(name);
    return refuse(name, 'is not a day; enter one as in 2026-11-24.');
  };
  const limit = (): number | undefined => {
    if (given('limit') === '') return otherwise.limit;
    const asked = /^\d{1,3}$/.test(given('limit')) ? Number(given('limit')) : 0;
    if (asked >= 1 && asked <= MOST_LISTED) return asked;
    return refuse('limit', `is not a number of jobs; enter 1 to ${MOST_LISTED}.`);
  };
  const after = (): string | undefined => {
    if (given('after') === '' || isPlaceInList(given('after'))) return given('after') || undefined;
    return refuse('after', 'is not a place in the list; begin at the first page.');
  };
  const sort = oneOf('sort', 'sorting', JOB_SORTS);
  const stage = oneOf('stage', 'state', ['open', ...STAGES, 'all'] as const);
  const asked: JobQuestion = {
    text: given('text') || undefined,
    familyId: given('family') || undefined,
    stage: stage === 'open' ? OPEN_STAGES : stage === 'all' ? STAGES : stage,
    who: given('who') || undefined,
    outcome: oneOf('outcome', 'decision', DECISION_KINDS),
    from: day('from'),
    to: day('to'),
    ...(sort !== undefined && { sort: jobSort(sort) }),
    after: after(),
    limit: limit() ?? otherwise.limit,
  };
  if (faults.length > 0) throw new Refusal('wrong-values', faults);
  return asked;
}

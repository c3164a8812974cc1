import { type DecisionKind, STAGES } from '../../../shared/words/job.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import type { JobQuestion } from '../../records/jobs/findJobs.ts';
import type { Fields } from '../request/typed.ts';

const OUTCOMES: readonly DecisionKind[] = ['face', 'face-and-ring', 'replace'];
const DAY = /^\d{4}-\d\d-\d\d$/;

/** Which jobs are asked for, read strictly: what cannot be meant is refused, never left out in silence. */
export function jobQuestion(query: Fields, otherwise: { readonly limit: number }): JobQuestion {
  const faults: Fault[] = [];
  const given = (name: string) => (query[name] ?? '').trim();
  const oneOf = <T extends string>(name: string, choices: readonly T[]): T | undefined => {
    const found = choices.find((choice) => choice === given(name));
    if (given(name) !== '' && found === undefined) {
      faults.push({
        path: name,
        message: `"${given(name).slice(0, 40)}" is no ${name}; it is ${choices.join(', ')}.`,
      });
    }
    return found;
  };
  const day = (name: string): string | undefined => {
    if (given(name) === '' || DAY.test(given(name))) return given(name) || undefined;
    faults.push({
      path: name,
      message: `"${given(name).slice(0, 40)}" is no day; write it as in 2026-11-24.`,
    });
    return undefined;
  };
  const limit = given('limit') === '' ? otherwise.limit : Number(given('limit'));
  const [stage, outcome] = [oneOf('stage', STAGES), oneOf('outcome', OUTCOMES)];
  const [from, to] = [day('from'), day('to')];
  if (faults.length > 0) throw new Refusal('wrong-values', faults);
  return {
    ...(given('text') !== '' && { text: given('text') }),
    ...(given('family') !== '' && { familyId: given('family') }),
    ...(stage && { stage }),
    ...(outcome && { outcome }),
    ...(from && { from }),
    ...(to && { to }),
    ...(given('after') !== '' && { after: given('after') }),
    limit,
  };
}

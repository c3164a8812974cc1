import { coverRowOf } from '../../shared/words/answerRows.ts';
import type { CoverCheck } from '../../shared/words/cover.ts';
import { verdict } from '../calc/judge/verdict.ts';

/** Ids of the findings that decided a cover's verdict, and of a bending that a person has to judge beside it. */
export function whatDecides({ findings }: CoverCheck): readonly string[] {
  const { decidedBy } = verdict(findings);
  const toJudge = findings.filter(({ id, status }) => status === 'caution' && coverRowOf(id) === 'bending');
  return [...(decidedBy ? [decidedBy] : []), ...toJudge].map(({ id }) => id);
}

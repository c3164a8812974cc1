/** A value that is asked about before it is kept. */
export interface Question {
  readonly question: string;
  /** What was probably meant, ready for the box. */
  readonly meant: string | null;
  readonly typed: string;
}

export type Typed =
  | { readonly does: 'use-meant' | 'confirm' | 'nothing' | 'skip' | 'back' | 'repeat' }
  | { readonly does: 'read'; readonly typed: string };

/** What Enter does with what stands in the box: a letter that steers, or a reading. */
export function whatEnterDoes(box: string, question: Question | null): Typed {
  const typed = box.trim();
  if (question !== null && question.meant !== null && /^u$/i.test(typed)) return { does: 'use-meant' };
  if (question !== null && /^y$/i.test(typed)) return { does: 'confirm' };
  if (typed === '') return { does: 'nothing' };
  if (/^s$/i.test(typed)) return { does: 'skip' };
  if (/^b$/i.test(typed)) return { does: 'back' };
  if (/^r$/i.test(typed)) return { does: 'repeat' };
  return { does: 'read', typed };
}

/** A value that is asked about before it is kept. */
export interface Question {
  readonly question: string;
  /** What was probably meant, ready for the box. */
  readonly meant: string | null;
  /** As typed, to be confirmed; null where it cannot be a reading as it stands. */
  readonly typed: string | null;
}

export type Typed =
  | {
      readonly does:
        | 'use-meant'
        | 'confirm'
        | 'measure-again'
        | 'nothing'
        | 'no-mark'
        | 'begin-mark'
        | 'skip'
        | 'back'
        | 'repeat';
    }
  | { readonly does: 'read'; readonly typed: string };

const STEERS: Readonly<Record<string, Exclude<Typed['does'], 'read'>>> = {
  '': 'nothing',
  n: 'no-mark',
  h: 'begin-mark',
  s: 'skip',
  b: 'back',
  r: 'repeat',
};

/** What Enter does with what stands in the box: a letter that steers, or a reading. */
export function whatEnterDoes(box: string, question: Question | null): Typed {
  const typed = box.trim();
  const letter = typed.toLowerCase();
  if (question !== null && question.meant !== null && letter === 'u') return { does: 'use-meant' };
  if (question !== null && question.typed !== null && letter === 'y') return { does: 'confirm' };
  if (question !== null && letter === 'a') return { does: 'measure-again' };
  const steers = STEERS[letter];
  return steers === undefined ? { does: 'read', typed } : { does: steers };
}

import type { LengthUnit } from '../../../../shared/words/print.ts';
import { Refusal } from '../../../../shared/words/refusal.ts';
import type { NamedStud, StudCheckInput, StudMatch } from '../../../../shared/words/stud/stud.ts';
import { checkStud } from '../checkStud.ts';
import { bestFirst } from './bestFirst.ts';

export interface MatchStudsInput extends Omit<StudCheckInput, 'stud'> {
  readonly studs: readonly NamedStud[];
}

/**
 * Every stud against one stack, best first.
 * Throws: a Refusal, as checkStud; a field of a stud is named under `studs.N`.
 */
export function matchStuds(input: MatchStudsInput, unit: LengthUnit = 'mm'): StudMatch[] {
  const { studs, ...shared } = input;
  const matches = studs.map(({ id, stud }, i) => {
    const asked = { ...shared, stud };
    const check = underPath('stud.', `studs.${i}.`, () => checkStud(asked, unit));
    const { fits, decidedBy, byMm } = check;
    return { input: asked, match: { id, fits, decidedBy, byMm, check } };
  });
  return bestFirst(matches);
}

function underPath<T>(from: string, to: string, run: () => T): T {
  try {
    return run();
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    throw new Refusal(
      error.code,
      error.faults.map(({ path, message }) => ({
        path: path.startsWith(from) ? to + path.slice(from.length) : path,
        message,
      })),
    );
  }
}

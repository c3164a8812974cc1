import type { LengthUnit } from '../../../../shared/words/print.ts';
import { Refusal } from '../../../../shared/words/refusal.ts';
import type { NamedStud, StudCheckInput, StudMatch } from '../../../../shared/words/stud/stud.ts';
import { fitOf } from '../checkStud.ts';
import { bestFirst, matched } from './bestFirst.ts';

export interface MatchStudsInput extends Omit<StudCheckInput, 'stud'> {
  readonly studs: readonly NamedStud[];
}

/**
 * Every stud against one stack, best first.
 * Throws: a Refusal, as checkStud; a field of a stud is named under `studs.N`.
 */
export function matchStuds(input: MatchStudsInput, unit: LengthUnit = 'mm'): StudMatch[] {
  const { studs, ...shared } = input;
  const ranked = studs.map(({ id, stud }, i) => ({
    id,
    fit: underPath('stud.', `studs.${i}.`, () => fitOf({ ...shared, stud }, unit)),
  }));
  return matched(bestFirst(ranked), unit);
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

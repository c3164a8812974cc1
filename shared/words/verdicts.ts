import type { Verdict } from './cover.ts';
import type { Status } from './finding.ts';
import type { DecisionKind } from './job.ts';
import type { Fits, StudCheck } from './stud/stud.ts';

/** What the program says of a cover, as every page, sheet, list and sentence says it. */
export const VERDICT_WORD: Readonly<Record<Verdict, string>> = {
  face: 'Face it',
  'face-if-sound': 'Face it if the crack test is clean',
  'face-and-ring': 'Weld a stiffening ring, re-measure, then face',
  replace: 'Replace it',
  'measure-again': 'Measure again',
  'plan-again': 'Change the cut',
  'advice-only': 'No minimum set: advice only',
};

/** What a person signs. */
export const DECISION_WORD: Readonly<Record<DecisionKind, string>> = {
  face: VERDICT_WORD.face,
  'face-and-ring': VERDICT_WORD['face-and-ring'],
  replace: VERDICT_WORD.replace,
};

/** The decision that follows from a verdict; null where the verdict leaves it to a person. */
export const FOLLOWS: Readonly<Record<Verdict, DecisionKind | null>> = {
  face: 'face',
  'face-if-sound': 'face',
  'face-and-ring': 'face-and-ring',
  replace: 'replace',
  'measure-again': null,
  'plan-again': null,
  'advice-only': null,
};

/** Of a large catalog, the studs that are not listed after the best. */
export function leftOutOfMany(count: number): string {
  return `${count} ${count === 1 ? 'stud' : 'studs'} that ${count === 1 ? 'fits' : 'fit'} no better`;
}

/** Whether a stud goes into a flexplate stack. */
export const FIT_WORD: Readonly<Record<Fits, string>> = {
  yes: 'fits',
  'with-care': 'fits with care',
  no: 'does not fit',
};

export const FIT_STATUS: Readonly<Record<Fits, Status>> = { yes: 'pass', 'with-care': 'caution', no: 'fail' };

/** Whether the tightened joint carries the engine, without too much for the stud. */
export const HOLDS_WORD: Readonly<Record<StudCheck['holds'], string>> = {
  yes: 'Joint holds',
  no: 'Joint does not hold',
  'not-checked': 'Joint not checked',
};

export const HOLDS_STATUS: Readonly<Record<StudCheck['holds'], Status>> = {
  yes: 'pass',
  no: 'fail',
  'not-checked': 'not-checked',
};

type Held = Pick<StudCheck, 'holds' | 'findings'>;

/** Whether what fails is that it slips; else the torque is more than the stud should get. */
export function slips({ holds, findings }: Held): boolean {
  return holds === 'no' && findings.some(({ id, status }) => id === 'joint-slip' && status === 'fail');
}

/** A stud that does not fit, or does not hold, is recorded only with the reason it is used all the same. */
export function needsReason({ fits, holds }: Pick<StudCheck, 'fits' | 'holds'>): boolean {
  return fits === 'no' || holds === 'no';
}

/** A joint that would hold, but overloads its stud, is not said to slip. */
export function holdsInWords(check: Held): string {
  return check.holds === 'no' && !slips(check) ? 'Torque too much for the stud' : HOLDS_WORD[check.holds];
}

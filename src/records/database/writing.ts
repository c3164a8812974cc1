import type { Refusal } from '../../../shared/words/refusal.ts';
import { refuse } from './errors.ts';

/** Who changes something, why, and when. */
export interface Ctx {
  /** Initials, 1 to 8 characters. */
  readonly who: string;
  readonly why?: string;
  readonly now: () => Date;
}

export interface Signed {
  readonly who: string;
  readonly why: string;
  readonly at: string;
}

const LONGEST_WHO = 8;
const LONGEST_WHY = 2000;

/** Who, why and when, checked, to be kept with a change. Throws Refusal without usable initials. */
export function signed(ctx: Ctx, why: string | undefined): Signed {
  const unfit = unfitInitials(ctx.who);
  if (unfit !== null) throw unfit;
  const who = ctx.who.normalize('NFC').trim();
  const reason = (why ?? ctx.why ?? '').trim();
  if (reason.length > LONGEST_WHY) {
    throw refuse(
      'why-too-long',
      'why',
      `The reason has ${reason.length} characters; at most ${LONGEST_WHY} are allowed.`,
    );
  }
  refuseNul('why', reason);
  return { who, why: reason, at: ctx.now().toISOString() };
}

/** Why nothing can be signed with these initials; null where it can. */
export function unfitInitials(typed: string): Refusal | null {
  const who = typed.normalize('NFC').trim();
  if (who === '') {
    return refuse(
      'who-needed',
      'who',
      'Enter your initials, 1 to 8 characters. Nothing is saved without them.',
    );
  }
  if (who.length <= LONGEST_WHO && !hasControls(who)) return null;
  return refuse(
    'who-too-long',
    'who',
    `The initials "${printable(who)}" are not 1 to 8 plain characters; shorten them.`,
  );
}

/** Whether two initials mean the same person. */
export function samePerson(a: string, b: string): boolean {
  return key(a) === key(b);
}

/** Whether two initials may well be one person's: points, hyphens and blanks do not tell two people apart. */
export function mayBeSamePerson(a: string, b: string): boolean {
  const bare = (text: string) => key(text).replace(/[^\p{L}\p{N}]/gu, '');
  return samePerson(a, b) || (bare(a) !== '' && bare(a) === bare(b));
}

/** How names and numbers are compared: letter case, width and outer blanks do not tell them apart. */
export function key(text: string): string {
  return text.normalize('NFKC').trim().replace(/\s+/gu, ' ').toLowerCase();
}

/** A cover's own number as it is compared: scribed by hand, A-17, a 17 and A17 are one cover. */
export function coverKey(text: string): string {
  return key(text).replace(/[^\p{L}\p{N}]/gu, '');
}

/** Characters nobody sees: they would make two names that look alike differ. */
export function hasControls(text: string): boolean {
  return /[\p{Cc}\p{Cf}]/u.test(text);
}

/** What was typed, fit to be repeated in a sentence. */
export function printable(text: string): string {
  const plain = text.replace(/[\p{Cc}\p{Cf}]+/gu, ' ');
  return plain.length > 60 ? `${plain.slice(0, 60)}…` : plain;
}

/** PostgreSQL cannot store NUL, and an unpaired surrogate would be stored as another character. */
export function refuseNul(path: string, text: string): void {
  if (/[\0\p{Surrogate}]/u.test(text)) {
    throw refuse(
      'bad-text',
      path,
      `The text "${printable(text)}" has a character that can't be saved. Enter it again.`,
    );
  }
}

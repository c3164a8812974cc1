import { randomInt } from 'node:crypto';
import type { Db } from '../database/database.ts';
import { refuse } from '../database/errors.ts';

const SHORTEST = 10;
const LONGEST = 200;

/** argon2id, which is this package's own choice, with 19 MiB twice over: what OWASP's password storage sheet asks for at least. */
const COST = { memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

/** It comes with the first password: a shop without accounts never needs it. */
const argon2 = () => import('@node-rs/argon2');

async function hash(password: string): Promise<string> {
  return (await argon2()).hash(password, COST);
}

/** A password ready to be kept: hashed outside the transaction, which must not wait for it. */
export interface NewPassword {
  readonly hash: string;
  /** True when a keeper or the command line made it: good for a week, to be replaced by the person's own. */
  readonly start: boolean;
}

/** Throws Refusal for one that is too short or too long. */
export async function ownPassword(typed: string): Promise<NewPassword> {
  const length = [...asKept(typed)].length;
  if (length < SHORTEST) {
    throw refuse(
      'password-short',
      'password',
      `The password has ${length} characters; it needs at least ${SHORTEST}. A few plain words are easiest.`,
    );
  }
  if (length > LONGEST) {
    throw refuse(
      'password-long',
      'password',
      `The password has ${length} characters; it may have at most ${LONGEST}. Use a shorter one.`,
    );
  }
  return { hash: await hash(asKept(typed)), start: false };
}

/** Makes a password that is shown once. */
export async function startPassword(): Promise<{ readonly typed: string; readonly password: NewPassword }> {
  const typed = codeWords(4);
  return { typed, password: { hash: await hash(typed), start: true } };
}

const LETTERS = 'abcdefghjkmnpqrstuvwxyz23456789';

/** Groups of four letters and digits that are not mistaken for one another: 20 bits each, nearly. */
export function codeWords(groups: number): string {
  const group = () => Array.from({ length: 4 }, () => LETTERS[randomInt(LETTERS.length)]).join('');
  return Array.from({ length: groups }, group).join('-');
}

export async function keepPassword(
  db: Db,
  personId: number,
  password: NewPassword,
  at: string,
): Promise<void> {
  const values = { hash: password.hash, start: password.start ? 1 : 0, set_at: at };
  await db
    .insertInto('person_password')
    .values({ person_id: personId, ...values })
    .onConflict((conflict) => conflict.column('person_id').doUpdateSet(values))
    .execute();
}

/** Whether a password is the one kept. Where none is kept the answer is no, after the same time. */
export async function isPassword(typed: string, kept: string | null): Promise<boolean> {
  nobodys ??= hash(codeWords(8));
  const { verify } = await argon2();
  const right = await verify(kept ?? (await nobodys), asKept(typed.slice(0, 4 * LONGEST)));
  return right && kept !== null;
}

/** Hash of a password nobody has: checking it makes an unknown name take as long as a wrong password. */
let nobodys: Promise<string> | null = null;

/** One Unicode form for what different keyboards write differently. */
function asKept(typed: string): string {
  return typed.normalize('NFKC');
}

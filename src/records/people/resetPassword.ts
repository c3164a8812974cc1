import type { Person } from '../../../shared/words/people.ts';
import { type Db, write } from '../database/database.ts';
import type { Ctx } from '../database/writing.ts';
import { startPassword } from './passwords.ts';
import { changePassword, getPerson } from './people.ts';
import { withdrawTokensOf } from './tokens.ts';

/** Told once to whoever asked for the reset. */
export interface PasswordReset {
  readonly person: Person;
  readonly typed: string;
  /** Names of the tokens that were good until now. */
  readonly withdrawn: readonly string[];
}

/**
 * Somebody else gives a person a new password: a start password, to be replaced by their own. Whoever had the old one
 * is out: every session ends and every token is withdrawn.
 */
export async function resetPassword(db: Db, ctx: Ctx, id: number): Promise<PasswordReset> {
  const { typed, password } = await startPassword();
  return write(db, async (trx) => {
    const changed = await changePassword(trx, ctx, { id, password });
    const withdrawn = await withdrawTokensOf(trx, ctx, id);
    return { person: (await getPerson(trx, id)) ?? changed, typed, withdrawn };
  });
}

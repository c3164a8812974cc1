import type { Person } from '../../../shared/words/people.ts';
import type { Db } from '../database/database.ts';
import { isPassword } from './passwords.ts';
import { personCalled } from './people.ts';

const START_DAYS = 7;
const DAY_MS = 24 * 3600 * 1000;

/** The person whose name, or initials, and password these are; null for whatever other reason, after the same time. */
export async function personWith(
  db: Db,
  typed: { readonly name: string; readonly password: string },
  now: Date,
): Promise<Person | null> {
  const person = await personCalled(db, typed.name);
  const kept = await db
    .selectFrom('person_password')
    .selectAll()
    .where('person_id', '=', person?.id ?? 0)
    .executeTakeFirst();
  const right = await isPassword(typed.password, kept?.hash ?? null);
  if (!right || person === null || person.retired || kept === undefined) return null;
  const outlived = kept.start === 1 && now.getTime() - Date.parse(kept.set_at) > START_DAYS * DAY_MS;
  return outlived ? null : person;
}

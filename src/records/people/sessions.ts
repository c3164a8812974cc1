import { createHash, randomBytes } from 'node:crypto';
import { deviceWord, type Person, type SessionLine } from '../../../shared/words/people.ts';
import { type Db, write } from '../database/database.ts';
import { lastUse, noteUse } from './lastUsed.ts';

const HOUR_MS = 3600 * 1000;
/** A session nobody used for this long is over. */
export const IDLE_MS = 12 * HOUR_MS;
/** However much it is used, a session is over after this. */
export const LIFE_MS = 14 * 24 * HOUR_MS;

/** Somebody signed in: who, and whether their password is still the one they were given. */
export interface Standing {
  readonly person: Person;
  readonly mustChoosePassword: boolean;
}

/** A new secret of 256 bits, and the only form in which it is kept. */
export function newSecret(prefix = ''): { readonly secret: string; readonly hash: string } {
  const secret = `${prefix}${randomBytes(32).toString('base64url')}`;
  return { secret, hash: hashOf(secret) };
}

export function hashOf(secret: string): string {
  return createHash('sha256').update(secret).digest('hex');
}

/** Begins a session; what it returns is told to the browser and to nobody else. */
export async function beginSession(
  db: Db,
  session: { readonly personId: number; readonly device: string; readonly now: Date },
): Promise<string> {
  const { secret, hash } = newSecret();
  const at = session.now.toISOString();
  const over = new Date(session.now.getTime() - LIFE_MS).toISOString();
  await write(db, async (trx) => {
    await trx.deleteFrom('session').where('began_at', '<', over).execute();
    await trx
      .insertInto('session')
      .values({
        token_hash: hash,
        person_id: session.personId,
        device: deviceWord(session.device),
        began_at: at,
        used_at: at,
      })
      .execute();
  });
  return secret;
}

/** Whose session this is; null when it is unknown or over, or the person retired. */
export async function findSession(db: Db, secret: string, now: Date): Promise<Standing | null> {
  const token_hash = hashOf(secret);
  const row = await db
    .selectFrom('session')
    .innerJoin('person', 'person.id', 'session.person_id')
    .innerJoin('person_password', 'person_password.person_id', 'person.id')
    .select(['began_at', 'used_at', 'start'])
    .select(['person.id', 'person.revision', 'person.name', 'initials', 'role'])
    .where('token_hash', '=', token_hash)
    .where('retired', '=', 0)
    .executeTakeFirst();
  const used = row && { token_hash, used_at: row.used_at };
  if (row === undefined || used === undefined) return null;
  if (isOver(row.began_at, lastUse(db, 'session', used, now), now)) return null;
  noteUse(db, 'session', used, now);
  const { id, revision, name, initials, role } = row;
  return {
    person: { id, revision, name, initials, role, retired: false },
    mustChoosePassword: row.start === 1,
  };
}

/** A session dated in the future by a wrong clock is over too, or it would last until then. */
function isOver(beganAt: string, usedAt: string, now: Date): boolean {
  const age = Math.abs(now.getTime() - Date.parse(beganAt));
  return age > LIFE_MS || now.getTime() - Date.parse(usedAt) > IDLE_MS;
}

export async function endSession(db: Db, secret: string): Promise<void> {
  await write(db, (trx) => trx.deleteFrom('session').where('token_hash', '=', hashOf(secret)).execute());
}

/** Signs somebody out everywhere. */
export async function endSessions(db: Db, personId: number): Promise<void> {
  await write(db, (trx) => trx.deleteFrom('session').where('person_id', '=', personId).execute());
}

/** Where somebody is signed in, newest first. */
export async function sessionsOf(db: Db, personId: number, now: Date): Promise<readonly SessionLine[]> {
  const rows = await db
    .selectFrom('session')
    .select(['token_hash', 'device', 'began_at', 'used_at'])
    .where('person_id', '=', personId)
    .orderBy('began_at', 'desc')
    .execute();
  return rows
    .map((row) => ({ ...row, used_at: lastUse(db, 'session', row, now) }))
    .filter((row) => !isOver(row.began_at, row.used_at, now))
    .map((row) => ({ device: deviceWord(row.device), beganAt: row.began_at, usedAt: row.used_at }));
}

import type { Person, Role, TokenLine } from '../../../shared/words/people.ts';
import { ROLES } from '../../../shared/words/people.ts';
import { type Db, write } from '../database/database.ts';
import { NotInRecords, refuse } from '../database/errors.ts';
import { type Ctx, hasControls, printable, signed } from '../database/writing.ts';
import { lastUse, noteUse } from './lastUsed.ts';
import { noteAbout } from './people.ts';
import { hashOf, newSecret } from './sessions.ts';

const LONGEST_NAME = 60;

/** Issues a token for a script; it acts for a person and signs with their initials. Returned once, kept as a hash. */
export async function issueToken(
  db: Db,
  ctx: Ctx,
  token: { readonly name: string; readonly personId: number; readonly role: Role },
): Promise<string> {
  const by = signed(ctx, undefined);
  const name = token.name.normalize('NFC').trim();
  if (name === '' || name.length > LONGEST_NAME || hasControls(name)) {
    throw refuse(
      'bad-token-name',
      'tokenName',
      `"${printable(name)}" can't be used. Enter what the token is for, in 1 to ${LONGEST_NAME} plain characters.`,
    );
  }
  if (!ROLES.includes(token.role)) {
    throw refuse('bad-role', 'tokenRole', 'Choose a role: reader, recorder or manager.');
  }
  const { secret, hash } = newSecret('cw_');
  await write(db, async (trx) => {
    const person = await noteAbout(trx, { ...ctx, why: `token "${name}"` }, token.personId, 'token');
    if (person.retired) {
      throw refuse('retired', 'tokenPerson', `${person.name} is retired. Choose somebody who works here.`);
    }
    await trx
      .insertInto('api_token')
      .values({
        token_hash: hash,
        name,
        person_id: person.id,
        role: token.role,
        who: by.who,
        at: by.at,
        used_at: null,
        withdrawn_at: null,
        withdrawn_by: null,
      })
      .execute();
  });
  return secret;
}

/** A token that was withdrawn stays so; withdrawing it again does nothing. */
export async function withdrawToken(db: Db, ctx: Ctx, id: number): Promise<void> {
  const by = signed(ctx, undefined);
  await write(db, async (trx) => {
    const row = await trx.selectFrom('api_token').selectAll().where('id', '=', id).executeTakeFirst();
    if (row === undefined) throw new NotInRecords('token', `There is no token ${id} here.`);
    if (row.withdrawn_at !== null) return;
    await noteAbout(trx, { ...ctx, why: `token "${row.name}"` }, row.person_id, 'token-withdrawn');
    await trx
      .updateTable('api_token')
      .set({ withdrawn_at: by.at, withdrawn_by: by.who })
      .where('id', '=', id)
      .execute();
  });
}

/** Withdraws every token that acts for a person; returns the names of those that were good until now. */
export async function withdrawTokensOf(db: Db, ctx: Ctx, personId: number): Promise<readonly string[]> {
  const rows = await db
    .selectFrom('api_token')
    .select(['id', 'name'])
    .where('person_id', '=', personId)
    .where('withdrawn_at', 'is', null)
    .orderBy('id')
    .execute();
  for (const { id } of rows) await withdrawToken(db, ctx, id);
  return rows.map(({ name }) => name);
}

/** Who a token acts for, with the lesser of its role and theirs; null when it is unknown or withdrawn. */
export async function findToken(db: Db, secret: string, now: Date): Promise<Person | null> {
  const row = await db
    .selectFrom('api_token')
    .innerJoin('person', 'person.id', 'api_token.person_id')
    .select(['api_token.token_hash', 'api_token.role as tokenRole', 'used_at'])
    .select(['person.id', 'person.revision', 'person.name', 'initials', 'person.role'])
    .where('token_hash', '=', hashOf(secret))
    .where('withdrawn_at', 'is', null)
    .where('retired', '=', 0)
    .executeTakeFirst();
  if (row === undefined) return null;
  noteUse(db, 'api_token', row, now);
  const { id, revision, name, initials, role, tokenRole } = row;
  const lesser = ROLES.indexOf(tokenRole) < ROLES.indexOf(role) ? tokenRole : role;
  return { id, revision, name, initials, role: lesser, retired: false };
}

/** Every token ever issued, newest first. */
export async function listTokens(db: Db): Promise<readonly TokenLine[]> {
  const rows = await db.selectFrom('api_token').selectAll().orderBy('id', 'desc').execute();
  return rows.map((row) => ({
    id: row.id,
    name: row.name,
    personId: row.person_id,
    role: row.role,
    issuedBy: row.who,
    issuedAt: row.at,
    usedAt: lastUse(db, 'api_token', row),
    withdrawnAt: row.withdrawn_at,
  }));
}

import { ROLE_WORD } from '../../../shared/words/people.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import { startedAs } from '../../root.ts';
import { SettingsRefused } from '../../settings.ts';
import { shopOfCommand } from '../carry/commandFolder.ts';
import type { Db } from '../database/database.ts';
import { ShopWillNotOpen } from '../database/errors.ts';
import { openRecords } from '../database/open.ts';
import { CONSOLE, listPeople, personCalled, reinstatePerson } from './people.ts';
import { resetPassword } from './resetPassword.ts';

const USAGE = `Choose one of these:
  npm run people -- list
  npm run people -- reset NAME     a new password for a manager who forgot the old one; a name or initials
  npm run people -- reinstate NAME lets a retired person sign in again`;

/** What the command line does about people; returns what it prints. Throws Refusal. */
export async function peopleCommand(db: Db, words: readonly string[], now: () => Date): Promise<string> {
  const [verb, ...rest] = words;
  const name = rest.join(' ');
  if (verb === 'list') {
    const people = await listPeople(db);
    if (people.length === 0) return 'Nobody has an account yet.';
    const lines = people.map(
      ({ name, initials, role, retired }) =>
        `${name}, ${initials}, ${ROLE_WORD[role]}${retired ? ', retired' : ''}`,
    );
    return lines.join('\n');
  }
  if ((verb !== 'reset' && verb !== 'reinstate') || name === '') return USAGE;
  const person = await personCalled(db, name);
  if (person === null) {
    throw new Refusal('not-found', [
      { path: 'name', message: `There is no account for "${name}". To see them all: npm run people -- list` },
    ]);
  }
  const ctx = { who: CONSOLE, why: 'from the command line', now };
  if (verb === 'reinstate') {
    await reinstatePerson(db, ctx, { id: person.id, fromRevision: person.revision });
    return `${person.name} can sign in again.`;
  }
  const { typed, withdrawn } = await resetPassword(db, ctx, person.id);
  const tokens = withdrawn.map((token) => `\nThe token "${token}" is withdrawn.`).join('');
  return `The password for ${person.name} is now ${typed}\nIt works for a week; they choose their own when they sign in. They are signed out everywhere.${tokens}`;
}

async function main(): Promise<void> {
  const now = () => new Date();
  try {
    const shop = await openRecords({ ...shopOfCommand(process.env), now });
    try {
      console.log(await peopleCommand(shop.db, process.argv.slice(2), now));
    } finally {
      await shop.close();
    }
  } catch (error) {
    const told =
      error instanceof Refusal || error instanceof SettingsRefused || error instanceof ShopWillNotOpen;
    if (!told) throw error;
    console.error(error.message);
    process.exitCode = 1;
  }
}

if (startedAs('peopleCommand')) await main();

import type { Migration } from './migration.ts';
import { postgres } from './postgres/002-people.postgres.ts';
import { sqlite } from './sqlite/002-people.sqlite.ts';

/**
 * Who may come in. What was changed about a person is only added to; passwords and sessions are no records of work
 * and are replaced or taken away. Of a password, a session and a token only a hash is kept.
 */
export const people: Migration = { number: 2, name: 'people', sqlite, postgres };

import type { Migration } from './migration.ts';
import { postgres } from './postgres/004-sent.postgres.ts';
import { sqlite } from './sqlite/004-sent.sqlite.ts';

/** Which job a sender's own id made, so that a request sent twice makes one job. */
export const sent: Migration = { number: 4, name: 'sent', sqlite, postgres };

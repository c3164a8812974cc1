import { postgres } from './004-sent.postgres.ts';
import { sqlite } from './004-sent.sqlite.ts';
import type { Migration } from './migration.ts';

/** Which job a sender's own id made, so that a request sent twice makes one job. */
export const sent: Migration = { number: 4, name: 'sent', sqlite, postgres };

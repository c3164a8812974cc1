import type { Migration } from './migration.ts';
import { postgres } from './postgres/012-closed.postgres.ts';
import { sqlite } from './sqlite/012-closed.sqlite.ts';

/** A job received by mistake is closed with a reason, and may be opened again. */
export const closed: Migration = { number: 12, name: 'closed', sqlite, postgres };

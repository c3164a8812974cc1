import { postgres } from './012-closed.postgres.ts';
import { sqlite } from './012-closed.sqlite.ts';
import type { Migration } from './migration.ts';

/** A job received by mistake is closed with a reason, and may be opened again. */
export const closed: Migration = { number: 12, name: 'closed', sqlite, postgres };

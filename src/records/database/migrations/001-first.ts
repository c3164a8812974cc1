import type { Migration } from './migration.ts';
import { postgres } from './postgres/001-first.postgres.ts';
import { sqlite } from './sqlite/001-first.sqlite.ts';

/**
 * The revisions and readings are the truth and are only added to. `entry` and `job` carry what does not change
 * (kind, id, number) and a projection of the newest revision, there to be found by.
 */
export const first: Migration = { number: 1, name: 'first', sqlite, postgres };

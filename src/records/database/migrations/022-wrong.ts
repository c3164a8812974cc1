import type { Migration } from './migration.ts';
import { postgres } from './postgres/022-wrong.postgres.ts';
import { sqlite } from './sqlite/022-wrong.sqlite.ts';

/** What was found to be wrong, and the jobs that were gone through because of it; only ever added to. */
export const wrong: Migration = { number: 22, name: 'wrong', sqlite, postgres };

import type { Migration } from './migration.ts';
import { postgres } from './postgres/014-master-checks.postgres.ts';
import { sqlite } from './sqlite/014-master-checks.sqlite.ts';

/** Checks of a gauge on a master, and those withdrawn because they were mistyped. */
export const masterChecks: Migration = { number: 14, name: 'master-checks', sqlite, postgres };

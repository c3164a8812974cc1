import type { Migration } from './migration.ts';
import { postgres } from './postgres/018-studies.postgres.ts';
import { sqlite } from './sqlite/018-studies.sqlite.ts';

/** Studies of a gauge: who reads what, in which order, and each reading. */
export const studies: Migration = { number: 18, name: 'studies', sqlite, postgres };

import type { Migration } from './migration.ts';
import { postgres } from './postgres/024-sorted.postgres.ts';
import { sqlite } from './sqlite/024-sorted.sqlite.ts';

/** Lists of jobs and slips are read in the order of any of their columns. */
export const sorted: Migration = { number: 24, name: 'sorted', sqlite, postgres };

import type { Migration } from './migration.ts';
import { postgres } from './postgres/010-slips.postgres.ts';
import { sqlite } from './sqlite/010-slips.sqlite.ts';

/** Counter slips as they were answered and printed, what they took off the shelf, and the jobs begun from them. */
export const slips: Migration = { number: 10, name: 'slips', sqlite, postgres };

import { postgres } from './010-slips.postgres.ts';
import { sqlite } from './010-slips.sqlite.ts';
import type { Migration } from './migration.ts';

/** Counter slips as they were answered and printed, what they took off the shelf, and the jobs begun from them. */
export const slips: Migration = { number: 10, name: 'slips', sqlite, postgres };

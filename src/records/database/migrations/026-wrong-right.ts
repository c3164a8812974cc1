import type { Migration } from './migration.ts';
import { postgres } from './postgres/026-wrong-right.postgres.ts';
import { sqlite } from './sqlite/026-wrong-right.sqlite.ts';

/** What is right instead of a wrong gauge, the one revision of the limits that was wrong, and slips gone through. */
export const wrongRight: Migration = { number: 26, name: 'wrong-right', sqlite, postgres };

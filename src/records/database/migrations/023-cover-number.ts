import type { Migration } from './migration.ts';
import { postgres } from './postgres/023-cover-number.postgres.ts';
import { sqlite } from './sqlite/023-cover-number.sqlite.ts';

/** A cover's own number, by which its jobs are found together; and when a copy of the records left this machine. */
export const coverNumber: Migration = { number: 23, name: 'cover-number', sqlite, postgres };

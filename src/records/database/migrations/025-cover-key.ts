import type { Migration } from './migration.ts';
import { postgres } from './postgres/025-cover-key.postgres.ts';
import { sqlite } from './sqlite/025-cover-key.sqlite.ts';

/** A cover's own number is found however it was punctuated. */
export const coverKeys: Migration = { number: 25, name: 'cover-key', sqlite, postgres };

import type { Migration } from './migration.ts';
import { postgres } from './postgres/027-steels.postgres.ts';
import { sqlite } from './sqlite/027-steels.sqlite.ts';

/** Steels of the catalog. */
export const steels: Migration = { number: 27, name: 'steels', sqlite, postgres };

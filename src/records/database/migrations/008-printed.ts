import type { Migration } from './migration.ts';
import { postgres } from './postgres/008-printed.postgres.ts';
import { sqlite } from './sqlite/008-printed.sqlite.ts';

/** Sheet and tag as they were printed at signing, and the style and type they are printed with, each kept once. */
export const printed: Migration = { number: 8, name: 'printed', sqlite, postgres };

import type { Migration } from './migration.ts';
import { postgres } from './postgres/009-nuts.postgres.ts';
import { sqlite } from './sqlite/009-nuts.sqlite.ts';

/** The catalogue keeps nuts, washers and shims as well. */
export const nuts: Migration = { number: 9, name: 'nuts', sqlite, postgres };

import { postgres } from './009-nuts.postgres.ts';
import { sqlite } from './009-nuts.sqlite.ts';
import type { Migration } from './migration.ts';

/** The catalogue keeps nuts, washers and shims as well. */
export const nuts: Migration = { number: 9, name: 'nuts', sqlite, postgres };

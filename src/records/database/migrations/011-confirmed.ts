import { postgres } from './011-confirmed.postgres.ts';
import { sqlite } from './011-confirmed.sqlite.ts';
import type { Migration } from './migration.ts';

/** Whether somebody was asked about a reading and said it is right; NULL for readings from before this was kept. */
export const confirmed: Migration = { number: 11, name: 'confirmed', sqlite, postgres };

import type { Migration } from './migration.ts';
import { postgres } from './postgres/011-confirmed.postgres.ts';
import { sqlite } from './sqlite/011-confirmed.sqlite.ts';

/** Whether somebody was asked about a reading and said it is right; NULL for readings from before this was kept. */
export const confirmed: Migration = { number: 11, name: 'confirmed', sqlite, postgres };

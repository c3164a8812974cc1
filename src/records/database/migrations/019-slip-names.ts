import type { Migration } from './migration.ts';
import { postgres } from './postgres/019-slip-names.postgres.ts';
import { sqlite } from './sqlite/019-slip-names.sqlite.ts';

/** Which slips name an entry of the catalog: a view of what is kept, so that nothing is kept twice. */
export const slipNames: Migration = { number: 19, name: 'slip-names', sqlite, postgres };

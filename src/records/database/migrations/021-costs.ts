import type { Migration } from './migration.ts';
import { postgres } from './postgres/021-costs.postgres.ts';
import { sqlite } from './sqlite/021-costs.sqlite.ts';

/** What each way costs the shop: every revision, only ever added to. */
export const costs: Migration = { number: 21, name: 'costs', sqlite, postgres };

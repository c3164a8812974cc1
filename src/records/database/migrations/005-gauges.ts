import type { Migration } from './migration.ts';
import { postgres } from './postgres/005-gauges.postgres.ts';
import { sqlite } from './sqlite/005-gauges.sqlite.ts';

/** The catalogue keeps gauges as well. */
export const gauges: Migration = { number: 5, name: 'gauges', sqlite, postgres };

import { postgres } from './005-gauges.postgres.ts';
import { sqlite } from './005-gauges.sqlite.ts';
import type { Migration } from './migration.ts';

/** The catalogue keeps gauges as well. */
export const gauges: Migration = { number: 5, name: 'gauges', sqlite, postgres };

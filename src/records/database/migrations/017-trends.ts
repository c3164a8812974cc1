import type { Migration } from './migration.ts';
import { postgres } from './postgres/017-trends.postgres.ts';
import { sqlite } from './sqlite/017-trends.sqlite.ts';

/** Of each job what the trends count, and what it rests on. Both are made from the job, and can be made anew. */
export const trends: Migration = { number: 17, name: 'trends', sqlite, postgres };

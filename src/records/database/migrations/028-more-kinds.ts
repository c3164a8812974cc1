import type { Migration } from './migration.ts';
import { postgres } from './postgres/028-more-kinds.postgres.ts';
import { sqlite } from './sqlite/028-more-kinds.sqlite.ts';

/** Linings, lathes and rings of the catalog. */
export const moreKinds: Migration = { number: 28, name: 'more-kinds', sqlite, postgres };

import type { Migration } from './migration.ts';
import { postgres } from './postgres/020-inspection-lists.postgres.ts';
import { sqlite } from './sqlite/020-inspection-lists.sqlite.ts';

/** Inspection lists of the shop, what was found of them on a job, and photos of their items. */
export const inspectionLists: Migration = { number: 20, name: 'inspection-lists', sqlite, postgres };

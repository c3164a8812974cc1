import type { Migration } from './migration.ts';
import { postgres } from './postgres/006-typed.postgres.ts';
import { sqlite } from './sqlite/006-typed.sqlite.ts';

/** Beside the body of an entry, what was typed for its quantities. */
export const typed: Migration = { number: 6, name: 'typed', sqlite, postgres };

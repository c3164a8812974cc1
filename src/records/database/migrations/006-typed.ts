import { postgres } from './006-typed.postgres.ts';
import { sqlite } from './006-typed.sqlite.ts';
import type { Migration } from './migration.ts';

/** Beside the body of an entry, what was typed for its quantities. */
export const typed: Migration = { number: 6, name: 'typed', sqlite, postgres };

import type { Migration } from './migration.ts';
import { postgres } from './postgres/016-shelf.postgres.ts';
import { sqlite } from './sqlite/016-shelf.sqlite.ts';

/** Covers on the shelf: put there, moved, reserved, taken off. */
export const shelf: Migration = { number: 16, name: 'shelf', sqlite, postgres };

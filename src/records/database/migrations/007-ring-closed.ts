import type { Migration } from './migration.ts';
import { postgres } from './postgres/007-ring-closed.postgres.ts';
import { sqlite } from './sqlite/007-ring-closed.sqlite.ts';

/** A word on each signed decision that counted on a ring nobody recorded as joined to the pads. */
export const ringClosed: Migration = { number: 7, name: 'ring-closed', sqlite, postgres };

import { postgres } from './007-ring-closed.postgres.ts';
import { sqlite } from './007-ring-closed.sqlite.ts';
import type { Migration } from './migration.ts';

/** A word on each signed decision that counted on a ring nobody recorded as joined to the pads. */
export const ringClosed: Migration = { number: 7, name: 'ring-closed', sqlite, postgres };

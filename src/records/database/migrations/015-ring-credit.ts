import type { Migration } from './migration.ts';
import { postgres } from './postgres/015-ring-credit.postgres.ts';
import { sqlite } from './sqlite/015-ring-credit.sqlite.ts';

/**
 * Whether a job’s decision counts on a ring that is not recorded as joined to the pads. Of jobs kept before, whether it
 * may: their ring was asked for, or is on; each is looked at when it is asked about.
 */
export const ringCredit: Migration = { number: 15, name: 'ring-credit', sqlite, postgres };

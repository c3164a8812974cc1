import type { Migration } from './migration.ts';
import { postgres } from './postgres/003-photos.postgres.ts';
import { sqlite } from './sqlite/003-photos.sqlite.ts';

/** Photos of a job: rows that name a file by its content; adding one is a revision. */
export const photos: Migration = { number: 3, name: 'photos', sqlite, postgres };

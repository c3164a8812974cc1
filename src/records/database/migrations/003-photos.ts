import { postgres } from './003-photos.postgres.ts';
import { sqlite } from './003-photos.sqlite.ts';
import type { Migration } from './migration.ts';

/** Photos of a job: rows that name a file by its content; adding one is a revision. */
export const photos: Migration = { number: 3, name: 'photos', sqlite, postgres };

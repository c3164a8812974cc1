import type { Migration } from './migration.ts';
import { postgres } from './postgres/013-words.postgres.ts';
import { sqlite } from './sqlite/013-words.sqlite.ts';

/** Jobs are found by their words through an index, however many there are. */
export const words: Migration = { number: 13, name: 'words', sqlite, postgres };

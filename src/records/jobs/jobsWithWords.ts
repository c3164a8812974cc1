import { PostgresAdapter, sql } from 'kysely';
import type { Db } from '../database/database.ts';

/** Where more jobs have the words, the list is read newest first instead: a page of them is soon full. */
const MOST_FOUND = 500;
/** Runs of characters the index is asked for: enough to leave few jobs over, whose words are then read. */
const MOST_RUNS = 40;
const RUN = 3;
const LAST_CHARACTER = '\u{10ffff}';

/** A condition on jobs: the word, as `key` writes it, stands somewhere in what a job is found by. */
export function holdsWord(word: string) {
  return sql<boolean>`job.search like ${`%${word.replace(/[\\%_]/g, '\\$&')}%`} escape '\\'`;
}

/**
 * The jobs that hold every word, also as a part of another; null where they are many. Asked of each database's own
 * index of runs of characters: it names every job that can hold the words, and their words are read only then.
 */
export async function jobsWithWords(db: Db, words: readonly string[]): Promise<readonly number[] | null> {
  if (words.length === 0) return null;
  const onPostgres = db.getExecutor().adapter instanceof PostgresAdapter;
  const found = onPostgres ? await foundByPostgres(db, words) : await foundBySqlite(db, words);
  return found.length > MOST_FOUND ? null : found.map(({ id }) => id);
}

type Found = readonly { readonly id: number }[];

async function foundByPostgres(db: Db, words: readonly string[]): Promise<Found> {
  const { rows } = await sql<{ id: number }>`select job.id from job
    where runs_of(search) @> ${runsOf(words)}::text[] and ${allOf(words)} limit ${MOST_FOUND + 1}`.execute(
    db,
  );
  return rows;
}

async function foundBySqlite(db: Db, words: readonly string[]): Promise<Found> {
  const runs = runsOf(words);
  const whole = runs.filter((run) => [...run].length === RUN);
  if (whole.length > 0) {
    const asked = whole.map((run) => `"${run.replaceAll('"', '""')}"`).join(' ');
    const { rows } = await sql<{
      id: number;
    }>`select job.id from job_words cross join job on job.id = job_words.rowid
      where job_words match ${asked} and ${allOf(words)} limit ${MOST_FOUND + 1}`.execute(db);
    return rows;
  }
  // FTS5 asks for whole runs only; a shorter word is how one begins.
  const longest = runs[0] ?? '';
  const { rows } = await sql<{ id: number }>`select distinct doc as id from job_runs
    where term >= ${longest} and term < ${longest + LAST_CHARACTER} limit ${MOST_FOUND + 1}`.execute(db);
  return rows;
}

function allOf(words: readonly string[]) {
  return sql.join(words.map(holdsWord), sql` and `);
}

/** The runs of three characters in the words; a shorter word is its own. */
function runsOf(words: readonly string[]): string[] {
  const runs = words.flatMap((word) => {
    const characters = [...word];
    const last = Math.max(0, characters.length - RUN);
    return Array.from({ length: last + 1 }, (_, i) => characters.slice(i, i + RUN).join(''));
  });
  return [...new Set(runs)].sort((a, b) => b.length - a.length).slice(0, MOST_RUNS);
}

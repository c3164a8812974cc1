import type Database from 'better-sqlite3';
import type { SqliteDatabase, SqliteStatement } from 'kysely';

const MOST_KEPT = 200;
/** A statement of hundreds of rows is seldom sent twice with as many. */
const LONGEST_KEPT = 4000;

/**
 * A database that prepares each statement once and keeps it, the one used longest ago dropped first: preparing takes
 * longer than most of what is asked. SQLite prepares a kept one again by itself where the tables have changed.
 */
export class PreparedOnce implements SqliteDatabase {
  readonly #raw: Database.Database;
  readonly #kept = new Map<string, SqliteStatement>();

  constructor(raw: Database.Database) {
    this.#raw = raw;
  }

  prepare(sql: string): SqliteStatement {
    if (sql.length > LONGEST_KEPT) return this.#anew(sql);
    const statement = this.#kept.get(sql) ?? this.#anew(sql);
    this.#kept.delete(sql);
    this.#kept.set(sql, statement);
    for (const oldest of this.#kept.keys()) {
      if (this.#kept.size <= MOST_KEPT) break;
      this.#kept.delete(oldest);
    }
    return statement;
  }

  close(): void {
    this.#kept.clear();
    this.#raw.close();
  }

  #anew(sql: string): SqliteStatement {
    const statement = this.#raw.prepare<unknown[]>(sql);
    return {
      reader: statement.reader,
      all: (parameters) => statement.all(...parameters),
      run: (parameters) => statement.run(...parameters),
      // One that is still being walked through could not be run again.
      iterate: (parameters) => this.#raw.prepare<unknown[]>(sql).iterate(...parameters),
    };
  }
}

/** Pieces of migrations, in SQLite's words. What a released migration uses is never changed. */

/** Refuses every change of a table's rows, whoever asks. */
export const never = (table: string): string => `
  CREATE TRIGGER ${table}_never_updated BEFORE UPDATE ON ${table}
    BEGIN SELECT RAISE(ABORT, '${table} is only ever added to'); END;
  CREATE TRIGGER ${table}_never_deleted BEFORE DELETE ON ${table}
    BEGIN SELECT RAISE(ABORT, '${table} is only ever added to'); END;`;

/** A moment as toISOString writes it. */
export const time = (column: string): string =>
  `${column} TEXT NOT NULL CHECK (${column} GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]T*Z')`;

export const who = `who TEXT NOT NULL CHECK (length(who) BETWEEN 1 AND 8 AND trim(who) = who)`;

export const jsonObject = (column: string): string =>
  `${column} TEXT NOT NULL CHECK (json_valid(${column}) AND substr(${column}, 1, 1) = '{')`;

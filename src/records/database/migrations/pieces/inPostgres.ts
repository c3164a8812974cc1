/** Pieces of migrations, in PostgreSQL's words: each means what its namesake in inSqlite.ts means. */

/** Compared and sorted by code point, as SQLite does, whatever language the server speaks. */
export const TEXT = 'text COLLATE "C"';

/** What SQLite's INTEGER PRIMARY KEY does: a row given no id gets the one after the highest. Writers take turns. */
export const countsUp = (table: string): string => `
  CREATE TRIGGER ${table}_counts_up BEFORE INSERT ON ${table}
    FOR EACH ROW WHEN (NEW.id IS NULL) EXECUTE FUNCTION count_up();`;

/** Refuses what happens to a row ('UPDATE', 'DELETE', 'UPDATE OF number'), whoever asks. */
export const refused = (table: string, name: string, what: string, sentence: string): string => `
  CREATE TRIGGER ${table}_${name} BEFORE ${what} ON ${table}
    FOR EACH ROW EXECUTE FUNCTION refuse_change('${sentence}');`;

/** Refuses to lose the rows of a table, one by one or all at once. */
export const neverDeleted = (table: string, sentence: string): string => `
  ${refused(table, 'never_deleted', 'DELETE', sentence)}
  CREATE TRIGGER ${table}_never_emptied BEFORE TRUNCATE ON ${table}
    FOR EACH STATEMENT EXECUTE FUNCTION refuse_change('${sentence}');`;

/** Refuses every change of a table's rows, whoever asks. */
export const never = (table: string): string => `
  ${refused(table, 'never_updated', 'UPDATE', `${table} is only ever added to`)}
  ${neverDeleted(table, `${table} is only ever added to`)}`;

/** A moment as toISOString writes it. */
export const time = (column: string): string =>
  `${column} ${TEXT} NOT NULL CHECK (${column} ~ '^[0-9]{4}-[0-9]{2}-[0-9]{2}T.*Z$')`;

export const who = `who ${TEXT} NOT NULL CHECK (length(who) BETWEEN 1 AND 8 AND trim(who) = who)`;

export const jsonObject = (column: string): string =>
  `${column} ${TEXT} NOT NULL CHECK (left(${column}, 1) = '{' AND json_typeof(${column}::json) = 'object')`;

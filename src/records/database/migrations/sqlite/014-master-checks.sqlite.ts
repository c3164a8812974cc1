import { never, time, who } from '../pieces/inSqlite.ts';

export const sqlite = `
  CREATE TABLE master_check (
    id TEXT PRIMARY KEY CHECK (length(id) BETWEEN 16 AND 64),
    gauge_id TEXT NOT NULL,
    day TEXT NOT NULL CHECK (day GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    ${time('at')},
    ${who},
    master_mm REAL NOT NULL CHECK (master_mm >= 0),
    master_typed TEXT NOT NULL,
    reading_mm REAL NOT NULL,
    reading_typed TEXT NOT NULL,
    confirmed INTEGER NOT NULL CHECK (confirmed IN (0, 1)),
    due_on TEXT CHECK (due_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]')
  ) STRICT;
  CREATE INDEX master_check_by_gauge ON master_check (gauge_id, at);
  ${never('master_check')}

  CREATE TABLE master_check_withdrawn (
    check_id TEXT PRIMARY KEY REFERENCES master_check (id),
    ${time('at')},
    ${who},
    why TEXT NOT NULL CHECK (why <> '')
  ) STRICT;
  ${never('master_check_withdrawn')}
`;

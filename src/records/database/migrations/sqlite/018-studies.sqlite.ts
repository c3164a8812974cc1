import { jsonObject, never, time, who } from '../pieces/inSqlite.ts';

export const sqlite = `
  CREATE TABLE study (
    number INTEGER PRIMARY KEY CHECK (number >= 1),
    sent_id TEXT NOT NULL UNIQUE CHECK (length(sent_id) BETWEEN 16 AND 64),
    gauge_id TEXT NOT NULL,
    ${time('at')},
    day TEXT NOT NULL CHECK (day GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    ${who},
    ${jsonObject('body')}
  ) STRICT;
  CREATE INDEX study_by_gauge ON study (gauge_id, number);
  ${never('study')}

  CREATE TABLE study_reading (
    id TEXT PRIMARY KEY CHECK (length(id) BETWEEN 16 AND 64),
    study_number INTEGER NOT NULL REFERENCES study (number),
    nth INTEGER NOT NULL CHECK (nth >= 1),
    place INTEGER NOT NULL CHECK (place >= 0),
    ${time('at')},
    ${who},
    value_mm REAL NOT NULL,
    typed TEXT NOT NULL,
    confirmed INTEGER NOT NULL CHECK (confirmed IN (0, 1)),
    UNIQUE (study_number, nth)
  ) STRICT;
  ${never('study_reading')}

  CREATE TABLE study_reading_withdrawn (
    reading_id TEXT PRIMARY KEY REFERENCES study_reading (id),
    ${time('at')},
    ${who},
    why TEXT NOT NULL CHECK (why <> '')
  ) STRICT;
  ${never('study_reading_withdrawn')}

  CREATE TABLE study_stopped (
    study_number INTEGER PRIMARY KEY REFERENCES study (number),
    ${time('at')},
    ${who},
    why TEXT NOT NULL CHECK (why <> '')
  ) STRICT;
  ${never('study_stopped')}
`;

import { jsonObject, never, time, who } from '../pieces/inSqlite.ts';

export const sqlite = `
  CREATE TABLE slip (
    number INTEGER PRIMARY KEY CHECK (number >= 1),
    sent_id TEXT NOT NULL UNIQUE CHECK (length(sent_id) BETWEEN 16 AND 64),
    ${time('at')},
    day TEXT NOT NULL CHECK (day GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    ${who},
    customer_reference TEXT NOT NULL,
    stack_name TEXT NOT NULL,
    stud_name TEXT NOT NULL,
    fits TEXT NOT NULL CHECK (fits IN ('yes', 'with-care', 'no')),
    search TEXT NOT NULL,
    calc_version TEXT NOT NULL,
    ${jsonObject('asked')},
    ${jsonObject('answered')},
    html TEXT NOT NULL CHECK (html <> '')
  ) STRICT;
  ${never('slip')}

  CREATE TABLE slip_count (
    slip_number INTEGER NOT NULL REFERENCES slip (number),
    place INTEGER NOT NULL CHECK (place >= 1),
    what TEXT NOT NULL CHECK (what IN ('out', 'back')),
    ${time('at')},
    ${who},
    why TEXT NOT NULL,
    ${jsonObject('body')},
    PRIMARY KEY (slip_number, place)
  ) STRICT;
  ${never('slip_count')}

  CREATE TABLE slip_job (
    job_id INTEGER PRIMARY KEY REFERENCES job (id),
    slip_number INTEGER NOT NULL REFERENCES slip (number)
  ) STRICT;
  ${never('slip_job')}
`;

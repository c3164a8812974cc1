import { never, time, who } from '../pieces/inSqlite.ts';

export const sqlite = `
  CREATE TABLE wrong (
    number INTEGER PRIMARY KEY CHECK (number >= 1),
    ${time('at')},
    ${who},
    what TEXT NOT NULL,
    id TEXT NOT NULL,
    name TEXT NOT NULL,
    since TEXT NOT NULL,
    reason TEXT NOT NULL CHECK (reason <> '')
  ) STRICT;
  ${never('wrong')}

  CREATE TABLE wrong_closed (
    wrong_number INTEGER NOT NULL REFERENCES wrong (number),
    job_id INTEGER NOT NULL REFERENCES job (id),
    ${time('at')},
    ${who},
    word TEXT NOT NULL CHECK (word <> ''),
    PRIMARY KEY (wrong_number, job_id)
  ) STRICT;
  ${never('wrong_closed')}
`;

import { never, time, who } from '../pieces/inSqlite.ts';

export const sqlite = `
  CREATE TABLE ring_closed (
    job_id INTEGER NOT NULL,
    revision INTEGER NOT NULL,
    word TEXT NOT NULL CHECK (length(word) BETWEEN 1 AND 2000 AND trim(word) = word),
    ${who},
    ${time('at')},
    PRIMARY KEY (job_id, revision),
    FOREIGN KEY (job_id, revision) REFERENCES job_revision (job_id, revision)
  ) STRICT;
  ${never('ring_closed')}
`;

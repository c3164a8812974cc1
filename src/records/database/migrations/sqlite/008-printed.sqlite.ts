import { never } from '../pieces/inSqlite.ts';

export const sqlite = `
  CREATE TABLE printed_part (
    hash TEXT PRIMARY KEY CHECK (length(hash) = 64 AND hash NOT GLOB '*[^0-9a-f]*'),
    kind TEXT NOT NULL CHECK (kind IN ('css', 'woff2')),
    base64 TEXT NOT NULL CHECK (base64 <> '')
  ) STRICT;
  ${never('printed_part')}

  CREATE TABLE printed (
    job_id INTEGER NOT NULL,
    revision INTEGER NOT NULL,
    paper TEXT NOT NULL CHECK (paper IN ('sheet', 'tag')),
    html TEXT NOT NULL CHECK (html <> ''),
    PRIMARY KEY (job_id, revision, paper),
    FOREIGN KEY (job_id, revision) REFERENCES job_revision (job_id, revision)
  ) STRICT;
  ${never('printed')}
`;

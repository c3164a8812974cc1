import { never } from '../pieces/inSqlite.ts';

export const sqlite = `
  CREATE TABLE job_sent (
    id TEXT PRIMARY KEY CHECK (length(id) BETWEEN 16 AND 64),
    job_id INTEGER NOT NULL REFERENCES job (id)
  ) STRICT;
  ${never('job_sent')}
`;

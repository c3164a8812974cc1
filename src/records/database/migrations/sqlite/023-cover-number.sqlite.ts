import { never, time, who } from '../pieces/inSqlite.ts';

export const sqlite = `
  ALTER TABLE job ADD COLUMN cover_key TEXT NOT NULL DEFAULT '';
  CREATE INDEX job_by_cover ON job (cover_key, id) WHERE cover_key <> '';

  CREATE TABLE copy_away (
    number INTEGER PRIMARY KEY,
    ${time('at')},
    ${who},
    whither TEXT NOT NULL CHECK (whither <> '')
  ) STRICT;
  ${never('copy_away')}
`;

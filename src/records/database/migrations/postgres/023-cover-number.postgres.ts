import { never, TEXT, time, who } from '../pieces/inPostgres.ts';

export const postgres = `
  ALTER TABLE job ADD COLUMN cover_key ${TEXT} NOT NULL DEFAULT '';
  CREATE INDEX job_by_cover ON job (cover_key, id) WHERE cover_key <> '';

  CREATE TABLE copy_away (
    number bigint PRIMARY KEY,
    ${time('at')},
    ${who},
    whither ${TEXT} NOT NULL CHECK (whither <> '')
  );
  ${never('copy_away')}
`;

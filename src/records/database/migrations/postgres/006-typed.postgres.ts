import { TEXT } from '../pieces/inPostgres.ts';

export const postgres = `
  ALTER TABLE entry_revision ADD COLUMN typed ${TEXT}
    CHECK (typed IS NULL OR (left(typed, 1) = '{' AND json_typeof(typed::json) = 'object'));
`;

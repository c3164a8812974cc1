import { jsonObject, never, time, who } from '../pieces/inSqlite.ts';

export const sqlite = `
  CREATE TABLE shelf_change (
    job_id INTEGER NOT NULL REFERENCES job (id),
    place INTEGER NOT NULL CHECK (place >= 1),
    what TEXT NOT NULL CHECK (what IN ('put', 'moved', 'reserved', 'freed', 'off')),
    ${time('at')},
    ${who},
    why TEXT NOT NULL,
    lies TEXT NOT NULL CHECK (lies <> ''),
    for_job_id INTEGER REFERENCES job (id),
    ${jsonObject('facts')},
    PRIMARY KEY (job_id, place)
  ) STRICT;
  CREATE INDEX shelf_change_for_job ON shelf_change (for_job_id);
  ${never('shelf_change')}
`;

import { jsonObject, never, TEXT, time, who } from '../pieces/inPostgres.ts';

export const postgres = `
  CREATE TABLE shelf_change (
    job_id bigint NOT NULL REFERENCES job (id),
    place bigint NOT NULL CHECK (place >= 1),
    what ${TEXT} NOT NULL CHECK (what IN ('put', 'moved', 'reserved', 'freed', 'off')),
    ${time('at')},
    ${who},
    why ${TEXT} NOT NULL,
    lies ${TEXT} NOT NULL CHECK (lies <> ''),
    for_job_id bigint REFERENCES job (id),
    ${jsonObject('facts')},
    PRIMARY KEY (job_id, place)
  );
  CREATE INDEX shelf_change_for_job ON shelf_change (for_job_id);
  ${never('shelf_change')}
`;

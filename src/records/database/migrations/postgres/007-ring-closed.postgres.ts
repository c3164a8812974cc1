import { never, TEXT, time, who } from '../pieces/inPostgres.ts';

export const postgres = `
  CREATE TABLE ring_closed (
    job_id bigint NOT NULL,
    revision bigint NOT NULL,
    word ${TEXT} NOT NULL CHECK (length(word) BETWEEN 1 AND 2000 AND trim(word) = word),
    ${who},
    ${time('at')},
    PRIMARY KEY (job_id, revision),
    FOREIGN KEY (job_id, revision) REFERENCES job_revision (job_id, revision)
  );
  ${never('ring_closed')}
`;

import { never, TEXT } from '../pieces/inPostgres.ts';

export const postgres = `
  CREATE TABLE job_sent (
    id ${TEXT} PRIMARY KEY CHECK (length(id) BETWEEN 16 AND 64),
    job_id bigint NOT NULL REFERENCES job (id)
  );
  ${never('job_sent')}
`;

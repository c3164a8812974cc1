import { never, TEXT } from '../pieces/inPostgres.ts';

export const postgres = `
  CREATE TABLE printed_part (
    hash ${TEXT} PRIMARY KEY CHECK (hash ~ '^[0-9a-f]{64}$'),
    kind ${TEXT} NOT NULL CHECK (kind IN ('css', 'woff2')),
    base64 ${TEXT} NOT NULL CHECK (base64 <> '')
  );
  ${never('printed_part')}

  CREATE TABLE printed (
    job_id bigint NOT NULL,
    revision bigint NOT NULL,
    paper ${TEXT} NOT NULL CHECK (paper IN ('sheet', 'tag')),
    html ${TEXT} NOT NULL CHECK (html <> ''),
    PRIMARY KEY (job_id, revision, paper),
    FOREIGN KEY (job_id, revision) REFERENCES job_revision (job_id, revision)
  );
  ${never('printed')}
`;

import { TEXT } from '../pieces/inPostgres.ts';

export const postgres = `
  CREATE TABLE job_trend (
    job_id bigint PRIMARY KEY REFERENCES job (id),
    version bigint NOT NULL,
    demo bigint NOT NULL CHECK (demo IN (0, 1)),
    stage ${TEXT} NOT NULL,
    outcome ${TEXT},
    family_id ${TEXT} NOT NULL,
    received_on ${TEXT} NOT NULL,
    signed_at ${TEXT},
    days_to_sign bigint,
    scrap_reason ${TEXT},
    wall_nm bigint,
    cut_nm bigint,
    left_nm bigint,
    peak_over_new double precision,
    pattern ${TEXT},
    comeback_of bigint
  );
  CREATE INDEX job_trend_by_comeback ON job_trend (comeback_of);
  CREATE INDEX job_trend_by_version ON job_trend (version);

  CREATE TABLE job_rests (
    job_id bigint NOT NULL REFERENCES job (id),
    what ${TEXT} NOT NULL,
    id ${TEXT} NOT NULL,
    revision bigint NOT NULL,
    since ${TEXT} NOT NULL,
    PRIMARY KEY (job_id, what, id)
  );
  CREATE INDEX job_rests_by_what ON job_rests (what, id, revision);
`;

import { never, TEXT, time, who } from '../pieces/inPostgres.ts';

export const postgres = `
  ALTER TABLE job_revision DROP CONSTRAINT job_revision_what_check;
  ALTER TABLE job_revision ADD CONSTRAINT job_revision_what_check CHECK (what IN
    ('received', 'looked', 'setup', 'plan', 'decision', 'cuts', 'studs', 'signature', 'reading', 'photo'));

  CREATE TABLE photo (
    id ${TEXT} PRIMARY KEY CHECK (length(id) BETWEEN 1 AND 64),
    job_id bigint NOT NULL,
    revision bigint NOT NULL,
    spot ${TEXT} NOT NULL CHECK (spot IN ('job', 'station', 'item')),
    angle_deg double precision CHECK (angle_deg BETWEEN -360 AND 360),
    radius_mm double precision CHECK (radius_mm > 0 AND radius_mm < 10000),
    item ${TEXT} CHECK (item IN ('welds', 'pads', 'stud-threads', 'crank-pilot', 'earlier-repairs')),
    hash ${TEXT} NOT NULL CHECK (hash ~ '^[0-9a-f]{64}$'),
    kind ${TEXT} NOT NULL CHECK (kind IN ('jpeg', 'png', 'webp')),
    bytes bigint NOT NULL CHECK (bytes > 0),
    width bigint NOT NULL CHECK (width > 0),
    height bigint NOT NULL CHECK (height > 0),
    note ${TEXT} NOT NULL,
    ${who},
    ${time('at')},
    UNIQUE (job_id, revision),
    CHECK ((spot = 'station') = (angle_deg IS NOT NULL)),
    CHECK ((spot = 'station') = (radius_mm IS NOT NULL)),
    CHECK ((spot = 'item') = (item IS NOT NULL)),
    FOREIGN KEY (job_id, revision) REFERENCES job_revision (job_id, revision)
  );
  CREATE INDEX photo_by_hash ON photo (hash);
  ${never('photo')}
`;

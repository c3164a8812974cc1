import { jsonObject, never, time, who } from '../pieces/inSqlite.ts';

export const sqlite = `
  CREATE TABLE job_revision_next (
    job_id INTEGER NOT NULL REFERENCES job (id),
    revision INTEGER NOT NULL CHECK (revision >= 1),
    ${time('at')},
    ${who},
    why TEXT NOT NULL,
    what TEXT NOT NULL CHECK (what IN
      ('received', 'looked', 'setup', 'plan', 'decision', 'cuts', 'studs', 'signature', 'reading', 'photo')),
    ${jsonObject('body')},
    PRIMARY KEY (job_id, revision)
  ) STRICT;
  INSERT INTO job_revision_next (job_id, revision, at, who, why, what, body)
    SELECT job_id, revision, at, who, why, what, body FROM job_revision ORDER BY job_id, revision;
  DROP TABLE job_revision;
  ALTER TABLE job_revision_next RENAME TO job_revision;
  CREATE INDEX job_revision_by_what ON job_revision (job_id, what, revision);
  ${never('job_revision')}
  CREATE TRIGGER job_revision_follows BEFORE INSERT ON job_revision
    WHEN NEW.revision <> 1 + coalesce((SELECT max(revision) FROM job_revision WHERE job_id = NEW.job_id), 0)
    BEGIN SELECT RAISE(ABORT, 'revisions follow one another'); END;

  CREATE TABLE photo (
    id TEXT PRIMARY KEY CHECK (length(id) BETWEEN 1 AND 64),
    job_id INTEGER NOT NULL,
    revision INTEGER NOT NULL,
    spot TEXT NOT NULL CHECK (spot IN ('job', 'station', 'item')),
    angle_deg REAL CHECK (angle_deg BETWEEN -360 AND 360),
    radius_mm REAL CHECK (radius_mm > 0 AND radius_mm < 10000),
    item TEXT CHECK (item IN ('welds', 'pads', 'stud-threads', 'crank-pilot', 'earlier-repairs')),
    hash TEXT NOT NULL CHECK (length(hash) = 64 AND hash NOT GLOB '*[^0-9a-f]*'),
    kind TEXT NOT NULL CHECK (kind IN ('jpeg', 'png', 'webp')),
    bytes INTEGER NOT NULL CHECK (bytes > 0),
    width INTEGER NOT NULL CHECK (width > 0),
    height INTEGER NOT NULL CHECK (height > 0),
    note TEXT NOT NULL,
    ${who},
    ${time('at')},
    UNIQUE (job_id, revision),
    CHECK ((spot = 'station') = (angle_deg IS NOT NULL)),
    CHECK ((spot = 'station') = (radius_mm IS NOT NULL)),
    CHECK ((spot = 'item') = (item IS NOT NULL)),
    FOREIGN KEY (job_id, revision) REFERENCES job_revision (job_id, revision)
  ) STRICT;
  CREATE INDEX photo_by_hash ON photo (hash);
  ${never('photo')}
`;

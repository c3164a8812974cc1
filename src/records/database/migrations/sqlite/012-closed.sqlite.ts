import { jsonObject, never, time, who } from '../pieces/inSqlite.ts';

export const sqlite = `
  CREATE TABLE job_next (
    id INTEGER PRIMARY KEY,
    number TEXT NOT NULL CHECK (length(number) BETWEEN 1 AND 40 AND trim(number) = number),
    number_key TEXT NOT NULL UNIQUE,
    plain_number INTEGER,
    demo INTEGER NOT NULL CHECK (demo IN (0, 1)),
    ${time('created_at')},
    revision INTEGER NOT NULL CHECK (revision >= 1),
    ${time('changed_at')},
    stage TEXT NOT NULL CHECK (stage IN
      ('to-look', 'to-measure', 'to-decide', 'to-cut', 'to-verify', 'to-sign', 'signed', 'closed')),
    outcome TEXT CHECK (outcome IN ('face', 'face-and-ring', 'replace')),
    family_id TEXT NOT NULL,
    family_name TEXT NOT NULL,
    customer_reference TEXT NOT NULL,
    received_on TEXT NOT NULL CHECK (received_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    search TEXT NOT NULL,
    FOREIGN KEY (id, revision) REFERENCES job_revision (job_id, revision) DEFERRABLE INITIALLY DEFERRED
  ) STRICT;
  INSERT INTO job_next (id, number, number_key, plain_number, demo, created_at, revision, changed_at, stage, outcome,
      family_id, family_name, customer_reference, received_on, search)
    SELECT id, number, number_key, plain_number, demo, created_at, revision, changed_at, stage, outcome,
      family_id, family_name, customer_reference, received_on, search FROM job ORDER BY id;
  DROP TABLE job;
  ALTER TABLE job_next RENAME TO job;
  CREATE INDEX job_by_plain_number ON job (plain_number);
  CREATE INDEX job_by_date ON job (received_on, id);
  CREATE INDEX job_by_stage ON job (stage, received_on, id);
  CREATE INDEX job_by_family ON job (family_id, received_on, id);
  CREATE TRIGGER job_never_deleted BEFORE DELETE ON job
    BEGIN SELECT RAISE(ABORT, 'a job is never deleted'); END;
  CREATE TRIGGER job_keeps_its_number BEFORE UPDATE OF id, number, number_key, plain_number, demo, created_at ON job
    BEGIN SELECT RAISE(ABORT, 'a job keeps its number'); END;
  CREATE TRIGGER job_never_goes_back BEFORE UPDATE OF revision ON job WHEN NEW.revision < OLD.revision
    BEGIN SELECT RAISE(ABORT, 'a job never goes back'); END;

  CREATE TABLE job_revision_next (
    job_id INTEGER NOT NULL REFERENCES job (id),
    revision INTEGER NOT NULL CHECK (revision >= 1),
    ${time('at')},
    ${who},
    why TEXT NOT NULL,
    what TEXT NOT NULL CHECK (what IN
      ('received', 'looked', 'setup', 'plan', 'decision', 'cuts', 'studs', 'signature', 'closed', 'reading', 'photo')),
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
`;

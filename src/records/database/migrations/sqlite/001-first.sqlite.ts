import { jsonObject, never, time, who } from '../pieces/inSqlite.ts';

export const sqlite = `
  CREATE TABLE entry (
    kind TEXT NOT NULL CHECK (kind IN ('family', 'stud', 'stack', 'criteria')),
    id TEXT NOT NULL CHECK (length(id) BETWEEN 1 AND 80),
    revision INTEGER NOT NULL CHECK (revision >= 1),
    name TEXT NOT NULL CHECK (trim(name) <> ''),
    name_key TEXT NOT NULL,
    retired INTEGER NOT NULL CHECK (retired IN (0, 1)),
    PRIMARY KEY (kind, id),
    FOREIGN KEY (kind, id, revision) REFERENCES entry_revision (kind, id, revision) DEFERRABLE INITIALLY DEFERRED
  ) STRICT;
  CREATE UNIQUE INDEX entry_by_name ON entry (kind, name_key) WHERE retired = 0;
  CREATE TRIGGER entry_never_deleted BEFORE DELETE ON entry
    BEGIN SELECT RAISE(ABORT, 'an entry is retired, never deleted'); END;
  CREATE TRIGGER entry_keeps_its_id BEFORE UPDATE OF kind, id ON entry
    BEGIN SELECT RAISE(ABORT, 'an entry keeps its kind and id'); END;

  CREATE TABLE entry_revision (
    kind TEXT NOT NULL,
    id TEXT NOT NULL,
    revision INTEGER NOT NULL CHECK (revision >= 1),
    ${time('at')},
    ${who},
    why TEXT NOT NULL,
    retired INTEGER NOT NULL CHECK (retired IN (0, 1)),
    ${jsonObject('body')},
    PRIMARY KEY (kind, id, revision),
    FOREIGN KEY (kind, id) REFERENCES entry (kind, id)
  ) STRICT;
  ${never('entry_revision')}
  CREATE TRIGGER entry_revision_follows BEFORE INSERT ON entry_revision
    WHEN NEW.revision <> 1 + coalesce(
      (SELECT max(revision) FROM entry_revision WHERE kind = NEW.kind AND id = NEW.id), 0)
    BEGIN SELECT RAISE(ABORT, 'revisions follow one another'); END;

  CREATE TABLE job (
    id INTEGER PRIMARY KEY,
    number TEXT NOT NULL CHECK (length(number) BETWEEN 1 AND 40 AND trim(number) = number),
    number_key TEXT NOT NULL UNIQUE,
    plain_number INTEGER,
    demo INTEGER NOT NULL CHECK (demo IN (0, 1)),
    ${time('created_at')},
    revision INTEGER NOT NULL CHECK (revision >= 1),
    ${time('changed_at')},
    stage TEXT NOT NULL CHECK (stage IN
      ('to-look', 'to-measure', 'to-decide', 'to-cut', 'to-verify', 'to-sign', 'signed')),
    outcome TEXT CHECK (outcome IN ('face', 'face-and-ring', 'replace')),
    family_id TEXT NOT NULL,
    family_name TEXT NOT NULL,
    customer_reference TEXT NOT NULL,
    received_on TEXT NOT NULL CHECK (received_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    search TEXT NOT NULL,
    FOREIGN KEY (id, revision) REFERENCES job_revision (job_id, revision) DEFERRABLE INITIALLY DEFERRED
  ) STRICT;
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

  CREATE TABLE job_revision (
    job_id INTEGER NOT NULL REFERENCES job (id),
    revision INTEGER NOT NULL CHECK (revision >= 1),
    ${time('at')},
    ${who},
    why TEXT NOT NULL,
    what TEXT NOT NULL CHECK (what IN
      ('received', 'looked', 'setup', 'plan', 'decision', 'cuts', 'studs', 'signature', 'reading')),
    ${jsonObject('body')},
    PRIMARY KEY (job_id, revision)
  ) STRICT;
  CREATE INDEX job_revision_by_what ON job_revision (job_id, what, revision);
  ${never('job_revision')}
  CREATE TRIGGER job_revision_follows BEFORE INSERT ON job_revision
    WHEN NEW.revision <> 1 + coalesce((SELECT max(revision) FROM job_revision WHERE job_id = NEW.job_id), 0)
    BEGIN SELECT RAISE(ABORT, 'revisions follow one another'); END;

  CREATE TABLE reading (
    id TEXT PRIMARY KEY CHECK (length(id) BETWEEN 1 AND 64),
    job_id INTEGER NOT NULL,
    revision INTEGER NOT NULL,
    place INTEGER NOT NULL CHECK (place >= 0),
    pass TEXT NOT NULL CHECK (pass IN ('before', 'after')),
    kind TEXT NOT NULL CHECK (kind IN ('wall', 'face', 'mark')),
    angle_deg REAL NOT NULL CHECK (angle_deg BETWEEN -360 AND 360),
    radius_mm REAL NOT NULL CHECK (radius_mm > 0 AND radius_mm < 10000),
    value_mm REAL CHECK (abs(value_mm) < 10000),
    typed TEXT NOT NULL,
    gauge TEXT NOT NULL,
    doubtful INTEGER NOT NULL CHECK (doubtful IN (0, 1)),
    replaces TEXT UNIQUE,
    ${who},
    ${time('at')},
    UNIQUE (job_id, id),
    UNIQUE (job_id, revision, place),
    CHECK (value_mm IS NOT NULL OR replaces IS NOT NULL),
    CHECK (replaces <> id),
    FOREIGN KEY (job_id, revision) REFERENCES job_revision (job_id, revision),
    FOREIGN KEY (job_id, replaces) REFERENCES reading (job_id, id)
  ) STRICT;
  ${never('reading')}
`;

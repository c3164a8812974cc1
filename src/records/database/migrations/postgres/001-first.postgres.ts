import { countsUp, jsonObject, never, neverDeleted, refused, TEXT, time, who } from '../pieces/inPostgres.ts';

export const postgres = `
  CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
  BEGIN
    RAISE EXCEPTION '%', TG_ARGV[0] USING ERRCODE = 'integrity_constraint_violation';
  END $$;

  CREATE FUNCTION count_up() RETURNS trigger LANGUAGE plpgsql AS $$
  BEGIN
    EXECUTE format('SELECT 1 + coalesce(max(id), 0) FROM %I.%I', TG_TABLE_SCHEMA, TG_TABLE_NAME) INTO NEW.id;
    RETURN NEW;
  END $$;

  CREATE TABLE entry (
    kind ${TEXT} NOT NULL CHECK (kind IN ('family', 'stud', 'stack', 'criteria')),
    id ${TEXT} NOT NULL CHECK (length(id) BETWEEN 1 AND 80),
    revision bigint NOT NULL CHECK (revision >= 1),
    name ${TEXT} NOT NULL CHECK (trim(name) <> ''),
    name_key ${TEXT} NOT NULL,
    retired bigint NOT NULL CHECK (retired IN (0, 1)),
    PRIMARY KEY (kind, id)
  );
  CREATE UNIQUE INDEX entry_by_name ON entry (kind, name_key) WHERE retired = 0;
  ${neverDeleted('entry', 'an entry is retired, never deleted')}
  ${refused('entry', 'keeps_its_id', 'UPDATE OF kind, id', 'an entry keeps its kind and id')}

  CREATE TABLE entry_revision (
    kind ${TEXT} NOT NULL,
    id ${TEXT} NOT NULL,
    revision bigint NOT NULL CHECK (revision >= 1),
    ${time('at')},
    ${who},
    why ${TEXT} NOT NULL,
    retired bigint NOT NULL CHECK (retired IN (0, 1)),
    ${jsonObject('body')},
    PRIMARY KEY (kind, id, revision),
    FOREIGN KEY (kind, id) REFERENCES entry (kind, id)
  );
  ALTER TABLE entry ADD FOREIGN KEY (kind, id, revision) REFERENCES entry_revision (kind, id, revision)
    DEFERRABLE INITIALLY DEFERRED;
  ${never('entry_revision')}
  CREATE FUNCTION entry_revision_follows() RETURNS trigger LANGUAGE plpgsql AS $$
  BEGIN
    IF NEW.revision <> 1 + coalesce(
      (SELECT max(revision) FROM entry_revision WHERE kind = NEW.kind AND id = NEW.id), 0) THEN
      RAISE EXCEPTION 'revisions follow one another' USING ERRCODE = 'integrity_constraint_violation';
    END IF;
    RETURN NEW;
  END $$;
  CREATE TRIGGER entry_revision_follows BEFORE INSERT ON entry_revision
    FOR EACH ROW EXECUTE FUNCTION entry_revision_follows();

  CREATE TABLE job (
    id bigint PRIMARY KEY,
    number ${TEXT} NOT NULL CHECK (length(number) BETWEEN 1 AND 40 AND trim(number) = number),
    number_key ${TEXT} NOT NULL UNIQUE,
    plain_number bigint,
    demo bigint NOT NULL CHECK (demo IN (0, 1)),
    ${time('created_at')},
    revision bigint NOT NULL CHECK (revision >= 1),
    ${time('changed_at')},
    stage ${TEXT} NOT NULL CHECK (stage IN
      ('to-look', 'to-measure', 'to-decide', 'to-cut', 'to-verify', 'to-sign', 'signed')),
    outcome ${TEXT} CHECK (outcome IN ('face', 'face-and-ring', 'replace')),
    family_id ${TEXT} NOT NULL,
    family_name ${TEXT} NOT NULL,
    customer_reference ${TEXT} NOT NULL,
    received_on ${TEXT} NOT NULL CHECK (received_on ~ '^[0-9]{4}-[0-9]{2}-[0-9]{2}$'),
    search ${TEXT} NOT NULL
  );
  CREATE INDEX job_by_plain_number ON job (plain_number);
  CREATE INDEX job_by_date ON job (received_on, id);
  CREATE INDEX job_by_stage ON job (stage, received_on, id);
  CREATE INDEX job_by_family ON job (family_id, received_on, id);
  ${countsUp('job')}
  ${neverDeleted('job', 'a job is never deleted')}
  ${refused(
    'job',
    'keeps_its_number',
    'UPDATE OF id, number, number_key, plain_number, demo, created_at',
    'a job keeps its number',
  )}
  CREATE TRIGGER job_never_goes_back BEFORE UPDATE OF revision ON job
    FOR EACH ROW WHEN (NEW.revision < OLD.revision) EXECUTE FUNCTION refuse_change('a job never goes back');

  CREATE TABLE job_revision (
    job_id bigint NOT NULL REFERENCES job (id),
    revision bigint NOT NULL CHECK (revision >= 1),
    ${time('at')},
    ${who},
    why ${TEXT} NOT NULL,
    what ${TEXT} NOT NULL CHECK (what IN
      ('received', 'looked', 'setup', 'plan', 'decision', 'cuts', 'studs', 'signature', 'reading')),
    ${jsonObject('body')},
    PRIMARY KEY (job_id, revision)
  );
  ALTER TABLE job ADD FOREIGN KEY (id, revision) REFERENCES job_revision (job_id, revision)
    DEFERRABLE INITIALLY DEFERRED;
  CREATE INDEX job_revision_by_what ON job_revision (job_id, what, revision);
  ${never('job_revision')}
  CREATE FUNCTION job_revision_follows() RETURNS trigger LANGUAGE plpgsql AS $$
  BEGIN
    IF NEW.revision <> 1 + coalesce((SELECT max(revision) FROM job_revision WHERE job_id = NEW.job_id), 0) THEN
      RAISE EXCEPTION 'revisions follow one another' USING ERRCODE = 'integrity_constraint_violation';
    END IF;
    RETURN NEW;
  END $$;
  CREATE TRIGGER job_revision_follows BEFORE INSERT ON job_revision
    FOR EACH ROW EXECUTE FUNCTION job_revision_follows();

  CREATE TABLE reading (
    id ${TEXT} PRIMARY KEY CHECK (length(id) BETWEEN 1 AND 64),
    job_id bigint NOT NULL,
    revision bigint NOT NULL,
    place bigint NOT NULL CHECK (place >= 0),
    pass ${TEXT} NOT NULL CHECK (pass IN ('before', 'after')),
    kind ${TEXT} NOT NULL CHECK (kind IN ('wall', 'face', 'mark')),
    angle_deg double precision NOT NULL CHECK (angle_deg BETWEEN -360 AND 360),
    radius_mm double precision NOT NULL CHECK (radius_mm > 0 AND radius_mm < 10000),
    value_mm double precision CHECK (abs(value_mm) < 10000),
    typed ${TEXT} NOT NULL,
    gauge ${TEXT} NOT NULL,
    doubtful bigint NOT NULL CHECK (doubtful IN (0, 1)),
    replaces ${TEXT} UNIQUE,
    ${who},
    ${time('at')},
    UNIQUE (job_id, id),
    UNIQUE (job_id, revision, place),
    CHECK (value_mm IS NOT NULL OR replaces IS NOT NULL),
    CHECK (replaces <> id),
    FOREIGN KEY (job_id, revision) REFERENCES job_revision (job_id, revision),
    FOREIGN KEY (job_id, replaces) REFERENCES reading (job_id, id)
  );
  ${never('reading')}
`;

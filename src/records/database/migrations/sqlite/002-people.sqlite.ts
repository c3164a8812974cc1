import { jsonObject, never, time, who } from '../pieces/inSqlite.ts';

export const sqlite = `
  CREATE TABLE person (
    id INTEGER PRIMARY KEY,
    revision INTEGER NOT NULL CHECK (revision >= 1),
    name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 60 AND trim(name) = name),
    name_key TEXT NOT NULL UNIQUE,
    initials TEXT NOT NULL CHECK (length(initials) BETWEEN 1 AND 8 AND trim(initials) = initials),
    initials_key TEXT NOT NULL UNIQUE,
    role TEXT NOT NULL CHECK (role IN ('reader', 'recorder', 'keeper')),
    retired INTEGER NOT NULL CHECK (retired IN (0, 1)),
    FOREIGN KEY (id, revision) REFERENCES person_revision (person_id, revision) DEFERRABLE INITIALLY DEFERRED
  ) STRICT;
  CREATE TRIGGER person_never_deleted BEFORE DELETE ON person
    BEGIN SELECT RAISE(ABORT, 'a person is retired, never deleted'); END;
  CREATE TRIGGER person_keeps_initials BEFORE UPDATE OF id, initials, initials_key ON person
    BEGIN SELECT RAISE(ABORT, 'a person keeps their initials'); END;

  CREATE TABLE person_revision (
    person_id INTEGER NOT NULL REFERENCES person (id),
    revision INTEGER NOT NULL CHECK (revision >= 1),
    ${time('at')},
    ${who},
    why TEXT NOT NULL,
    what TEXT NOT NULL CHECK (what IN
      ('added', 'changed', 'retired', 'reinstated', 'start-password', 'own-password', 'token', 'token-withdrawn')),
    ${jsonObject('body')},
    PRIMARY KEY (person_id, revision)
  ) STRICT;
  ${never('person_revision')}
  CREATE TRIGGER person_revision_follows BEFORE INSERT ON person_revision
    WHEN NEW.revision <> 1 + coalesce(
      (SELECT max(revision) FROM person_revision WHERE person_id = NEW.person_id), 0)
    BEGIN SELECT RAISE(ABORT, 'revisions follow one another'); END;

  CREATE TABLE person_password (
    person_id INTEGER PRIMARY KEY REFERENCES person (id),
    hash TEXT NOT NULL CHECK (hash LIKE '$argon2id$%'),
    start INTEGER NOT NULL CHECK (start IN (0, 1)),
    ${time('set_at')}
  ) STRICT;

  CREATE TABLE session (
    token_hash TEXT PRIMARY KEY CHECK (length(token_hash) = 64),
    person_id INTEGER NOT NULL REFERENCES person (id),
    device TEXT NOT NULL,
    ${time('began_at')},
    ${time('used_at')}
  ) STRICT;
  CREATE INDEX session_by_person ON session (person_id, began_at);

  CREATE TABLE api_token (
    id INTEGER PRIMARY KEY,
    token_hash TEXT NOT NULL UNIQUE CHECK (length(token_hash) = 64),
    name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 60 AND trim(name) = name),
    person_id INTEGER NOT NULL REFERENCES person (id),
    role TEXT NOT NULL CHECK (role IN ('reader', 'recorder', 'keeper')),
    ${who},
    ${time('at')},
    used_at TEXT,
    withdrawn_at TEXT,
    withdrawn_by TEXT
  ) STRICT;
  CREATE TRIGGER api_token_never_deleted BEFORE DELETE ON api_token
    BEGIN SELECT RAISE(ABORT, 'a token is withdrawn, never deleted'); END;
  CREATE TRIGGER api_token_as_issued BEFORE UPDATE OF id, token_hash, name, person_id, role, who, at ON api_token
    BEGIN SELECT RAISE(ABORT, 'a token stays as it was issued'); END;
  CREATE TRIGGER api_token_stays_withdrawn BEFORE UPDATE OF withdrawn_at, withdrawn_by ON api_token
    WHEN OLD.withdrawn_at IS NOT NULL
    BEGIN SELECT RAISE(ABORT, 'a token stays withdrawn'); END;
`;

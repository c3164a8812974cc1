import { countsUp, jsonObject, never, neverDeleted, refused, TEXT, time, who } from '../pieces/inPostgres.ts';

export const postgres = `
  CREATE TABLE person (
    id bigint PRIMARY KEY,
    revision bigint NOT NULL CHECK (revision >= 1),
    name ${TEXT} NOT NULL CHECK (length(name) BETWEEN 1 AND 60 AND trim(name) = name),
    name_key ${TEXT} NOT NULL UNIQUE,
    initials ${TEXT} NOT NULL CHECK (length(initials) BETWEEN 1 AND 8 AND trim(initials) = initials),
    initials_key ${TEXT} NOT NULL UNIQUE,
    role ${TEXT} NOT NULL CHECK (role IN ('reader', 'recorder', 'keeper')),
    retired bigint NOT NULL CHECK (retired IN (0, 1))
  );
  ${countsUp('person')}
  ${neverDeleted('person', 'a person is retired, never deleted')}
  ${refused('person', 'keeps_initials', 'UPDATE OF id, initials, initials_key', 'a person keeps their initials')}

  CREATE TABLE person_revision (
    person_id bigint NOT NULL REFERENCES person (id),
    revision bigint NOT NULL CHECK (revision >= 1),
    ${time('at')},
    ${who},
    why ${TEXT} NOT NULL,
    what ${TEXT} NOT NULL CHECK (what IN
      ('added', 'changed', 'retired', 'reinstated', 'start-password', 'own-password', 'token', 'token-withdrawn')),
    ${jsonObject('body')},
    PRIMARY KEY (person_id, revision)
  );
  ALTER TABLE person ADD FOREIGN KEY (id, revision) REFERENCES person_revision (person_id, revision)
    DEFERRABLE INITIALLY DEFERRED;
  ${never('person_revision')}
  CREATE FUNCTION person_revision_follows() RETURNS trigger LANGUAGE plpgsql AS $$
  BEGIN
    IF NEW.revision <> 1 + coalesce(
      (SELECT max(revision) FROM person_revision WHERE person_id = NEW.person_id), 0) THEN
      RAISE EXCEPTION 'revisions follow one another' USING ERRCODE = 'integrity_constraint_violation';
    END IF;
    RETURN NEW;
  END $$;
  CREATE TRIGGER person_revision_follows BEFORE INSERT ON person_revision
    FOR EACH ROW EXECUTE FUNCTION person_revision_follows();

  CREATE TABLE person_password (
    person_id bigint PRIMARY KEY REFERENCES person (id),
    hash ${TEXT} NOT NULL CHECK (hash LIKE '$argon2id$%'),
    start bigint NOT NULL CHECK (start IN (0, 1)),
    ${time('set_at')}
  );

  CREATE TABLE session (
    token_hash ${TEXT} PRIMARY KEY CHECK (length(token_hash) = 64),
    person_id bigint NOT NULL REFERENCES person (id),
    device ${TEXT} NOT NULL,
    ${time('began_at')},
    ${time('used_at')}
  );
  CREATE INDEX session_by_person ON session (person_id, began_at);

  CREATE TABLE api_token (
    id bigint PRIMARY KEY,
    token_hash ${TEXT} NOT NULL UNIQUE CHECK (length(token_hash) = 64),
    name ${TEXT} NOT NULL CHECK (length(name) BETWEEN 1 AND 60 AND trim(name) = name),
    person_id bigint NOT NULL REFERENCES person (id),
    role ${TEXT} NOT NULL CHECK (role IN ('reader', 'recorder', 'keeper')),
    ${who},
    ${time('at')},
    used_at ${TEXT},
    withdrawn_at ${TEXT},
    withdrawn_by ${TEXT}
  );
  ${countsUp('api_token')}
  ${neverDeleted('api_token', 'a token is withdrawn, never deleted')}
  ${refused('api_token', 'as_issued', 'UPDATE OF id, token_hash, name, person_id, role, who, at', 'a token stays as it was issued')}
  CREATE TRIGGER api_token_stays_withdrawn BEFORE UPDATE OF withdrawn_at, withdrawn_by ON api_token
    FOR EACH ROW WHEN (OLD.withdrawn_at IS NOT NULL) EXECUTE FUNCTION refuse_change('a token stays withdrawn');
`;

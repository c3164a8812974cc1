export const sqlite = `
  CREATE TABLE entry_next (
    kind TEXT NOT NULL CHECK (kind IN
      ('family', 'stud', 'stack', 'nut', 'washer', 'gauge', 'steel', 'lining', 'lathe', 'ring',
       'criteria', 'checklist')),
    id TEXT NOT NULL CHECK (length(id) BETWEEN 1 AND 80),
    revision INTEGER NOT NULL CHECK (revision >= 1),
    name TEXT NOT NULL CHECK (trim(name) <> ''),
    name_key TEXT NOT NULL,
    retired INTEGER NOT NULL CHECK (retired IN (0, 1)),
    PRIMARY KEY (kind, id),
    FOREIGN KEY (kind, id, revision) REFERENCES entry_revision (kind, id, revision) DEFERRABLE INITIALLY DEFERRED
  ) STRICT;
  INSERT INTO entry_next (kind, id, revision, name, name_key, retired)
    SELECT kind, id, revision, name, name_key, retired FROM entry ORDER BY kind, id;
  DROP TABLE entry;
  ALTER TABLE entry_next RENAME TO entry;
  CREATE UNIQUE INDEX entry_by_name ON entry (kind, name_key) WHERE retired = 0;
  CREATE TRIGGER entry_never_deleted BEFORE DELETE ON entry
    BEGIN SELECT RAISE(ABORT, 'an entry is retired, never deleted'); END;
  CREATE TRIGGER entry_keeps_its_id BEFORE UPDATE OF kind, id ON entry
    BEGIN SELECT RAISE(ABORT, 'an entry keeps its kind and id'); END;
`;

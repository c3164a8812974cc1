export const sqlite = `
  CREATE TABLE job_trend (
    job_id INTEGER PRIMARY KEY REFERENCES job (id),
    version INTEGER NOT NULL,
    demo INTEGER NOT NULL CHECK (demo IN (0, 1)),
    stage TEXT NOT NULL,
    outcome TEXT,
    family_id TEXT NOT NULL,
    received_on TEXT NOT NULL,
    signed_at TEXT,
    days_to_sign INTEGER,
    scrap_reason TEXT,
    wall_nm INTEGER,
    cut_nm INTEGER,
    left_nm INTEGER,
    peak_over_new REAL,
    pattern TEXT,
    comeback_of INTEGER
  ) STRICT;
  CREATE INDEX job_trend_by_comeback ON job_trend (comeback_of);
  CREATE INDEX job_trend_by_version ON job_trend (version);

  CREATE TABLE job_rests (
    job_id INTEGER NOT NULL REFERENCES job (id),
    what TEXT NOT NULL,
    id TEXT NOT NULL,
    revision INTEGER NOT NULL,
    since TEXT NOT NULL,
    PRIMARY KEY (job_id, what, id)
  ) STRICT;
  CREATE INDEX job_rests_by_what ON job_rests (what, id, revision);
`;

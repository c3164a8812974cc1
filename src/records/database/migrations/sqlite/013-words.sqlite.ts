/** Two ends of line behind the words: then every character begins a run of three, and a short word is a run's beginning. */
const words = (row: string): string => `${row}.search || char(10) || char(10)`;

export const sqlite = `
  CREATE VIRTUAL TABLE job_words USING fts5(
    words, content = '', columnsize = 0, detail = 'none', tokenize = 'trigram case_sensitive 1');
  CREATE VIRTUAL TABLE job_runs USING fts5vocab('job_words', 'instance');
  INSERT INTO job_words (rowid, words) SELECT job.id, ${words('job')} FROM job;
  CREATE TRIGGER job_words_added AFTER INSERT ON job
    BEGIN INSERT INTO job_words (rowid, words) VALUES (NEW.id, ${words('NEW')}); END;
  CREATE TRIGGER job_words_changed AFTER UPDATE OF search ON job WHEN NEW.search <> OLD.search
    BEGIN
      INSERT INTO job_words (job_words, rowid, words) VALUES ('delete', OLD.id, ${words('OLD')});
      INSERT INTO job_words (rowid, words) VALUES (NEW.id, ${words('NEW')});
    END;
  CREATE INDEX job_by_demo ON job (demo, received_on, id);
  CREATE INDEX job_changes ON job (stage, demo, revision, changed_at);
`;

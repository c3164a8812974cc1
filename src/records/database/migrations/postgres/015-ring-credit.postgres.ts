export const postgres = `
  ALTER TABLE job ADD COLUMN ring_credit bigint NOT NULL DEFAULT 0 CHECK (ring_credit IN (0, 1));
  UPDATE job SET ring_credit = 1 WHERE outcome = 'face-and-ring' OR EXISTS (
    SELECT 1 FROM job_revision AS setup
    WHERE setup.job_id = job.id AND setup.what = 'setup' AND setup.body LIKE '%"ringWelded":{%');
  CREATE INDEX job_ring_credit ON job (stage, revision, changed_at) WHERE ring_credit = 1;
`;

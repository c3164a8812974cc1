export const postgres = `
  ALTER TABLE job_revision DROP CONSTRAINT job_revision_what_check;
  ALTER TABLE job_revision ADD CONSTRAINT job_revision_what_check CHECK (what IN
    ('received', 'looked', 'setup', 'plan', 'decision', 'cuts', 'studs', 'signature', 'closed', 'reading', 'photo'));
  ALTER TABLE job DROP CONSTRAINT job_stage_check;
  ALTER TABLE job ADD CONSTRAINT job_stage_check CHECK (stage IN
    ('to-look', 'to-measure', 'to-decide', 'to-cut', 'to-verify', 'to-sign', 'signed', 'closed'));
`;

export const postgres = `
  ALTER TABLE entry DROP CONSTRAINT entry_kind_check;
  ALTER TABLE entry ADD CONSTRAINT entry_kind_check CHECK (kind IN
    ('family', 'stud', 'stack', 'nut', 'washer', 'gauge', 'criteria', 'checklist'));
  ALTER TABLE job_revision DROP CONSTRAINT job_revision_what_check;
  ALTER TABLE job_revision ADD CONSTRAINT job_revision_what_check CHECK (what IN
    ('received', 'looked', 'inspected', 'setup', 'plan', 'decision', 'cuts', 'studs', 'signature', 'closed', 'reading',
     'photo'));
  ALTER TABLE photo DROP CONSTRAINT photo_item_check;
  ALTER TABLE photo ADD CONSTRAINT photo_item_check CHECK (item <> '');
`;

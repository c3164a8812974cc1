export const postgres = `
  ALTER TABLE entry DROP CONSTRAINT entry_kind_check;
  ALTER TABLE entry ADD CONSTRAINT entry_kind_check CHECK (kind IN
    ('family', 'stud', 'stack', 'nut', 'washer', 'gauge', 'steel', 'lining', 'lathe', 'ring',
     'criteria', 'checklist'));
`;

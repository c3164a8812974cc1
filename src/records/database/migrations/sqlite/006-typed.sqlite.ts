export const sqlite = `
  ALTER TABLE entry_revision ADD COLUMN typed TEXT
    CHECK (typed IS NULL OR (json_valid(typed) AND substr(typed, 1, 1) = '{'));
`;

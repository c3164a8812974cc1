export const sqlite = `
  ALTER TABLE reading ADD COLUMN confirmed INTEGER CHECK (confirmed IN (0, 1));
`;

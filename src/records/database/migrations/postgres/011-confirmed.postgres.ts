export const postgres = `
  ALTER TABLE reading ADD COLUMN confirmed bigint CHECK (confirmed IN (0, 1));
`;

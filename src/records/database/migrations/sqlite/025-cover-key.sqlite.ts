export const sqlite = `
  UPDATE job
  SET cover_key = replace(replace(replace(replace(replace(cover_key, ' ', ''), '-', ''), '.', ''), '/', ''), '_', '')
  WHERE cover_key <> '';
`;

import { jsonObject, never, time, who } from '../pieces/inSqlite.ts';

export const sqlite = `
  CREATE TABLE cost_revision (
    revision INTEGER PRIMARY KEY CHECK (revision >= 1),
    ${time('at')},
    ${who},
    why TEXT NOT NULL,
    ${jsonObject('body')}
  ) STRICT;
  ${never('cost_revision')}
`;

import { jsonObject, never, TEXT, time, who } from '../pieces/inPostgres.ts';

export const postgres = `
  CREATE TABLE cost_revision (
    revision bigint PRIMARY KEY CHECK (revision >= 1),
    ${time('at')},
    ${who},
    why ${TEXT} NOT NULL,
    ${jsonObject('body')}
  );
  ${never('cost_revision')}
`;

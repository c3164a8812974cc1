import { never, time, who } from '../pieces/inSqlite.ts';

export const sqlite = `
  ALTER TABLE wrong ADD COLUMN revision INTEGER CHECK (revision >= 0);
  ALTER TABLE wrong ADD COLUMN bias_mm REAL CHECK (abs(bias_mm) < 1000);
  ALTER TABLE wrong ADD COLUMN u_mm REAL CHECK (u_mm >= 0 AND u_mm < 1000);

  CREATE TABLE wrong_slip_closed (
    wrong_number INTEGER NOT NULL REFERENCES wrong (number),
    slip_number INTEGER NOT NULL REFERENCES slip (number),
    ${time('at')},
    ${who},
    word TEXT NOT NULL CHECK (word <> ''),
    PRIMARY KEY (wrong_number, slip_number)
  ) STRICT;
  ${never('wrong_slip_closed')}
`;

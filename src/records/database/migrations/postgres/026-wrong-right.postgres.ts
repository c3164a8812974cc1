import { never, TEXT, time, who } from '../pieces/inPostgres.ts';

export const postgres = `
  ALTER TABLE wrong ADD COLUMN revision bigint CHECK (revision >= 0);
  ALTER TABLE wrong ADD COLUMN bias_mm double precision CHECK (abs(bias_mm) < 1000);
  ALTER TABLE wrong ADD COLUMN u_mm double precision CHECK (u_mm >= 0 AND u_mm < 1000);

  CREATE TABLE wrong_slip_closed (
    wrong_number bigint NOT NULL REFERENCES wrong (number),
    slip_number bigint NOT NULL REFERENCES slip (number),
    ${time('at')},
    ${who},
    word ${TEXT} NOT NULL CHECK (word <> ''),
    PRIMARY KEY (wrong_number, slip_number)
  );
  ${never('wrong_slip_closed')}
`;

import { never, TEXT, time, who } from '../pieces/inPostgres.ts';

export const postgres = `
  CREATE TABLE wrong (
    number bigint PRIMARY KEY CHECK (number >= 1),
    ${time('at')},
    ${who},
    what ${TEXT} NOT NULL,
    id ${TEXT} NOT NULL,
    name ${TEXT} NOT NULL,
    since ${TEXT} NOT NULL,
    reason ${TEXT} NOT NULL CHECK (reason <> '')
  );
  ${never('wrong')}

  CREATE TABLE wrong_closed (
    wrong_number bigint NOT NULL REFERENCES wrong (number),
    job_id bigint NOT NULL REFERENCES job (id),
    ${time('at')},
    ${who},
    word ${TEXT} NOT NULL CHECK (word <> ''),
    PRIMARY KEY (wrong_number, job_id)
  );
  ${never('wrong_closed')}
`;

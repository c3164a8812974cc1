import { jsonObject, never, TEXT, time, who } from '../pieces/inPostgres.ts';

export const postgres = `
  CREATE TABLE slip (
    number bigint PRIMARY KEY CHECK (number >= 1),
    sent_id ${TEXT} NOT NULL UNIQUE CHECK (length(sent_id) BETWEEN 16 AND 64),
    ${time('at')},
    day ${TEXT} NOT NULL CHECK (day ~ '^[0-9]{4}-[0-9]{2}-[0-9]{2}$'),
    ${who},
    customer_reference ${TEXT} NOT NULL,
    stack_name ${TEXT} NOT NULL,
    stud_name ${TEXT} NOT NULL,
    fits ${TEXT} NOT NULL CHECK (fits IN ('yes', 'with-care', 'no')),
    search ${TEXT} NOT NULL,
    calc_version ${TEXT} NOT NULL,
    ${jsonObject('asked')},
    ${jsonObject('answered')},
    html ${TEXT} NOT NULL CHECK (html <> '')
  );
  ${never('slip')}

  CREATE TABLE slip_count (
    slip_number bigint NOT NULL REFERENCES slip (number),
    place bigint NOT NULL CHECK (place >= 1),
    what ${TEXT} NOT NULL CHECK (what IN ('out', 'back')),
    ${time('at')},
    ${who},
    why ${TEXT} NOT NULL,
    ${jsonObject('body')},
    PRIMARY KEY (slip_number, place)
  );
  ${never('slip_count')}

  CREATE TABLE slip_job (
    job_id bigint PRIMARY KEY REFERENCES job (id),
    slip_number bigint NOT NULL REFERENCES slip (number)
  );
  ${never('slip_job')}
`;

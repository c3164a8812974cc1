import { never, TEXT, time, who } from '../pieces/inPostgres.ts';

export const postgres = `
  CREATE TABLE master_check (
    id ${TEXT} PRIMARY KEY CHECK (length(id) BETWEEN 16 AND 64),
    gauge_id ${TEXT} NOT NULL,
    day ${TEXT} NOT NULL CHECK (day ~ '^[0-9]{4}-[0-9]{2}-[0-9]{2}$'),
    ${time('at')},
    ${who},
    master_mm double precision NOT NULL CHECK (master_mm >= 0),
    master_typed ${TEXT} NOT NULL,
    reading_mm double precision NOT NULL,
    reading_typed ${TEXT} NOT NULL,
    confirmed bigint NOT NULL CHECK (confirmed IN (0, 1)),
    due_on ${TEXT} CHECK (due_on ~ '^[0-9]{4}-[0-9]{2}-[0-9]{2}$')
  );
  CREATE INDEX master_check_by_gauge ON master_check (gauge_id, at);
  ${never('master_check')}

  CREATE TABLE master_check_withdrawn (
    check_id ${TEXT} PRIMARY KEY REFERENCES master_check (id),
    ${time('at')},
    ${who},
    why ${TEXT} NOT NULL CHECK (why <> '')
  );
  ${never('master_check_withdrawn')}
`;

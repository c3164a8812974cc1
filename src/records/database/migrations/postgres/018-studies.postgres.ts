import { jsonObject, never, TEXT, time, who } from '../pieces/inPostgres.ts';

export const postgres = `
  CREATE TABLE study (
    number bigint PRIMARY KEY CHECK (number >= 1),
    sent_id ${TEXT} NOT NULL UNIQUE CHECK (length(sent_id) BETWEEN 16 AND 64),
    gauge_id ${TEXT} NOT NULL,
    ${time('at')},
    day ${TEXT} NOT NULL CHECK (day ~ '^[0-9]{4}-[0-9]{2}-[0-9]{2}$'),
    ${who},
    ${jsonObject('body')}
  );
  CREATE INDEX study_by_gauge ON study (gauge_id, number);
  ${never('study')}

  CREATE TABLE study_reading (
    id ${TEXT} PRIMARY KEY CHECK (length(id) BETWEEN 16 AND 64),
    study_number bigint NOT NULL REFERENCES study (number),
    nth bigint NOT NULL CHECK (nth >= 1),
    place bigint NOT NULL CHECK (place >= 0),
    ${time('at')},
    ${who},
    value_mm double precision NOT NULL,
    typed ${TEXT} NOT NULL,
    confirmed bigint NOT NULL CHECK (confirmed IN (0, 1)),
    UNIQUE (study_number, nth)
  );
  ${never('study_reading')}

  CREATE TABLE study_reading_withdrawn (
    reading_id ${TEXT} PRIMARY KEY REFERENCES study_reading (id),
    ${time('at')},
    ${who},
    why ${TEXT} NOT NULL CHECK (why <> '')
  );
  ${never('study_reading_withdrawn')}

  CREATE TABLE study_stopped (
    study_number bigint PRIMARY KEY REFERENCES study (number),
    ${time('at')},
    ${who},
    why ${TEXT} NOT NULL CHECK (why <> '')
  );
  ${never('study_stopped')}
`;

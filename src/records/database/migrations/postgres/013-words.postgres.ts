/**
 * Every run of one, two and three characters of a text, as an index of PostgreSQL's own keeps them; no extension. Its
 * cost says that the index is asked, never each row.
 */
export const postgres = `
  CREATE FUNCTION runs_of(text) RETURNS text[] LANGUAGE plpgsql IMMUTABLE STRICT COST 1000 AS $$
  BEGIN
    RETURN ARRAY(
      SELECT run COLLATE "C" FROM (
        SELECT c AS one, c || lead(c, 1, '') OVER following AS two,
          c || lead(c, 1, '') OVER following || lead(c, 2, '') OVER following AS three
        FROM unnest(string_to_array($1, NULL)) WITH ORDINALITY AS x (c, i)
        WINDOW following AS (ORDER BY i)
      ) runs, LATERAL (VALUES (one), (two), (three)) AS each (run));
  END $$;
  CREATE INDEX job_by_words ON job USING gin (runs_of(search)) WITH (fastupdate = off);
  CREATE INDEX job_by_demo ON job (demo, received_on, id);
`;

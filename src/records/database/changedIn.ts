/** The columns in which a row differs: a column that is set is written, and its indexes with it, though it says the same. */
export function changedIn<Row extends object>(row: Row, now: Partial<Row>): Partial<Row> {
  const columns = (Object.keys(now) as (keyof Row)[]).filter((column) => row[column] !== now[column]);
  return Object.fromEntries(columns.map((column) => [column, now[column]])) as Partial<Row>;
}

/** Where a slip names an entry of the catalog: the kind, the column, and the place in its JSON. */
type NamedIn = readonly [kind: string, column: 'asked' | 'answered', path: readonly (string | number)[]];

const NAMED_IN: readonly NamedIn[] = [
  ['stack', 'asked', ['stackId']],
  ['stud', 'asked', ['studId']],
  ['nut', 'answered', ['kit', 'nut', 'id']],
  ['washer', 'answered', ['kit', 'washer', 'id']],
  // More than three sorts of shim under one pad nobody stacks.
  ...[0, 1, 2].map((i): NamedIn => ['washer', 'answered', ['kit', 'shims', i, 'id']]),
];

/** A view of what slips name and its indexes, with how an engine reads a place in JSON. */
export function slipNamesView(
  placeIn: (column: string, path: readonly (string | number)[]) => string,
  word: (text: string) => string,
): string {
  const parts = NAMED_IN.map(([kind, column, path]) => ({ kind, place: placeIn(column, path) }));
  const indexes = parts.map(({ place }, i) => `CREATE INDEX slip_names_${i} ON slip ((${place}), number);`);
  const rows = parts.map(
    ({ kind, place }) => `SELECT ${word(kind)} AS kind, ${place} AS id, number FROM slip`,
  );
  return `${indexes.join('\n')}\nCREATE VIEW slip_names AS\n${rows.join('\nUNION ALL\n')};`;
}

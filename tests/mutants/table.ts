/** One change of the program, and whether a test noticed it. */
export interface Change {
  readonly file: string;
  readonly location: {
    readonly start: { readonly line: number; readonly column: number };
    readonly end: { readonly line: number; readonly column: number };
  };
  readonly mutator: string;
  readonly was: string;
  readonly becomes: string;
  readonly status: string;
  readonly byTheClock: boolean;
}

/** A change that makes no difference to anybody, and why. */
export interface Equivalent {
  readonly file: string;
  readonly was: string;
  readonly becomes: string;
  readonly why: string;
}

export function keyOf({ file, location: { start, end }, mutator, becomes }: Change): string {
  return [file, start.line, start.column, end.line, end.column, mutator, becomes].join('|');
}

const plain = (text: string) => text.replace(/\s+/g, ' ').trim();

function isEquivalent(change: Change, equivalents: readonly Equivalent[]): boolean {
  return equivalents.some(
    ({ file, was, becomes }) =>
      file === change.file && plain(was) === plain(change.was) && plain(becomes) === plain(change.becomes),
  );
}

const noticed = ({ status, byTheClock }: Change) =>
  !byTheClock && ['Killed', 'Timeout', 'RuntimeError'].includes(status);

/** What nobody noticed, as a person would look it up. */
export function told(changes: readonly Change[], equivalents: readonly Equivalent[]): string {
  return changes
    .filter((change) => !noticed(change) && !isEquivalent(change, equivalents))
    .map(
      ({ file, location, mutator, was, becomes, status, byTheClock }) =>
        `${file}:${location.start.line + 1} ${mutator}${status === 'NoCoverage' ? ', run by no test' : ''}${byTheClock ? ', noticed by the clock alone, which does not count' : ''}\n    ${plain(was)}\n  → ${plain(becomes)}`,
    )
    .join('\n');
}

/** How many were noticed, by folder. */
export function tableOf(changes: readonly Change[], equivalents: readonly Equivalent[], seed: number) {
  const folderOf = ({ file }: Change) => file.split('/').slice(0, -1).slice(0, 3).join('/');
  const row = (name: string, of: readonly Change[]) => {
    const same = of.filter((one) => !noticed(one) && isEquivalent(one, equivalents)).length;
    const seen = of.filter(noticed).length;
    const share = of.length === same ? 1 : seen / (of.length - same);
    return { name, tried: of.length, seen, same, not: of.length - same - seen, share };
  };
  const folders = [...new Set(changes.map(folderOf))].sort();
  const under = (top: string) => changes.filter(({ file }) => file.startsWith(`${top}/`));
  const tops = ['src', 'views'].filter((top) => under(top).length > 0);
  const rows = [
    ...folders.map((folder) =>
      row(
        folder,
        changes.filter((one) => folderOf(one) === folder),
      ),
    ),
    ...tops.map((top) => row(`all of ${top}`, under(top))),
  ];
  const text = [
    `| seed ${seed} | tried | noticed | no difference | not noticed | share |`,
    '| --- | --- | --- | --- | --- | --- |',
    ...rows.map(
      ({ name, tried, seen, same, not, share }) =>
        `| ${name} | ${tried} | ${seen} | ${same} | ${not} | ${(100 * share).toFixed(1)} % |`,
    ),
  ].join('\n');
  return { text, shares: { src: row('', under('src')).share, views: row('', under('views')).share } };
}

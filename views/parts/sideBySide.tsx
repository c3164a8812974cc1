/** One field of two states of the same thing, in words; '' where one of them says nothing. */
export interface Compared {
  readonly label: string;
  readonly before: string;
  readonly after: string;
}

export interface SideBySideProps {
  readonly caption: string;
  /** What the two columns hold: "before" and "after", or "as it stands" and "yours". */
  readonly heads: readonly [string, string];
  readonly lines: readonly Compared[];
}

/** Two states beside one another. Lines that say the same are counted, not shown. */
export function SideBySide({ caption, heads, lines }: SideBySideProps) {
  const differ = lines.filter((line) => line.before !== line.after);
  const same = lines.length - differ.length;
  return (
    <>
      {differ.length > 0 && (
        <section class="scroll" tabindex={0} aria-label={caption}>
          <table class="side-by-side">
            <caption>{caption}</caption>
            <thead>
              <tr>
                <td />
                <th scope="col">{heads[0]}</th>
                <th scope="col">{heads[1]}</th>
              </tr>
            </thead>
            <tbody>
              {differ.map((line) => (
                <tr>
                  <th scope="row">{line.label}</th>
                  <td>{line.before === '' ? '—' : line.before}</td>
                  <td>{line.after === '' ? '—' : line.after}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
      {same > 0 && (
        <p class="hint">
          {differ.length === 0
            ? 'The two say the same.'
            : `${same} other field${same === 1 ? ' says' : 's say'} the same in both.`}
        </p>
      )}
    </>
  );
}

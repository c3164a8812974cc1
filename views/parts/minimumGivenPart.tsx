/** What the minimum wall would be for every cover type, while it is typed. */
export interface MinimumGiven {
  /** Why what is typed cannot be used; null where it can. */
  readonly fault: string | null;
  readonly types: readonly { readonly coverType: string; readonly before: string; readonly after: string }[];
}

/** Beside the box of the formula, and anew when that or the figure changes. */
export function MinimumGivenPart({ given }: { given: MinimumGiven | null }) {
  return (
    <div
      class="field-full"
      hx-get="/criteria/minimum"
      hx-include="closest form"
      hx-params="minimum,minimumFormula,unit"
      hx-trigger="input from:#f-minimum delay:400ms, input from:#f-minimumFormula delay:400ms"
      hx-target="#minimum-given"
      hx-select="#minimum-given"
      hx-select-oob="unset"
      hx-swap="outerHTML"
      hx-push-url="false"
      hx-sync="this:queue last"
    >
      <MinimumGivenNow given={given} />
    </div>
  );
}

/** Nothing where no formula stands and none is typed. */
export function MinimumGivenNow({ given }: { given: MinimumGiven | null }) {
  return (
    <div id="minimum-given">
      {given !== null &&
        (given.fault !== null ? (
          <p class="note" data-tell>
            {given.fault}
          </p>
        ) : given.types.length === 0 ? (
          <p class="hint">No cover type is in the catalog yet.</p>
        ) : (
          <Types types={given.types} />
        ))}
    </div>
  );
}

function Types({ types }: Pick<MinimumGiven, 'types'>) {
  const changed = types.filter(({ before, after }) => before !== after).length;
  return (
    <section class="scroll" tabindex={0} aria-label="Minimum wall by cover type">
      <table class="side-by-side">
        <caption data-tell>
          Minimum wall by cover type:{' '}
          {changed === 0 ? 'none changes' : `${changed} of ${types.length} change`}
        </caption>
        <thead>
          <tr>
            <td />
            <th scope="col">now</th>
            <th scope="col">if saved</th>
          </tr>
        </thead>
        <tbody>
          {types.map(({ coverType, before, after }) => (
            <tr>
              <th scope="row">{coverType}</th>
              <td>{before}</td>
              <td>{after === before ? 'the same' : after}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

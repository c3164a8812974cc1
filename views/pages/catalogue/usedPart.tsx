import type { ComponentChildren } from 'preact';
import { printDay } from '../../../shared/words/day.ts';
import { slipName } from '../../../shared/words/stud/slip.ts';
import { type CatalogueKind, ENTRY_WORD } from '../../../shared/words/terms.ts';

/** How many name it, and the newest of them. */
interface Named<Line> {
  readonly count: number;
  readonly newest: readonly Line[];
}

/** Which jobs and slips name an entry of the catalog. */
export interface WhereUsed {
  readonly jobs: Named<{ readonly number: string; readonly receivedOn: string }>;
  readonly slips: Named<{ readonly number: number; readonly day: string }>;
  /** Cover types made of it, or lined with it. */
  readonly covers: Named<{ readonly id: string; readonly name: string }>;
}

/** What names nothing of a kind, where that is not a job or a slip. */
const NOBODY: Partial<Readonly<Record<CatalogueKind, string>>> = {
  steel: 'No cover type',
  lining: 'No cover type',
  lathe: 'No job',
};

/** Where an entry is named, newest first. */
export function UsedPart({ used: { jobs, slips, covers }, kind }: { used: WhereUsed; kind: CatalogueKind }) {
  return (
    <section id="where-used">
      <h2>Where it is used</h2>
      {jobs.count + slips.count + covers.count === 0 && (
        <p>
          {NOBODY[kind] ?? 'No job and no counter slip'} names this {ENTRY_WORD[kind].one}.
        </p>
      )}
      <Line
        named={covers}
        one="cover type"
        many="cover types"
        of={({ id, name }) => <a href={`/catalogue/family/${encodeURIComponent(id)}`}>{name}</a>}
      />
      <Line
        named={jobs}
        one="job"
        many="jobs"
        of={({ number, receivedOn }) => (
          <>
            <a href={`/jobs/${encodeURIComponent(number)}`}>Job {number}</a>{' '}
            <small>{printDay(receivedOn)}</small>
          </>
        )}
      />
      <Line
        named={slips}
        one="counter slip"
        many="counter slips"
        of={({ number, day }) => (
          <>
            <a href={`/slips/${number}`}>Slip {slipName(number)}</a> <small>{printDay(day)}</small>
          </>
        )}
      />
    </section>
  );
}

function Line<One>(props: {
  named: Named<One>;
  one: string;
  many: string;
  of: (one: One) => ComponentChildren;
}) {
  const { named, one, many, of } = props;
  const { count, newest } = named;
  if (count === 0) return null;
  const older = count - newest.length;
  return (
    <>
      <p>
        {count} {count === 1 ? one : many}
        {older > 0 ? `, the newest ${newest.length}:` : ':'}
      </p>
      <ul class="used-in">
        {newest.map((line) => (
          <li>{of(line)}</li>
        ))}
      </ul>
    </>
  );
}

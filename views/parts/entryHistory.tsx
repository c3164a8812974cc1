import { type Compared, SideBySide } from './sideBySide.tsx';
import { When } from './when.tsx';

/** One revision of something in the catalog, or of the criteria, with what it changed. */
export interface EntryRevisionTold {
  readonly revision: number;
  readonly who: string;
  readonly at: string;
  readonly why: string;
  /** "retired", "put back in use"; '' where neither changed. */
  readonly use: string;
  readonly changes: readonly Compared[];
}

/** Every revision, newest first, each with its differences folded under it. */
export function EntryHistory({
  revisions,
  judged,
}: {
  revisions: readonly EntryRevisionTold[];
  /** How many jobs each revision of the limits judged. */
  judged?: ReadonlyMap<number, number>;
}) {
  return (
    <ol class="history">
      {[...revisions].reverse().map((one) => (
        <li id={`revision-${one.revision}`}>
          revision {one.revision}, {one.who}, <When at={one.at} />
          {one.use !== '' && `, ${one.use}`}
          {one.why !== '' && `: ${one.why}`}
          {judged && <Judged revision={one.revision} count={judged.get(one.revision) ?? 0} />}
          {one.changes.length > 0 && (
            <details class="twin">
              <summary>
                {one.revision === 1
                  ? 'First figures'
                  : `Changed: ${one.changes.length} field${one.changes.length === 1 ? '' : 's'}`}
              </summary>
              <SideBySide
                caption={`What revision ${one.revision} changed`}
                heads={['before', 'after']}
                lines={one.changes}
              />
            </details>
          )}
        </li>
      ))}
    </ol>
  );
}

/** The way to the jobs that were decided under a revision of the limits. */
export function Judged({ revision, count }: { revision: number; count: number }) {
  if (count === 0) return <>. No job decided under it</>;
  return (
    <>
      .{' '}
      <a href={`/criteria/jobs?revision=${revision}`}>
        {count === 1 ? '1 job' : `${count} jobs`} decided under it
      </a>
    </>
  );
}

/** Somebody changed it meanwhile: both versions, with what was typed kept in the form below. */
export interface EntryStale {
  readonly sentence: string;
  readonly who: string;
  readonly at: string;
  readonly compared: readonly Compared[];
}

export function EntryStaleShown({ stale }: { stale: EntryStale }) {
  return (
    <section class="faults stale" role="alert">
      <h2>
        {stale.who} changed this, <When at={stale.at} />, after you opened it
      </h2>
      <p>{stale.sentence} What you typed is below; saving now adds it as a new revision.</p>
      <SideBySide
        caption="Both versions"
        heads={[`saved, by ${stale.who}`, 'yours, not saved yet']}
        lines={stale.compared}
      />
    </section>
  );
}

import type { Frame } from '../frame.ts';
import { Layout } from '../layout.tsx';
import { EmptyState } from '../parts/emptyState.tsx';
import { When } from '../parts/when.tsx';

export interface BackupLine {
  readonly name: string;
  readonly bytes: number;
  readonly at: string;
  readonly reason: 'asked' | 'scheduled' | 'before-upgrade' | 'replaced';
  readonly jobs: number;
  /** Photos that were missing or damaged when it was made. */
  readonly missing: number;
}

export interface RecordsProps {
  readonly frame: Frame;
  readonly counts: { readonly jobs: number; readonly readings: number; readonly photos: number };
  readonly where: string;
  /** The records are in a database server, into which a backup is restored otherwise than into a file. */
  readonly inPostgres: boolean;
  /** "3:30 AM"; null when no daily backup is made. */
  readonly daily: string | null;
  readonly kept: number | null;
  readonly backups: readonly BackupLine[];
  readonly failure: { readonly at: string; readonly message: string } | null;
  readonly refused: string | null;
}

const REASON_WORD: Readonly<Record<BackupLine['reason'], string>> = {
  asked: 'asked for',
  scheduled: 'daily',
  'before-upgrade': 'before an upgrade',
  replaced: 'before a restore',
};

/** The shop's memory from outside: how much, where, and its copies. */
export function RecordsPage(props: RecordsProps) {
  const { frame, counts, where, refused } = props;
  return (
    <Layout title="Records" here="records" {...frame}>
      <h1>Records</h1>
      {refused && (
        <section class="faults" role="alert">
          <h2>No backup was made</h2>
          <p>{refused}</p>
        </section>
      )}
      <dl class="facts">
        <dt>Kept</dt>
        <dd>
          {counts.jobs} job{counts.jobs === 1 ? '' : 's'}, {counts.readings} reading
          {counts.readings === 1 ? '' : 's'}, {counts.photos} photo{counts.photos === 1 ? '' : 's'}
        </dd>
        <dt>Where</dt>
        <dd>{where}</dd>
      </dl>
      <Backups {...props} />
      <section id="export">
        <h2>Everything, to take along</h2>
        <p>
          Tables for any spreadsheet, the same exactly for this program, and the photos as they were sent, in
          one archive. An empty shop made from it is the same shop. Passwords are not in it.
        </p>
        <form method="post" action="/records/export" id="export-form">
          <div class="actions">
            <button class="button" type="submit" id="export-everything">
              Export everything
            </button>
          </div>
        </form>
      </section>
    </Layout>
  );
}

function Backups({ backups, daily, kept, failure, inPostgres }: RecordsProps) {
  return (
    <section id="backups">
      <h2>Backups</h2>
      <p>
        {daily === null
          ? 'No daily backup is made (BACKUP_AT is off).'
          : `One is made every day at ${daily}, and the newest ${kept} of these are kept. Those asked for here stay until a person removes them.`}{' '}
        {inPostgres
          ? 'They lie in the folder with the photos, on this machine: carry one away now and then.'
          : 'They lie on the same disk as the records: carry one away now and then.'}
      </p>
      {failure && (
        <p class="note" role="alert">
          The daily backup of <When at={failure.at} /> was not made. {failure.message}
        </p>
      )}
      <form method="post" action="/records/backups" id="backup-form">
        <div class="actions">
          <button class="button first" type="submit" id="backup-now">
            Make a backup now
          </button>
        </div>
      </form>
      {backups.length === 0 ? (
        <EmptyState title="No backup yet">
          Make one now; it takes a moment, and nobody has to stop.
        </EmptyState>
      ) : (
        <ul class="plain">
          {backups.map((one) => (
            <li>
              <When at={one.at} />, {REASON_WORD[one.reason]}: {one.jobs} job{one.jobs === 1 ? '' : 's'},{' '}
              {(one.bytes / 1_048_576).toFixed(1)} MB, checked when made
              {one.missing > 0 && `, without ${one.missing} photo(s) missing or damaged on the disk`}.{' '}
              <a href={`/records/backups/${one.name}.zip`} id={`get-${one.name}`}>
                Download {one.name}
              </a>
            </li>
          ))}
        </ul>
      )}
      <p class="hint">
        {inPostgres ? (
          <>
            To go back to one, stop the program, make an empty database, name it in DATABASE_URL and run{' '}
            <code>npm run restore -- NAME</code>. The database in use now stays as it is.
          </>
        ) : (
          <>
            To go back to one, stop the program and run <code>npm run restore -- NAME</code>. What is there
            now is moved aside, not lost.
          </>
        )}
      </p>
    </section>
  );
}

import type { Fault } from '../../shared/words/refusal.ts';
import type { Frame } from '../frame.ts';
import { Layout } from '../layout.tsx';
import { EmptyState } from '../parts/emptyState.tsx';
import { ErrorSummary } from '../parts/form/errorSummary.tsx';
import { errorsOf } from '../parts/form/errorsOf.ts';
import { Field } from '../parts/form/fieldBox.tsx';
import { WhoField } from '../parts/form/whoField.tsx';
import { When } from '../parts/when.tsx';

export interface BackupLine {
  readonly name: string;
  readonly bytes: number;
  readonly at: string;
  readonly reason: 'asked' | 'scheduled' | 'before-upgrade' | 'before-begin' | 'replaced';
  readonly jobs: number;
  /** Photos that were missing or damaged when it was made. */
  readonly missing: number;
}

export interface RecordsProps {
  readonly frame: Frame;
  readonly counts: {
    readonly jobs: number;
    /** Jobs of the demo that beginning for real put away: saved, but found no more. */
    readonly putAway: number;
    readonly readings: number;
    readonly photos: number;
  };
  readonly where: string;
  /** The records are in a database server, into which a backup is restored otherwise than into a file. */
  readonly inPostgres: boolean;
  /** "3:30 AM"; null when no daily backup is made. */
  readonly daily: string | null;
  readonly kept: number | null;
  readonly backups: readonly BackupLine[];
  readonly failure: { readonly at: string; readonly message: string } | null;
  readonly refused: string | null;
  /** A backup or an export that is being made: how far it is. */
  readonly underWay: { readonly words: string; readonly done: number; readonly of: number } | null;
  /** Why the last one came to nothing, and what was then left. */
  readonly stopped: string | null;
  /** The newest copy that left this machine; null while none is recorded. */
  readonly lastAway: { readonly at: string; readonly who: string; readonly whither: string } | null;
  /** That another is due; null while none is. */
  readonly copyDue: string | null;
  readonly awayRefused: {
    readonly fields: Readonly<Record<string, string>>;
    readonly faults: readonly Fault[];
  } | null;
}

const REASON_WORD: Readonly<Record<BackupLine['reason'], string>> = {
  asked: 'made by hand',
  scheduled: 'daily',
  'before-upgrade': 'before an upgrade',
  'before-begin': 'before the demo was put away',
  replaced: 'before a restore',
};

/** The shop's memory from outside: how much, where, and its copies. */
export function RecordsPage(props: RecordsProps) {
  const { frame, counts, where, refused } = props;
  return (
    <Layout title="Backups" here="records" {...frame}>
      <h1>Backups</h1>
      {refused && (
        <section class="faults" role="alert">
          <h2>Backup not made</h2>
          <p>{refused}</p>
        </section>
      )}
      <dl class="facts">
        <dt>Saved here</dt>
        <dd>
          {counts.jobs} job{counts.jobs === 1 ? '' : 's'}
          {counts.putAway > 0 && ` (${counts.putAway} of the demo, put away)`}, {counts.readings} reading
          {counts.readings === 1 ? '' : 's'}, {counts.photos} photo{counts.photos === 1 ? '' : 's'}
        </dd>
        <dt>Saved in</dt>
        <dd>{where}</dd>
      </dl>
      <Backups {...props} />
      <section id="away">
        <h2>Off this machine</h2>
        {props.copyDue !== null && <p class="note">{props.copyDue}</p>}
        <p>
          {props.lastAway === null ? (
            'Nobody has recorded yet that a backup or an export was put elsewhere.'
          ) : (
            <>
              Last: {props.lastAway.whither}, {props.lastAway.who}, <When at={props.lastAway.at} />.
            </>
          )}{' '}
          Download a backup or an export, put it on another machine or drive, then record it here.
        </p>
        <form method="post" action="/records/away" id="away-form">
          <ErrorSummary faults={props.awayRefused?.faults ?? []} />
          <div class="fields">
            <Field
              label="Where the copy is now"
              name="whither"
              value={props.awayRefused?.fields.whither}
              error={errorsOf(props.awayRefused?.faults ?? [])('whither')}
              hint="As “drive in the safe”"
            />
            <WhoField
              known={frame.initials}
              typed={props.awayRefused?.fields.who}
              error={errorsOf(props.awayRefused?.faults ?? [])('who')}
            />
          </div>
          <div class="actions">
            <button class="button" type="submit" id="record-away">
              Record it
            </button>
          </div>
        </form>
      </section>
      <section id="export">
        <h2>Export everything</h2>
        <p>
          One .zip with tables for a spreadsheet, the photos as they were sent, plus an exact copy this
          program can reload into an empty shop. Passwords are not in it.
        </p>
        <form method="post" action="/records/export" id="export-form" data-download>
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

/** Only this part of the page is swapped. */
const SWAPS = { 'hx-target': '#backups', 'hx-select': '#backups', 'hx-swap': 'outerHTML' } as const;

/** Looks every second while something is being made; before that, once an export is asked for. */
function Making({ underWay, stopped }: Pick<RecordsProps, 'underWay' | 'stopped'>) {
  if (underWay === null) {
    return (
      <>
        {stopped && (
          <p class="note" role="alert">
            {stopped}
          </p>
        )}
        <form method="post" action="/records/backups" id="backup-form" hx-post="/records/backups" {...SWAPS}>
          <div class="actions">
            <button class="button first" type="submit" id="backup-now" name="make" data-then="stop">
              Make a backup now
            </button>
          </div>
        </form>
        {/* Not at submit: htmx would keep the form from being sent. */}
        <span hidden hx-get="/records" hx-trigger="formdata from:#export-form delay:300ms" {...SWAPS} />
      </>
    );
  }
  const { words, done, of } = underWay;
  return (
    <div class="under-way" hx-get="/records" hx-trigger="every 1s" {...SWAPS}>
      <label for="making" id="making-words">
        {words}
      </label>
      <progress id="making" {...(of > 1 && { value: done, max: of })} />
      <noscript>
        <p>Load this page again to see how far it is.</p>
      </noscript>
      <form method="post" action="/records/stop" id="stop-form" hx-post="/records/stop" {...SWAPS}>
        <button
          class="button"
          type="submit"
          id="stop-making"
          name="stop"
          data-then="make"
          aria-describedby="making-words"
        >
          Stop it
        </button>
      </form>
    </div>
  );
}

function Backups(props: RecordsProps) {
  const { backups, daily, kept, failure, inPostgres } = props;
  return (
    <section id="backups">
      <h2>Backups made</h2>
      <p>
        {daily === null
          ? 'No daily backup is made: BACKUP_AT is off.'
          : `A backup is made every day at ${daily}. The newest ${kept} daily backups stay; those made here stay until you delete their folders.`}{' '}
        {inPostgres
          ? 'Backups are on this computer, in the folder with the photos. Take one off site now and then.'
          : 'Backups are on the same disk as the shop itself. Take one off site now and then.'}
      </p>
      {failure && (
        <p class="note" role="alert">
          The daily backup of <When at={failure.at} /> was not made. {failure.message}
        </p>
      )}
      <Making {...props} />
      {backups.length === 0 ? (
        <EmptyState title="No backup yet">
          Make one now. It takes a moment, and people can go on working.
        </EmptyState>
      ) : (
        <ul class="plain">
          {backups.map((one) => (
            <li>
              <When at={one.at} />, {REASON_WORD[one.reason]}: {one.jobs} job{one.jobs === 1 ? '' : 's'},{' '}
              {(one.bytes / 1_048_576).toFixed(1)} MB, checked when made
              {one.missing > 0 &&
                `, ${one.missing} ${one.missing === 1 ? 'photo' : 'photos'} missing or damaged on the disk`}
              .{' '}
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
            To go back to one, stop the program. Make an empty database, set DATABASE_URL to it, and run{' '}
            <code>npm run restore -- NAME</code>. The present database stays as it is.
          </>
        ) : (
          <>
            To go back to one, stop the program and run <code>npm run restore -- NAME</code>. What is here now
            is moved aside, not lost.
          </>
        )}
      </p>
    </section>
  );
}

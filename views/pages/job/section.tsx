import type { ComponentChildren } from 'preact';
import type { Kept, SectionName } from '../../../shared/words/job.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { ErrorSummary } from '../../parts/errorSummary.tsx';
import { Field } from '../../parts/field.tsx';

/** A form of the job that was not taken: what was typed is kept, and why it was not taken. */
export interface Refused {
  readonly section: SectionName | 'readings' | 'photos';
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  /** Somebody changed the same thing meanwhile: who, when, and how it stands now. */
  readonly stale: { readonly who: string; readonly at: string; readonly lines: readonly string[] } | null;
}

export interface SectionProps {
  readonly id: string;
  readonly number: number;
  readonly title: string;
  readonly state: 'done' | 'next' | 'missing' | 'later';
  /** One sentence of how it stands, seen while it is folded. */
  readonly summary: ComponentChildren;
  readonly open: boolean;
  readonly children: ComponentChildren;
}

const STATE_WORD = { done: 'done', next: 'next', missing: 'missing', later: 'later' } as const;

/** One section of the job: its state in a word, one sentence, and the rest folded under it. */
export function Section({ id, number, title, state, summary, open, children }: SectionProps) {
  return (
    <section class={`job-section job-section-${state}`} id={id}>
      <details open={open}>
        <summary>
          <h2>
            {number}. {title}
          </h2>
          <span class="state-word">{STATE_WORD[state]}</span>
          <span class="section-summary">{summary}</span>
        </summary>
        <div class="section-body">{children}</div>
      </details>
    </section>
  );
}

export interface JobFormProps {
  readonly id: string;
  readonly action: string;
  /** The job's revision this form was filled from. */
  readonly revision: number;
  readonly initials: string;
  /** A signed job is amended, never edited: every change says why. */
  readonly signed: boolean;
  readonly refused: Refused | null;
  readonly submit: string;
  readonly first?: boolean;
  /** Sends a file beside the fields. */
  readonly file?: boolean;
  readonly children: ComponentChildren;
}

/** A form that writes: carries the revision it started from, and who is writing. */
export function JobForm(props: JobFormProps) {
  const { id, action, revision, initials, signed, refused, submit, first = true, children } = props;
  const typed = refused?.fields;
  return (
    <form
      method="post"
      action={action}
      id={id}
      class="job-form"
      enctype={props.file ? 'multipart/form-data' : undefined}
    >
      {refused?.stale && <Stale stale={refused.stale} />}
      {refused && <ErrorSummary faults={refused.faults} />}
      <input type="hidden" name="from" value={revision} />
      {children}
      <div class="fields">
        {signed && (
          <Field
            id={`${id}-why`}
            label="Why it is changed after signing"
            name="why"
            value={typed?.why}
            error={refused?.faults.find((fault) => fault.path === 'why')?.message}
            size="full"
          />
        )}
        <Field
          id={`${id}-who`}
          label="Your initials"
          name="who"
          value={typed?.who ?? initials}
          error={refused?.faults.find((fault) => fault.path === 'who')?.message}
          size="figure"
          input={{ maxLength: 8, autocomplete: 'off' }}
        />
      </div>
      <div class="actions">
        <button class={first ? 'button first' : 'button'} type="submit" id={`${id}-send`}>
          {submit}
        </button>
      </div>
    </form>
  );
}

function Stale({ stale }: { stale: NonNullable<Refused['stale']> }) {
  return (
    <section class="faults stale" role="alert">
      <h3>
        {stale.who} changed this at {stale.at}, after you opened it.
      </h3>
      <p>Nothing of yours was kept yet, and nothing was overwritten. As it stands now:</p>
      <ul>
        {stale.lines.map((line) => (
          <li>{line}</li>
        ))}
      </ul>
      <p>What you typed is below. Compare the two; saving now adds yours as a new revision.</p>
    </section>
  );
}

/** "AK, 24 Nov 2026 14:05 UTC, revision 7". */
export function Who({ kept }: { kept: Kept<unknown> }) {
  return (
    <p class="who">
      {kept.who}, {moment(kept.at)}, revision {kept.revision}
      {kept.why !== '' && <>: {kept.why}</>}
    </p>
  );
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** `2026-11-24T14:05:09Z` as "24 Nov 2026 14:05 UTC". */
export function moment(at: string): string {
  return `${day(at)} ${at.slice(11, 16)} UTC`;
}

/** `2026-11-24` as "24 Nov 2026". */
export function day(at: string): string {
  const [year, month, date] = at.slice(0, 10).split('-');
  return `${Number(date)} ${MONTHS[Number(month) - 1] ?? month} ${year}`;
}

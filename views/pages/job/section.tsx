import type { ComponentChildren } from 'preact';
import type { HistoryLine, Kept, SectionName, StepState } from '../../../shared/words/job.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { DoubtedLength } from '../../parts/form/askedHere.ts';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { Field } from '../../parts/form/fieldBox.tsx';
import { InForm } from '../../parts/form/inForm.ts';
import { Questions } from '../../parts/form/questionAt.tsx';
import { WhoField } from '../../parts/form/whoField.tsx';
import { STEP_WORD, StepSign } from '../../parts/jobSteps.tsx';
import { type Compared, SideBySide } from '../../parts/sideBySide.tsx';
import { When } from '../../parts/when.tsx';

/** A form of the job that was not taken: what was typed is kept, and why it was not taken. */
export interface Refused {
  readonly section: SectionName | 'readings' | 'photos' | 'pass' | 'welded' | 'replaced' | 'retightened';
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly stale: StaleShown | null;
  /** What looks like a slip, each with a button for the value probably meant. */
  readonly doubts?: readonly DoubtedLength[];
}

/** One revision with what it changed, in words. */
export interface RevisionTold extends HistoryLine {
  readonly summary: string;
  readonly changes: readonly Compared[];
}

/** Somebody changed the same thing meanwhile, or something it rests on. */
export interface StaleShown {
  /** Who changed this very thing last, and when; null when it is something else of the job that changed. */
  readonly theirs: { readonly who: string; readonly at: string; readonly revision: number } | null;
  /** What of the catalog changed, in words, where it is not the section itself. */
  readonly entry?: string;
  /** It as it stands, and as it was typed here; of an entry, as it was seen and as it is now. */
  readonly compared: readonly Compared[];
  /** Every change since the form was opened. */
  readonly since: readonly RevisionTold[];
}

export interface SectionProps {
  readonly id: string;
  readonly number: number;
  readonly title: string;
  readonly state: StepState;
  /** One sentence of how it stands, seen while it is folded. */
  readonly summary: ComponentChildren;
  readonly open: boolean;
  readonly children: ComponentChildren;
}

/** One step of the job: a line with where it stands and what came of it; opened, the whole of it. */
export function Section({ id, number, title, state, summary, open, children }: SectionProps) {
  return (
    <section
      class={`job-section job-section-${state}`}
      id={id}
      aria-current={state === 'next' ? 'step' : undefined}
    >
      <details open={open}>
        <summary>
          <StepSign state={state} />
          <h2>
            {number}. {title}
          </h2>
          <span class="state-word">{STEP_WORD[state]}</span>
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
  /** Asks for the reason whether signed or not, in these words. */
  readonly why?: string;
  /** Of its lengths, where it has any: sent along, so that they mean the same whatever is chosen since. */
  readonly unit?: LengthUnit;
  readonly refused: Refused | null;
  /** Asked about though nothing was refused. */
  readonly doubts?: readonly DoubtedLength[];
  /** What stands in its boxes, while nothing was refused. */
  readonly shown?: Readonly<Record<string, string>>;
  readonly submit: string;
  /** Another way to send it. */
  readonly also?: { readonly label: string; readonly name: string };
  readonly first?: boolean;
  /** A drawing of what is typed, beside the boxes. */
  readonly beside?: ComponentChildren;
  /** Sends a file beside the fields. */
  readonly file?: boolean;
  readonly children: ComponentChildren;
}

/** A form that writes: carries the revision it started from, and who is writing. */
export function JobForm(props: JobFormProps) {
  const { id, action, revision, refused, children } = props;
  const { doubts = [], shown = {} } = props;
  return (
    <InForm.Provider value={id}>
      <form
        method="post"
        action={action}
        id={id}
        class="job-form"
        enctype={props.file ? 'multipart/form-data' : undefined}
      >
        {refused?.stale && <Stale stale={refused.stale} />}
        {refused && <ErrorSummary faults={refused.faults} goTo={refused.stale === null} />}
        <input type="hidden" name="from" value={revision} />
        {props.unit && <input type="hidden" name="unit" value={props.unit} />}
        <Questions
          doubts={refused?.doubts?.length ? refused.doubts : doubts}
          fields={refused?.fields ?? shown}
        >
          {props.beside ? (
            <div class="drawn-form">
              <div class="drawn-boxes">
                {children}
                <Foot {...props} />
              </div>
              {props.beside}
            </div>
          ) : (
            children
          )}
        </Questions>
        {!props.beside && <Foot {...props} />}
      </form>
    </InForm.Provider>
  );
}

/** Why, who, and what sends it. */
function Foot({ id, initials, signed, why, refused, submit, first = true, also }: JobFormProps) {
  const typed = refused?.fields;
  const whyError = refused?.faults.find((fault) => fault.path === 'why')?.message;
  return (
    <>
      <div class="fields">
        {(signed || why !== undefined || whyError !== undefined) && (
          <Field
            label={signed ? 'Reason for the change after signing' : (why ?? 'Why it changes')}
            name="why"
            value={typed?.why}
            error={whyError}
            size="full"
          />
        )}
        <WhoField
          known={initials}
          typed={typed?.who}
          error={refused?.faults.find((fault) => fault.path === 'who')?.message}
        />
      </div>
      <div class="actions">
        <button class={first ? 'button first' : 'button'} type="submit" id={`${id}-send`}>
          {submit}
        </button>
        {also && (
          <button class="button" type="submit" id={`${id}-${also.name}`} name={also.name} value="1">
            {also.label}
          </button>
        )}
      </div>
    </>
  );
}

/** Both versions beside one another, and what else changed meanwhile. */
function Stale({ stale: { theirs, entry, compared, since } }: { stale: StaleShown }) {
  return (
    <section class="faults stale" role="alert" tabindex={-1} autofocus>
      <h3>
        {theirs ? (
          <>
            {theirs.who} changed {entry ?? 'this'}, <When at={theirs.at} />, after you opened it.
          </>
        ) : (
          'The job changed after you opened it.'
        )}
      </h3>
      <p>
        {entry === undefined
          ? 'Nothing of yours is saved yet, and nothing was overwritten. Compare below. Saving adds yours as a new revision.'
          : 'Nothing of yours is saved yet. Check the new answer, then save again.'}
      </p>
      {compared.length > 0 && (
        <SideBySide
          caption={entry === undefined ? 'Both versions' : 'What changed'}
          heads={
            entry !== undefined
              ? ['as you saw it', 'as it is now']
              : [theirs ? `saved, by ${theirs.who}` : 'saved', 'yours, not saved yet']
          }
          lines={compared}
        />
      )}
      {since.map((one) => (
        <>
          <p>
            Revision {one.revision}, {one.who}, <When at={one.at} />: {one.summary}
            {one.why !== '' && <>. Why: {one.why}</>}
          </p>
          <SideBySide
            caption={`What revision ${one.revision} changed`}
            heads={['before', 'after']}
            lines={one.changes}
          />
        </>
      ))}
    </section>
  );
}

/** Over findings that today's calculation does not find the same. */
export function AsKept() {
  return <p class="note">Shown as written then, in the units of that day.</p>;
}

/** "AK, 24 Nov 2026 14:05 UTC, revision 7". */
export function Who({ kept }: { kept: Kept<unknown> }) {
  return (
    <p class="who">
      {kept.who}, <When at={kept.at} />, revision {kept.revision}
      {kept.why !== '' && <>: {kept.why}</>}
    </p>
  );
}

import type { ComponentChildren } from 'preact';
import { printSure } from '../../../shared/words/cut.ts';
import type { Job } from '../../../shared/words/job.ts';
import { printLength } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import {
  AGAINST_WORD,
  SHELF_WORD,
  type ShelfAgainst,
  type ShelfChange,
  type ShelfWhat,
  WALLS_WORD,
} from '../../../shared/words/shelf.ts';
import { type Frame, may } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Field } from '../../parts/form/fieldBox.tsx';
import { Hidden } from '../../parts/form/hidden.tsx';
import { InForm } from '../../parts/form/inForm.ts';
import { WhoField } from '../../parts/form/whoField.tsx';
import { When } from '../../parts/when.tsx';
import { shelfAddress } from './jobShelf.tsx';
import { type ShelfRow, WILL_WORD } from './shelfPage.tsx';

export interface ShelfCoverProps {
  readonly frame: Frame;
  readonly job: Job;
  readonly against: ShelfAgainst | null;
  /** Under the shop limits of today; null while it does not lie on the shelf. */
  readonly cover: ShelfRow | null;
  /** Newest first. */
  readonly changes: readonly ShelfChange[];
  /** What was typed and not taken. */
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  /** What somebody else did with it since the page was opened. */
  readonly stale: ShelfChange | null;
}

/** One cover of the shelf: what is known of it, where it lies, for which job, and what was done with it. */
export function ShelfCoverPage(props: ShelfCoverProps) {
  const { frame, job, cover, stale, changes } = props;
  const href = `/jobs/${encodeURIComponent(job.number)}`;
  return (
    <Layout title={`Shelf: cover of job ${job.number}`} here="shelf" {...frame}>
      <h1>
        Cover of job {job.number}: {cover === null ? 'not on the shelf' : `at ${cover.lies}`}
      </h1>
      {stale !== null && <Stale stale={stale} fields={props.fields} />}
      {cover !== null && <About cover={cover} frame={frame} />}
      <div class="actions no-print">
        <a class="button" href={href} id="to-job">
          Job {job.number}
        </a>
        {cover !== null && (
          <a class="button" href={`${shelfAddress(job.number)}/tag`} id="to-shelf-tag">
            Print the shelf tag
          </a>
        )}
        <a class="button" href="/shelf">
          The whole shelf
        </a>
      </div>
      {may(frame, 'recorder') && <Forms {...props} />}
      {changes.length > 0 && <Changes changes={changes} />}
    </Layout>
  );
}

function About({ cover, frame }: { cover: ShelfRow; frame: Frame }) {
  const unit = frame.lengthUnit;
  const facts: readonly (readonly [string, ComponentChildren])[] = [
    ['Will it do?', `${WILL_WORD[cover.will]}. ${cover.reasons.join(' ')}`],
    ['Cover type', cover.familyName],
    [
      'Wall left',
      cover.wallLeftMm === null
        ? ''
        : `${printLength(cover.wallLeftMm, unit)}, ${WALLS_WORD[cover.wallsAre]}`,
    ],
    ['How sure', cover.sure === null ? '' : `${printSure(cover.sure)} that no station is below the minimum`],
    ['Cuts left', cover.cutsLeft],
    ['Studs', cover.studName],
    ['Flexplate stacks they suit', cover.suits.join('; ')],
    ['Where it lies', cover.lies],
    [
      'Reserved for',
      cover.forJob !== null && <a href={`/jobs/${encodeURIComponent(cover.forJob)}`}>Job {cover.forJob}</a>,
    ],
  ];
  return (
    <dl class="facts" id="shelf-about">
      {facts
        .filter(([, told]) => told !== '' && told !== null && told !== false)
        .map(([label, told]) => (
          <>
            <dt>{label}</dt>
            <dd>{told}</dd>
          </>
        ))}
    </dl>
  );
}

/** What somebody else did, beside what was asked here. */
function Stale({ stale, fields }: { stale: ShelfChange; fields: ShelfCoverProps['fields'] }) {
  const yours = SHELF_WORD[(fields.what ?? 'put') as ShelfWhat] ?? '';
  return (
    <section class="faults stale" role="alert" tabindex={-1} autofocus id="shelf-stale">
      <h2>
        {stale.who} changed this, <When at={stale.at} />, after you opened it.
      </h2>
      <p>
        Theirs: {changeInWords(stale)} Yours, not saved: {yours.toLowerCase()}
        {fields.forJob ? ` for job ${fields.forJob}` : ''}
        {fields.lies ? `, at ${fields.lies}` : ''}. Check it as it is now, then send yours again if it still
        counts.
      </p>
    </section>
  );
}

function changeInWords({ what, lies, forJob, why }: ShelfChange): string {
  const where = what === 'put' || what === 'moved' ? `, at ${lies}` : '';
  const whom = what === 'reserved' ? ` for job ${forJob}` : '';
  return `${SHELF_WORD[what]}${whom}${where}.${why === '' ? '' : ` ${why}`}`;
}

function Forms(props: ShelfCoverProps) {
  const { cover, against } = props;
  if (cover === null) {
    return against === null ? (
      <ShelfForm {...props} what="put" submit="Put it on the shelf" open lies />
    ) : (
      <p class="note" id="not-for-shelf">
        {AGAINST_WORD[against]} It can’t be put on the shelf.
      </p>
    );
  }
  return (
    <>
      {cover.forJob === null ? (
        <ShelfForm {...props} what="reserved" title="Reserve for a job" submit="Reserve it" forJob open />
      ) : (
        <ShelfForm {...props} what="freed" title="No longer reserve it" submit="Free it" why="optional" />
      )}
      <ShelfForm {...props} what="moved" title="Moved to another place" submit="Save the place" lies />
      <ShelfForm {...props} what="off" title="Take it off the shelf" submit="Take it off" why="needed" />
    </>
  );
}

interface ShelfFormProps extends ShelfCoverProps {
  readonly what: ShelfWhat;
  readonly title?: string;
  readonly submit: string;
  readonly lies?: boolean;
  readonly forJob?: boolean;
  readonly why?: 'optional' | 'needed';
  readonly open?: boolean;
}

/** One thing that can be done with it; all but the likeliest are folded. */
function ShelfForm(props: ShelfFormProps) {
  const { frame, job, what, title, submit, changes, open = false } = props;
  const here = props.fields.what === what;
  const fields = here ? props.fields : {};
  const faults = here ? props.faults : [];
  const error = errorsOf(faults);
  const form = (
    <InForm.Provider value={`shelf-${what}`}>
      <form method="post" action={shelfAddress(job.number)} id={`shelf-${what}`} class="job-form">
        <ErrorSummary faults={faults} />
        <Hidden fields={{ what, from: String(changes[0]?.place ?? 0) }} />
        <div class="fields">
          {props.lies && (
            <Field
              label="Where it lies"
              name="lies"
              value={fields.lies}
              error={error('lies')}
              hint="As “rack B, third board”"
            />
          )}
          {props.forJob && (
            <Field
              label="Job number"
              name="forJob"
              value={fields.forJob}
              error={error('forJob')}
              size="figure"
            />
          )}
          {props.why !== undefined && (
            <Field
              label={what === 'off' ? 'Why it is taken off' : 'Why'}
              name="why"
              value={fields.why}
              error={error('why')}
              optional={props.why === 'optional'}
              size="full"
            />
          )}
          <WhoField known={frame.initials} typed={fields.who} error={error('who')} />
        </div>
        <div class="actions">
          <button class={open ? 'button first' : 'button'} type="submit" id={`shelf-${what}-send`}>
            {submit}
          </button>
        </div>
      </form>
    </InForm.Provider>
  );
  if (title === undefined) return form;
  return (
    <details class="change" open={open || here}>
      <summary>{title}</summary>
      {form}
    </details>
  );
}

function Changes({ changes }: Pick<ShelfCoverProps, 'changes'>) {
  return (
    <section id="shelf-changes">
      <h2>What was done with it, newest first</h2>
      <ul class="plain">
        {changes.map((change) => (
          <li>
            {change.who}, <When at={change.at} />: {changeInWords(change)}
          </li>
        ))}
      </ul>
    </section>
  );
}

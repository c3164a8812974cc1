import { printDay } from '../../../shared/words/day.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { DECISION_WORD, VERDICT_WORD } from '../../../shared/words/verdicts.ts';
import { type RestedOn, TO_DO, type Wrong } from '../../../shared/words/wrong.ts';
import { type Frame, may } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field, type Option, TextArea } from '../../parts/form/fieldBox.tsx';
import { WhoField } from '../../parts/form/whoField.tsx';
import { ListTable } from '../../parts/listTable.tsx';
import { When } from '../../parts/when.tsx';
import { STAGE_WORD } from '../job/stepWords.ts';

export interface WrongListProps {
  readonly frame: Frame;
  readonly all: readonly Wrong[];
  readonly things: readonly Option[];
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
}

/** What was found to be wrong, and the form to mark something. */
export function WrongListPage({ frame, all, things, fields, faults }: WrongListProps) {
  const error = errorsOf(faults);
  return (
    <Layout title="Something was wrong" here="trends" {...frame}>
      <link rel="stylesheet" href="/assets/lists.css" />
      <p class="back">
        <a href="/trends">Trends</a>
      </p>
      <h1>Something was wrong</h1>
      <p class="why">
        A gauge, a catalog entry, limits or a calculation that was wrong is marked here. Every job it was used
        for is then listed, to be gone through.
      </p>
      {all.length > 0 && (
        <ListTable
          caption="Marked wrong"
          columns={[
            { label: 'Marked wrong', plain: true },
            { label: 'From' },
            { label: 'Because', plain: true },
            { label: 'By' },
          ]}
          rows={all.map((one) => ({
            href: `/wrong/${one.number}`,
            name: one.name,
            cells: [printDay(one.since), one.reason, one.who],
          }))}
        />
      )}
      {may(frame, 'keeper') ? (
        <form method="post" action="/wrong" id="wrong-form">
          <h2>Mark something wrong</h2>
          <ErrorSummary faults={faults} />
          <div class="fields">
            <Choice
              label="What was wrong"
              name="thing"
              value={fields.thing ?? ''}
              error={error('thing')}
              options={things}
            />
            <Field
              label="From this day on"
              name="since"
              type="date"
              value={fields.since}
              size="day"
              error={error('since')}
            />
            <TextArea
              label="What was wrong with it"
              name="reason"
              value={fields.reason}
              error={error('reason')}
            />
            <WhoField known={frame.initials} typed={fields.who} error={error('who')} />
          </div>
          <div class="actions">
            <button class="button first" type="submit" id="mark-wrong">
              Mark it, and list the jobs
            </button>
          </div>
        </form>
      ) : (
        <p class="note">Only a manager can mark something wrong.</p>
      )}
    </Layout>
  );
}

export interface WrongJobsProps {
  readonly frame: Frame;
  readonly wrong: Wrong;
  readonly jobs: readonly RestedOn[];
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
}

const MOST_SHOWN = 100;

/** The jobs that rested on it, the worst first, each closed with a word. */
export function WrongJobsPage({ frame, wrong, jobs, fields, faults }: WrongJobsProps) {
  const open = jobs.filter(({ closed }) => closed === null);
  const closed = jobs.filter((one) => one.closed !== null);
  return (
    <Layout title={`${wrong.name} was wrong`} here="trends" {...frame}>
      <p class="back">
        <a href="/wrong">Something was wrong</a>
      </p>
      <h1>{wrong.name} was wrong</h1>
      <p>
        From {printDay(wrong.since)} on: {wrong.reason} Marked by {wrong.who}, <When at={wrong.at} />.
      </p>
      <p>
        <b>
          {jobs.length === 0
            ? `No job names it from that day on.${wrong.what === 'gauge' ? ' (Jobs whose gauge was typed in words are not found.)' : ''}`
            : `${open.length} of ${jobs.length} jobs to go through.`}
        </b>
      </p>
      {open.length > MOST_SHOWN && <p>The worst {MOST_SHOWN} are shown; closing some brings up others.</p>}
      {open.slice(0, MOST_SHOWN).map((one) => (
        <JobRested {...{ frame, wrong, one, fields, faults }} />
      ))}
      {closed.length > 0 && (
        <section>
          <h2>Gone through</h2>
          <ul>
            {closed.slice(0, MOST_SHOWN).map(({ number, closed: by }) => (
              <li>
                <a href={`/jobs/${encodeURIComponent(number)}`}>Job {number}</a>: {by?.word} ({by?.who},{' '}
                <When at={by?.at ?? ''} />)
              </li>
            ))}
          </ul>
        </section>
      )}
    </Layout>
  );
}

function JobRested({
  frame,
  wrong,
  one,
  fields,
  faults,
}: Omit<WrongJobsProps, 'jobs'> & { readonly one: RestedOn }) {
  const here = fields.job === String(one.jobId);
  const error = here ? errorsOf(faults) : () => null;
  const { before, now, outcome, waits } = one;
  return (
    <section class="rested" id={`job-${one.jobId}`}>
      <h2>
        <a href={`/jobs/${encodeURIComponent(one.number)}`}>Job {one.number}</a>, {STAGE_WORD[one.stage]}
      </h2>
      <p>
        {one.familyName}
        {outcome && `, decided: ${DECISION_WORD[outcome]}`}.{' '}
        {waits
          ? 'Not judged again yet: it will be once some of those above are closed.'
          : now === null
            ? `It can’t be judged again by itself: ${TO_DO[wrong.what]}.`
            : now === before
              ? `Judged again today it says the same: ${VERDICT_WORD[now]}.`
              : `Judged again today: ${VERDICT_WORD[now]}${before ? `; then: ${VERDICT_WORD[before]}` : ''}.`}
      </p>
      {may(frame, 'recorder') && (
        <form method="post" action={`/wrong/${wrong.number}/closed`}>
          {here && <ErrorSummary faults={faults} />}
          <input type="hidden" name="job" value={one.jobId} />
          <div class="fields">
            <Field
              id={`word-${one.jobId}`}
              label="What was done about it"
              name="word"
              value={here ? fields.word : ''}
              error={error('word')}
            />
            <Field
              id={`who-${one.jobId}`}
              label="Your initials"
              name="who"
              value={here ? fields.who : frame.initials}
              error={error('who')}
              size="figure"
              input={{ maxLength: 8 }}
            />
          </div>
          <div class="actions">
            <button class="button" type="submit">
              Close job {one.number}
            </button>
          </div>
        </form>
      )}
    </section>
  );
}

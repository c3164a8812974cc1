import { DECISION_KINDS, type JobLine, STAGES, type Stage } from '../../../shared/words/job.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { SlipLine } from '../../../shared/words/stud/slip.ts';
import { DECISION_WORD } from '../../../shared/words/verdicts.ts';
import { type Frame, may } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { EmptyState } from '../../parts/emptyState.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field, type Option } from '../../parts/form/fieldBox.tsx';
import {
  type ListColumn,
  ListTable,
  type ListTableProps,
  type Sort,
  sortTyped,
} from '../../parts/listTable.tsx';
import { day } from '../../parts/when.tsx';
import { SlipLines } from '../stud/slipsPage.tsx';
import { STAGE_WORD } from './stepWords.ts';

export interface JobsPageProps {
  readonly frame: Frame;
  readonly fields: Readonly<Record<string, string>>;
  /** What of the question cannot be used; then no jobs are listed. */
  readonly faults: readonly Fault[];
  readonly jobs: readonly JobLine[];
  /** Where the next page begins; null at the end. */
  readonly next: string | null;
  readonly sort: Sort;
  /** Counter slips with the words searched for, newest first. */
  readonly slips: readonly SlipLine[];
  readonly counts: Readonly<Record<Stage, number>>;
  readonly families: readonly { readonly id: string; readonly name: string }[];
}

/** Every job, found by number, family, state, decision, date. */
export function JobsPage(props: JobsPageProps) {
  const { frame, counts } = props;
  const total = STAGES.reduce((sum, stage) => sum + (stage === 'closed' ? 0 : counts[stage]), 0);
  return (
    <Layout title="Jobs" here="jobs" {...frame}>
      <link rel="stylesheet" href="/assets/lists.css" />
      <div id="jobs-page">
        <h1>Jobs</h1>
        {may(frame, 'recorder') && (
          <div class="actions">
            <a class="button first" href="/jobs/new" id="new-job">
              Receive a cover
            </a>
          </div>
        )}
        <Finder {...props} total={total} />
        <Found {...props} total={total} />
      </div>
    </Layout>
  );
}

const DECISIONS: readonly Option[] = [
  { value: '', label: 'any' },
  ...DECISION_KINDS.map((kind) => ({ value: kind, label: DECISION_WORD[kind] })),
];

/** Filters that are folded until one of them is used. */
const RARER = ['outcome', 'family', 'who', 'from', 'to'] as const;

type PartProps = JobsPageProps & { readonly total: number };

function Finder({ fields, faults, counts, families, total }: PartProps) {
  const error = errorsOf(faults);
  return (
    <form
      method="get"
      action="/jobs"
      class="finder"
      id="jobs-finder"
      hx-get="/jobs"
      hx-target="#found"
      hx-select="#found"
      hx-swap="outerHTML"
      hx-trigger="input delay:200ms, change"
      hx-push-url="true"
    >
      <div class="fields">
        <Field label="Job or slip number, customer, any word" name="text" type="search" value={fields.text} />
        <Choice
          label="State"
          name="stage"
          value={fields.stage ?? ''}
          error={error('stage')}
          options={withTyped(fields.stage, [
            { value: '', label: `all but closed (${total})` },
            { value: 'open', label: `open, not signed yet (${total - counts.signed})` },
            ...STAGES.map((stage) => ({ value: stage, label: `${STAGE_WORD[stage]} (${counts[stage]})` })),
            { value: 'all', label: `all, including closed (${total + counts.closed})` },
          ])}
        />
        <button class="button" type="submit" id="find">
          Find
        </button>
      </div>
      <details
        class="more-findings"
        id="more-filters"
        open={RARER.some((name) => (fields[name] ?? '') !== '')}
      >
        <summary>More filters: decision, cover type, person, days</summary>
        <div class="fields">
          <Choice
            label="Decision"
            name="outcome"
            value={fields.outcome ?? ''}
            error={error('outcome')}
            options={withTyped(fields.outcome, DECISIONS)}
          />
          <Choice
            label="Cover type"
            name="family"
            value={fields.family ?? ''}
            options={withTyped(fields.family, [
              { value: '', label: 'any' },
              ...families.map(({ id, name }) => ({ value: id, label: name })),
            ])}
          />
          <Field label="Person, by initials" name="who" value={fields.who} size="figure" />
          <Field
            label="Received from"
            name="from"
            type="date"
            value={fields.from}
            size="figure"
            error={error('from')}
          />
          <Field label="to" name="to" type="date" value={fields.to} size="figure" error={error('to')} />
        </div>
      </details>
    </form>
  );
}

/** The choices, with one that is none of them but stands in the address, so that the list shows what was asked. */
function withTyped(typed: string | undefined, options: readonly Option[]): readonly Option[] {
  if (typed === undefined || options.some(({ value }) => value === typed)) return options;
  return [...options, { value: typed, label: `"${typed}"` }];
}

/** Filters without a box of their own. */
const NO_BOX: readonly string[] = ['after', 'limit'];

function Found({ fields, faults, jobs, next, sort, slips, total }: PartProps) {
  if (faults.length > 0) {
    return (
      <section id="found">
        <ErrorSummary
          faults={faults.map((fault) => (NO_BOX.includes(fault.path) ? { ...fault, path: '' } : fault))}
        />
      </section>
    );
  }
  return (
    <section id="found">
      {slips.length > 0 && (
        <section id="slips-found">
          <h2>Counter slips</h2>
          <SlipLines slips={slips} />
          <p>
            <a class="button" href={`/slips?${new URLSearchParams({ text: fields.text ?? '' })}`}>
              All slips with these words
            </a>
          </p>
        </section>
      )}
      {jobs.length === 0 && slips.length > 0 ? (
        <p data-tell>No jobs found.</p>
      ) : jobs.length === 0 ? (
        <EmptyState
          title={total === 0 ? 'No jobs yet' : 'No jobs found'}
          actions={[
            total === 0
              ? { label: 'Receive a cover', href: '/jobs/new' }
              : { label: 'Show every job', href: '/jobs' },
          ]}
        >
          {total === 0
            ? 'A job begins when a cover is received, or when a check is saved as a job.'
            : 'Try fewer words, another state, or other dates.'}
        </EmptyState>
      ) : (
        <>
          <JobLines
            jobs={jobs}
            sort={sort}
            hrefSorted={(by) => `/jobs?${new URLSearchParams({ ...fields, after: '', sort: sortTyped(by) })}`}
            sortedIn={{ form: 'jobs-finder', value: sortTyped }}
          />
          <p>
            <a
              class="button"
              href={`/jobs.csv?${new URLSearchParams({ ...fields, after: '' })}`}
              id="jobs-csv"
            >
              All of these as CSV
            </a>
          </p>
        </>
      )}
      {next !== null && (
        <p>
          <a class="button" href={`/jobs?${new URLSearchParams({ ...fields, after: next })}`}>
            {sort.by === 'received' && sort.down ? 'Earlier jobs' : 'More jobs'}
          </a>
        </p>
      )}
    </section>
  );
}

const JOB_COLUMNS: readonly ListColumn[] = [
  { id: 'number', label: 'Job', plain: true, order: ['lowest first', 'highest first'] },
  { id: 'type', label: 'Cover type', plain: true },
  { id: 'customer', label: 'Customer', plain: true },
  { id: 'received', label: 'Received', plain: true, order: ['oldest first', 'newest first'] },
  { id: 'state', label: 'State', plain: true, order: ['first step first', 'last step first'] },
  { id: 'decision', label: 'Decision', plain: true, order: ['to face first', 'to replace first'] },
];

/** Jobs in a list, each a way in. */
export function JobLines({
  jobs,
  ...sorting
}: { jobs: readonly JobLine[] } & Pick<ListTableProps, 'sort' | 'hrefSorted' | 'sortedIn'>) {
  return (
    <ListTable
      caption="Jobs"
      columns={JOB_COLUMNS}
      {...sorting}
      rows={jobs.map((job) => ({
        id: `job-${job.id}`,
        href: `/jobs/${encodeURIComponent(job.number)}`,
        name: job.number,
        cells: [
          job.familyName,
          job.customerReference,
          day(job.receivedOn),
          STAGE_WORD[job.stage],
          job.outcome && DECISION_WORD[job.outcome],
        ],
      }))}
    />
  );
}

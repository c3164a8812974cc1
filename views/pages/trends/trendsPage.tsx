import type { Fault } from '../../../shared/words/refusal.ts';
import type { TrendsShown } from '../../../shared/words/trends/trendsShown.ts';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { EmptyState } from '../../parts/emptyState.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field } from '../../parts/form/fieldBox.tsx';
import { BendingTrend } from './bendingTrend.tsx';
import { Comebacks } from './comebacksPart.tsx';
import { CutDepths, Intakes, Scrapped, TimesToSign } from './intakeParts.tsx';
import { Patterns } from './patternsPart.tsx';
import type { TrendPart } from './trendPart.ts';
import { Walls } from './wallsPart.tsx';

export interface TrendsProps {
  readonly frame: Frame;
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly families: readonly { readonly id: string; readonly name: string }[];
  /** null where what was asked could not be read. */
  readonly trends: TrendsShown | null;
}

/** What comes in, what becomes of it, and what comes back. */
export function TrendsPage({ frame, fields, faults, families, trends }: TrendsProps) {
  const asked = new URLSearchParams(Object.entries(fields).filter(([, value]) => value !== ''));
  const csv = (part: string) => `/trends/${part}.csv${asked.size > 0 ? `?${asked}` : ''}`;
  return (
    <Layout title="Trends" here="trends" {...frame}>
      <h1>Trends</h1>
      <Finder {...{ fields, faults, families }} />
      <div id="trends-found">
        <ErrorSummary faults={faults} />
        {trends !== null && <Found {...{ frame, trends, csv }} asked={asked.size > 0} />}
      </div>
    </Layout>
  );
}

function Finder({ fields, faults, families }: Pick<TrendsProps, 'fields' | 'faults' | 'families'>) {
  const error = errorsOf(faults);
  return (
    <form
      method="get"
      action="/trends"
      class="finder"
      hx-get="/trends"
      hx-target="#trends-found"
      hx-select="#trends-found"
      hx-swap="outerHTML"
      hx-trigger="change"
      hx-push-url="true"
    >
      <div class="fields">
        <Choice
          label="Cover type"
          name="family"
          value={fields.family ?? ''}
          error={error('family')}
          options={[
            { value: '', label: 'all' },
            ...families.map(({ id, name }) => ({ value: id, label: name })),
          ]}
        />
        <Field
          label="Received from"
          name="from"
          type="date"
          value={fields.from}
          size="day"
          error={error('from')}
        />
        <Field label="to" name="to" type="date" value={fields.to} size="day" error={error('to')} />
        <button class="button" type="submit" id="show-trends">
          Show
        </button>
      </div>
    </form>
  );
}

function Found({ asked, ...part }: TrendPart & { readonly asked: boolean }) {
  const { trends } = part;
  const { jobs, notGathered } = trends;
  return (
    <>
      {notGathered > 0 && (
        <p class="note">
          {notGathered === 1 ? '1 job is' : `${notGathered.toLocaleString('en-US')} jobs are`} still being
          counted. Load the page again in a minute.
        </p>
      )}
      {jobs === 0 ? (
        <EmptyState
          title={asked ? 'No jobs found' : 'No jobs yet'}
          actions={
            asked
              ? [{ label: 'Show every job', href: '/trends' }]
              : [{ label: 'Receive a cover', href: '/jobs/new' }]
          }
        >
          {asked ? 'Try another cover type, or other dates.' : 'Trends begin with the first job.'}
        </EmptyState>
      ) : (
        <>
          <p class="hint" data-tell>
            {jobs === 1 ? '1 job' : `${jobs.toLocaleString('en-US')} jobs`}, without those closed as received
            by mistake.
          </p>
          <p class="actions">
            <a class="button" href="/trends/limit">
              What another minimum wall would have done
            </a>{' '}
            <a class="button" href="/wrong">
              Something was wrong
            </a>
          </p>
          <Intakes {...part} />
          <Scrapped {...part} />
          <Walls {...part} />
          <CutDepths {...part} />
          <TimesToSign {...part} />
          <Comebacks {...part} />
          <BendingTrend {...part} />
          <Patterns {...part} />
        </>
      )}
    </>
  );
}

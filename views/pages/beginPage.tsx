import { listInWords } from '../../shared/words/print.ts';
import type { Fault } from '../../shared/words/refusal.ts';
import { ENTRY_WORD } from '../../shared/words/terms.ts';
import type { Frame } from '../frame.ts';
import { Layout } from '../layout.tsx';
import { EmptyState } from '../parts/emptyState.tsx';
import { ErrorSummary } from '../parts/form/errorSummary.tsx';
import { errorsOf } from '../parts/form/errorsOf.ts';
import { Field } from '../parts/form/fieldBox.tsx';

type Kind = keyof typeof ENTRY_WORD;

/** What goes and what stays when the demo is put away. */
export interface BeginningTold {
  readonly demoJobs: readonly string[];
  readonly ownJobs: number;
  readonly away: readonly { readonly kind: string; readonly name: string }[];
  readonly kept: readonly {
    readonly kind: string;
    readonly id: string;
    readonly name: string;
    readonly why: string;
    readonly madeUp: boolean;
  }[];
  readonly limits: readonly string[];
}

export interface BeginProps {
  readonly frame: Frame;
  /** null where there is nothing to put away. */
  readonly plan: BeginningTold | null;
  /** What was put away just now. */
  readonly done: BeginningTold | null;
  /** The folder of the backup made before. */
  readonly backup: string;
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
}

/** From the demo to the shop's own records. */
export function BeginPage({ frame, plan, done, backup, fields, faults }: BeginProps) {
  const error = errorsOf(faults);
  return (
    <Layout title="Begin for real" here="home" {...frame}>
      <h1>Begin for real</h1>
      {done !== null ? (
        <>
          <p role="status" id="begun">
            <b>The demo is put away.</b> Everything you entered is kept.
          </p>
          <What told={done} heads={['Put away', 'Kept']} />
          <p>
            All of it is in the backup <b>{backup}</b>.
          </p>
          <div class="actions">
            <a class="button first" href="/criteria">
              Set your shop limits
            </a>
            <a class="button" href="/catalogue/family/new">
              Add your first cover type
            </a>
          </div>
        </>
      ) : plan === null ? (
        <EmptyState title="Nothing to put away" actions={[{ label: 'Go to the front page', href: '/' }]}>
          There is no demo data in this shop.
        </EmptyState>
      ) : (
        <form method="post" action="/begin">
          <ErrorSummary faults={faults} />
          <p class="why">
            Made-up data is put away, after a backup. Nothing you entered is lost. This can't be undone on
            this page; the backup holds everything.
          </p>
          <What told={plan} heads={['Will be put away', 'Stays']} />
          <div class="fields">
            <Field
              label="Your initials"
              name="who"
              value={fields.who ?? frame.initials}
              error={error('who')}
              size="figure"
              input={{ maxLength: 8 }}
            />
          </div>
          <div class="actions">
            <button class="button first" type="submit" id="begin">
              Back up and begin
            </button>
          </div>
        </form>
      )}
    </Layout>
  );
}

function What({ told, heads }: { told: BeginningTold; heads: readonly [string, string] }) {
  const { demoJobs, ownJobs, away, kept, limits } = told;
  const count = (n: number, one: string) => `${n} ${one}${n === 1 ? '' : 's'}`;
  return (
    <>
      <h2>{heads[0]}</h2>
      <ul>
        {demoJobs.length > 0 && (
          <li>
            {count(demoJobs.length, 'demo job')}, {demoJobs[0]} to {demoJobs.at(-1)}. Their numbers are not
            used again.
          </li>
        )}
        {(Object.keys(ENTRY_WORD) as Kind[]).map((kind) => {
          const names = away.filter((one) => one.kind === kind).map(({ name }) => name);
          return (
            names.length > 0 && (
              <li>
                {names.length}{' '}
                {names.length === 1 ? ENTRY_WORD[kind].one : ENTRY_WORD[kind].many.toLowerCase()}:{' '}
                {names.join('; ')}
              </li>
            )
          );
        })}
        {limits.length > 0 && (
          <li>Demo limits, back to blank or to the usual: {listInWords(limits)}. Set your own.</li>
        )}
      </ul>
      <h2>{heads[1]}</h2>
      <ul>
        <li>{ownJobs === 0 ? 'No job of your own yet' : `${count(ownJobs, 'job')} of your own, whole`}</li>
        <li>Every catalog entry and limit you entered or changed, and people</li>
        {kept.map(({ kind, id, name, why, madeUp }) => (
          <li>
            {name}, from the demo: {why}.{' '}
            <a href={`/catalogue/${kind}/${encodeURIComponent(id)}`}>
              {madeUp ? 'Replace its made-up figures' : 'Check its figures'}
            </a>
          </li>
        ))}
      </ul>
    </>
  );
}

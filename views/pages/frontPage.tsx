import type { JobLine } from '../../shared/words/job.ts';
import { type Frame, may } from '../frame.ts';
import { Layout } from '../layout.tsx';
import { Cautions } from '../parts/caution.tsx';
import { EmptyState } from '../parts/emptyState.tsx';
import { Field } from '../parts/form/fieldBox.tsx';
import { Rings, type RingsProps } from '../parts/ringsPart.tsx';
import { JobLines } from './job/jobsPage.tsx';

export interface FrontProps {
  readonly frame: Frame;
  /** The open ones, the one to do next first. */
  readonly open: readonly JobLine[];
  /** How many there are in all. */
  readonly openCount: number;
  readonly exampleHref: string | null;
  /** The shop has a job of its own, and the demo is still there. */
  readonly begin: boolean;
  /** No job yet, and something of the shop is left to be set up. */
  readonly toSetUp: boolean;
  readonly rings: RingsProps;
  /** That no backup has left this machine for too long; null while none is due. */
  readonly copyDue: string | null;
}

/** Three ways in, and the open jobs below. */
export function FrontPage({
  frame,
  open,
  openCount,
  exampleHref,
  begin,
  toSetUp,
  rings,
  copyDue,
}: FrontProps) {
  return (
    <Layout title="Coverwright" here="home" {...frame}>
      <link rel="stylesheet" href="/assets/lists.css" />
      <h1>Can this cover be faced and used again? Which studs fit?</h1>
      {toSetUp && may(frame, 'keeper') && (
        <section class="note" id="to-set-up">
          <p>
            <b>This shop is not set up yet.</b> Seven steps lead from its name and units to the first cover
            checked.
          </p>
          <div class="actions">
            <a class="button first" href="/setup" id="set-up">
              Set up the shop
            </a>
          </div>
        </section>
      )}
      <ul class="ways">
        <li>
          <a href="/cover" id="way-cover">
            <b>Check a cover</b>
            <span>
              Enter the wall at each station. See the least cut, the wall remaining, and whether it is enough.
            </span>
          </a>
          {exampleHref && (
            <a class="example" href={exampleHref} id="way-example">
              Try an example cover
            </a>
          )}
        </li>
        <li>
          <a href="/stud" id="way-stud">
            <b>Find a stud</b>
            <span>Choose the flexplate. See which studs fit, best first, and why the others won’t work.</span>
          </a>
        </li>
        <li>
          <a href={may(frame, 'recorder') ? '/jobs/new' : '/jobs'} id="way-job">
            <b>{may(frame, 'recorder') ? 'Start a job' : 'Find a job'}</b>
            <span>Receive a cover, measure it, decide, cut, re-measure, sign and print.</span>
          </a>
        </li>
      </ul>
      {begin && may(frame, 'keeper') && (
        <section class="note" id="begin">
          <p>
            You have a job of your own. <b>Done trying?</b> Begin for real puts the demo away, after a backup,
            and keeps everything you entered.
          </p>
          <div class="actions">
            <a class="button" href="/begin">
              Begin for real
            </a>
          </div>
        </section>
      )}
      {copyDue !== null && may(frame, 'keeper') && (
        <p class="note" id="copy-due">
          {copyDue} <a href="/records#away">Go to Backups</a>
        </p>
      )}
      <Rings {...rings} frame={frame} />
      <section>
        <h2>Open jobs: {openCount}</h2>
        {open.length === 0 ? (
          <EmptyState title="No open jobs" actions={[{ label: 'Receive a cover', href: '/jobs/new' }]}>
            Signed jobs are under Jobs.
          </EmptyState>
        ) : (
          <>
            <p class="hint">Jobs nearest to done come first; of those, the ones waiting longest.</p>
            <JobLines jobs={open} />
            <p>
              <a class="button" href="/jobs?stage=open" id="all-open">
                All open jobs
              </a>
            </p>
          </>
        )}
        <form method="get" action="/jobs" class="finder">
          <div class="fields">
            <Field
              label="Find a job or a counter slip"
              name="text"
              type="search"
              hint="Number (1001 or S-12), customer, cover type, initials, any word"
            />
            <button class="button" type="submit" id="find-job">
              Find
            </button>
          </div>
        </form>
      </section>
      <Cautions kinds={['general', 'crack', 'torque']} />
    </Layout>
  );
}

import type { ComponentChildren } from 'preact';
import type { ComparedWall } from '../../../shared/words/afterCut.ts';
import { dayIn } from '../../../shared/words/day.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import {
  type HistoryLine,
  type Job,
  STEP_NAMES,
  type StepName,
  type StepState,
} from '../../../shared/words/job.ts';
import type { SignedPrint } from '../../../shared/words/paper.ts';
import type { Photo } from '../../../shared/words/photo.ts';
import type { CoverJob } from '../../../shared/words/sameCover.ts';
import { type Frame, may } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { FindingList } from '../../parts/findingList.tsx';
import { day, When } from '../../parts/when.tsx';
import { JobShelf, type JobShelfProps, PutOnShelf } from '../shelf/jobShelf.tsx';
import { CloseJob } from './closing.tsx';
import { Cut, type CutProps, cutSummary, Verified } from './cut.tsx';
import { Decide, type DecideProps, decisionSummary } from './decide.tsx';
import { JobHead, type JobHeadProps } from './jobHead.tsx';
import { ListPart, type ListPartProps } from './listPart.tsx';
import { Look, type LookProps, lookedSummary } from './look.tsx';
import { Measure, type MeasureProps, measuredSummary, Setup, type SetupProps } from './measure.tsx';
import { Photos } from './photosPart.tsx';
import { Receive, receivedSummary } from './receive.tsx';
import { type Refused, Section } from './section.tsx';
import { History, SignOff, signSummary } from './signStep.tsx';
import { STAGE_WORD } from './stepWords.ts';
import { Studs, type StudsAsked, studsSummary } from './studs.tsx';

export interface JobPageProps {
  readonly frame: Frame;
  readonly job: Job;
  /** An earlier revision is being read: nothing can be changed on it. */
  readonly asItWas: number | null;
  readonly families: readonly { readonly id: string; readonly name: string }[];
  readonly cameBack: JobHeadProps['cameBack'];
  readonly history: readonly HistoryLine[];
  readonly photos: readonly Photo[];
  /** Signatures whose sheet and tag were kept, newest first. */
  readonly signedPrints: readonly SignedPrint[];
  readonly missing: readonly string[];
  /** Of its steps, what is to be done; null when nothing is. */
  readonly next: StepName | null;
  readonly steps: Readonly<Record<StepName, StepState>>;
  readonly refused: Refused | null;
  readonly setupTyped: SetupProps['typed'];
  readonly lookedTyped: LookProps['typed'];
  /** The inspection lists for its cover type, what is kept of them box by box, and what they found. */
  readonly list: Pick<ListPartProps, 'lists' | 'typed'> & { readonly found: readonly Finding[] };
  readonly gauges: SetupProps['gauges'];
  readonly before: Pick<MeasureProps, 'places' | 'token' | 'doubts'>;
  readonly after: Pick<MeasureProps, 'places' | 'token' | 'doubts'>;
  readonly decide: Pick<
    DecideProps,
    | 'shape'
    | 'check'
    | 'plan'
    | 'lathes'
    | 'checkFaults'
    | 'criteriaRevision'
    | 'costs'
    | 'reasonAsked'
    | 'bending'
    | 'beside'
    | 'decides'
    | 'outdated'
    | 'otherwise'
    | 'criteriaSince'
  >;
  readonly verified: readonly Finding[];
  /** Of which parts the sentences are shown as they were kept then. */
  readonly asKept: readonly ('decision' | 'studs' | 'verified')[];
  readonly toAnswer: readonly Finding[];
  readonly compared: readonly ComparedWall[];
  readonly passes: CutProps['passes'];
  readonly nextPass: CutProps['nextPass'];
  readonly studs: StudsAsked;
  readonly shelf: Pick<JobShelfProps, 'stands' | 'kept'>;
  readonly coverJobs: readonly CoverJob[];
}

const TITLE: Readonly<Record<StepName, string>> = {
  receive: 'Receive',
  look: 'Inspect',
  measure: 'Measure',
  decide: 'Decide',
  cut: 'Cut',
  verify: 'Re-measure',
  studs: 'Studs',
  sign: 'Sign',
};

/** The whole job on one page, in its order; the next thing to do is open. */
export function JobPage(props: JobPageProps) {
  const { frame, job, asItWas, steps } = props;
  const mayWrite = asItWas === null && may(frame, 'recorder');
  const readOnly = !mayWrite || job.stage === 'closed';
  const summaries = summariesOf(props);
  const refused = refusals(props.refused);
  const open = openOf(props, refused);
  const inside = insideOf(props, refused, readOnly);
  const quiet = (id: StepName) => steps[id] === 'later' && !open[id];
  const quietFrom = STEP_NAMES.findLastIndex((id) => !quiet(id)) + 1;
  const section = (id: StepName) => (
    <Section
      id={id}
      number={STEP_NAMES.indexOf(id) + 1}
      title={TITLE[id]}
      state={steps[id]}
      summary={summaries[id]}
      open={open[id] || (readOnly && steps[id] === 'done')}
    >
      {inside[id]}
    </Section>
  );
  return (
    <Layout
      title={`Job ${job.number}: ${STAGE_WORD[job.stage]}`}
      here="jobs"
      {...frame}
      titleBlock={jobTitleBlock(job, '1 of 1', frame.timeZone)}
    >
      <JobHead {...props} now={props.decide.check} />
      {asItWas === null && <JobShelf job={job} {...props.shelf} />}
      <WaitingHere job={props.job} />
      {STEP_NAMES.slice(0, quietFrom).map(section)}
      {quietFrom < STEP_NAMES.length && (
        <div class="later-steps">{STEP_NAMES.slice(quietFrom).map(section)}</div>
      )}
      <div class="job-folds">
        {mayWrite && <PutOnShelf frame={frame} job={job} {...props.shelf} />}
        {mayWrite && <CloseJob job={job} initials={frame.initials} refused={refused.refusedIn('closed')} />}
      </div>
      <HistorySection {...props} />
    </Layout>
  );
}

/** Readings that this tablet still keeps: told by the script that finds them. */
function WaitingHere({ job }: Pick<JobPageProps, 'job'>) {
  return (
    <>
      <p class="note" id="waiting-here" data-job={job.number} data-created={job.createdAt} hidden>
        <b>0 readings</b> of this job are still on this tablet and not in the answer below.{' '}
        <a href={`/jobs/${encodeURIComponent(job.number)}/measure`}>Open the measuring page to send them</a>.
      </p>
      <script type="module" src="/assets/modules/views/browser/waitingHere.js" />
    </>
  );
}

function summariesOf({
  frame,
  job,
  decide,
  missing,
  toAnswer,
}: JobPageProps): Readonly<Record<StepName, string>> {
  return {
    receive: receivedSummary(job),
    look: lookedSummary(job),
    measure: measuredSummary(job, 'before'),
    decide: decisionSummary(job, decide.outdated, frame.lengthUnit),
    cut: cutSummary(job, frame.lengthUnit),
    verify: measuredSummary(job, 'after'),
    studs: studsSummary(job),
    sign: signSummary(job, missing, toAnswer),
  };
}

/** Where what was refused belongs, so that its section opens with what was typed. */
function refusals(refused: Refused | null) {
  const refusedIn = (...sections: Refused['section'][]) =>
    refused && sections.includes(refused.section) ? refused : null;
  const measured = (pass: 'before' | 'after') => {
    const mine = refusedIn('readings');
    return mine && (mine.fields.pass ?? 'before') === pass ? mine : null;
  };
  const photographed = (section: 'look' | 'measure') => {
    const mine = refusedIn('photos');
    return mine && (mine.fields.in ?? 'look') === section ? mine : null;
  };
  return { refusedIn, measured, photographed };
}

type Refusals = ReturnType<typeof refusals>;

function openOf(
  { job, next, nextPass, verified, studs }: JobPageProps,
  { refusedIn, measured, photographed }: Refusals,
): Readonly<Record<StepName, boolean>> {
  return {
    receive: refusedIn('received') !== null,
    look: next === 'look' || refusedIn('looked', 'inspected') !== null || photographed('look') !== null,
    measure:
      (next === 'measure' && job.stage !== 'to-decide') ||
      refusedIn('setup') !== null ||
      measured('before') !== null ||
      photographed('measure') !== null,
    decide: job.stage === 'to-decide' || next === 'decide' || refusedIn('decision', 'plan') !== null,
    cut:
      next === 'cut' ||
      (next === 'verify' && nextPass?.state === 'look') ||
      refusedIn('cuts', 'pass', 'welded') !== null,
    verify: next === 'verify' || (next === 'cut' && verified.length > 0) || measured('after') !== null,
    studs:
      (next === 'sign' && job.sections.studs === null) ||
      studs.stackId !== '' ||
      refusedIn('studs', 'replaced', 'retightened') !== null,
    sign: next === 'sign' || refusedIn('signature') !== null,
  };
}

function insideOf(
  props: JobPageProps,
  { refusedIn, measured, photographed }: Refusals,
  readOnly: boolean,
): Readonly<Record<StepName, ComponentChildren>> {
  const { frame, job, families, decide, verified } = props;
  const listAgainst = props.list.found.filter(({ status }) => status !== 'pass');
  const common = { writing: frame, job, unit: frame.lengthUnit, initials: frame.initials, readOnly };
  const mayAddType = may(frame, 'keeper');
  const photos = (section: 'look' | 'measure') => (
    <Photos
      {...common}
      section={section}
      photos={props.photos}
      places={props.before.places}
      listItems={props.list.lists.flatMap(({ list }) => list.items.map(({ name }) => name))}
      token={props.before.token}
      refused={photographed(section)}
    />
  );
  return {
    receive: (
      <Receive
        {...common}
        families={families}
        coverJobs={props.coverJobs}
        mayAddType={mayAddType}
        refused={refusedIn('received')}
      />
    ),
    look: (
      <>
        <Look {...common} typed={props.lookedTyped} refused={refusedIn('looked')} />
        <ListPart
          {...common}
          lists={props.list.lists}
          typed={props.list.typed}
          refused={refusedIn('inspected')}
        />
        {photos('look')}
      </>
    ),
    measure: (
      <>
        <Setup {...common} typed={props.setupTyped} gauges={props.gauges} refused={refusedIn('setup')} />
        <Measure
          {...common}
          {...props.before}
          mayAddType={mayAddType}
          pass="before"
          refused={measured('before')}
        />
        {photos('measure')}
      </>
    ),
    decide: (
      <>
        {listAgainst.length > 0 && (
          <section id="list-against">
            <h3>Inspection list</h3>
            <FindingList findings={listAgainst} unit={frame.lengthUnit} />
          </section>
        )}
        <Decide
          {...common}
          {...decide}
          measureMore={props.next === 'measure'}
          asKept={props.asKept.includes('decision')}
          refused={refusedIn('decision')}
          refusedPlan={refusedIn('plan')}
        />
      </>
    ),
    cut: (
      <Cut
        {...common}
        passes={props.passes}
        nextPass={props.nextPass}
        plan={decide.plan}
        refused={refusedIn('cuts')}
        refusedPass={refusedIn('pass')}
        refusedWeld={refusedIn('welded')}
      />
    ),
    verify: (
      <>
        <Verified
          findings={verified}
          asKept={props.asKept.includes('verified')}
          compared={props.compared}
          unit={frame.lengthUnit}
        />
        <Measure
          {...common}
          {...props.after}
          mayAddType={mayAddType}
          pass="after"
          refused={measured('after')}
        />
      </>
    ),
    studs: (
      <Studs
        {...common}
        {...props.studs}
        asKept={props.asKept.includes('studs')}
        refused={refusedIn('studs')}
        refusedReplaced={refusedIn('replaced')}
        refusedRetorque={refusedIn('retightened')}
      />
    ),
    sign: (
      <SignOff
        toAnswer={props.toAnswer}
        {...common}
        missing={props.missing}
        refused={refusedIn('signature')}
      />
    ),
  };
}

function HistorySection({ job, history, asItWas }: JobPageProps) {
  const href = `/jobs/${encodeURIComponent(job.number)}`;
  return (
    <section id="history">
      <details>
        <summary>
          <h2>Every change, newest first</h2>
          <span class="section-summary">
            {history.length} revision{history.length === 1 ? '' : 's'}, last changed{' '}
            <When at={job.changedAt} />
          </span>
        </summary>
        <p>
          <a class="button" href={`${href}/history`} id="to-history">
            See every change
          </a>
        </p>
        <History job={job} lines={history} shown={asItWas} />
      </details>
    </section>
  );
}

/** The foot of every sheet of a job, after ISO 7200. */
export function jobTitleBlock(job: Job, sheet: string, timeZone: string) {
  const received = job.sections.received?.body;
  const measurers = [...new Set(job.readings.map((one) => one.who))].join(', ');
  return [
    {
      label: 'job',
      value: `${job.number}${received ? `, received ${day(received.receivedOn)}` : ''}`,
      wide: true,
    },
    { label: 'cover', value: received?.family.name ?? '', wide: true },
    { label: 'measured by', value: measurers },
    { label: 'decided by', value: job.sections.decision?.who ?? '' },
    { label: 'signed by', value: job.stage === 'signed' ? (job.sections.signature?.who ?? '') : '' },
    { label: 'revision', value: `${job.revision}, ${day(dayIn(timeZone, job.changedAt))}` },
    { label: 'sheet', value: sheet },
  ];
}

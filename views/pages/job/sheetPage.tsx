import type { Writing } from '../../../shared/quantity/fieldText.ts';
import type { Bending } from '../../../shared/words/bending.ts';
import type { CoverCheck, CutPlanAnswer } from '../../../shared/words/cover.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import type { Job, StudsChosen } from '../../../shared/words/job.ts';
import { countingPasses, passesBeforeRing } from '../../../shared/words/passes.ts';
import type { Photo } from '../../../shared/words/photo.ts';
import { type LengthUnit, lengthFigure, printLength } from '../../../shared/words/print.ts';
import { DECISION_WORD } from '../../../shared/words/verdicts.ts';
import { FacePlan } from '../../drawings/facePlan.tsx';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { bendingInWords } from '../../parts/bendingPart.tsx';
import { Cautions } from '../../parts/caution.tsx';
import {
  type CoverDrawingShape,
  planMarks,
  planStations,
  StationsAnswered,
} from '../../parts/coverAnswer.tsx';
import { CutPlanPart } from '../../parts/cutPlanPart.tsx';
import { Sign } from '../../parts/form/sign.tsx';
import { Qr, type QrModules } from '../../parts/qr.tsx';
import { TitleBlock } from '../../parts/titleBlock.tsx';
import { When } from '../../parts/when.tsx';
import { JointLine } from '../stud/jointFields.tsx';
import { stackInWords } from '../stud/studPage.tsx';
import { lookedSummary } from './look.tsx';
import { PhotoList } from './photosPart.tsx';
import { replacedInWords, retorqueInWords } from './studWorkForms.tsx';
import { amendedSince, jobTitleBlock } from './wholeJobPage.tsx';
import { LAYER_WORD } from './words.ts';

const STATIONS_ON_A_SHEET = 16;

export interface SheetProps {
  readonly frame: Frame;
  readonly job: Job;
  readonly shape: CoverDrawingShape | null;
  /** The one kept with the decision that stands, else as the readings were worked out under the criteria of that day. */
  readonly check: CoverCheck | null;
  readonly plan: CutPlanAnswer | null;
  /** How it bends, in a line; null where that was not worked out. */
  readonly bending: Bending | null;
  /** The criteria the answers stand on, field by field. */
  readonly criteria: readonly { readonly label: string; readonly value: string }[];
  readonly verified: readonly Finding[];
  readonly photos: readonly Photo[];
  readonly qr: QrModules;
  readonly asItWas: number | null;
}

/** The job on paper: one page, and a continuation sheet beyond sixteen stations. */
export function SheetPage(props: SheetProps) {
  const { frame, job, check, criteria } = props;
  const unit = frame.lengthUnit;
  const long = isLong(check);
  const decision = job.sections.decision;
  return (
    <Layout
      title={`Job ${job.number}, sheet`}
      here="jobs"
      {...frame}
      titleBlock={jobTitleBlock(job, long ? '2 of 2' : '1 of 1', frame.timeZone)}
    >
      <article class="paper">
        <div class="actions no-print">
          <button class="button first" type="button" id="print" data-print>
            Print
          </button>
          <a class="button" href={`/jobs/${encodeURIComponent(job.number)}`}>
            Back to the job
          </a>
        </div>
        <SheetHead {...props} />
        <SheetFace {...props} />
        <SheetText {...props} />
        <p class="hint">
          {decision && job.outcome !== null
            ? `Shop limits of the decision, worked out by ${decision.body.calcVersion}: `
            : 'Criteria: '}
          {criteria.map((one) => `${one.label.toLowerCase()} ${one.value}`).join('; ')}.
        </p>
        <Cautions />
        <Signatures job={job} />
        {long && <TitleBlock cells={jobTitleBlock(job, '1 of 2', frame.timeZone)} />}
      </article>
      {long && check && <Continuation job={job} check={check} unit={unit} />}
    </Layout>
  );
}

function SheetHead({ job, check, qr, asItWas }: SheetProps) {
  const decision = job.sections.decision;
  return (
    <header class="paper-head">
      <div>
        <h1>
          Job {job.number}
          {asItWas !== null && `, as it was at revision ${asItWas}`}:{' '}
          {decision && job.outcome !== null
            ? DECISION_WORD[decision.body.decision]
            : decision
              ? 'to be decided again'
              : 'not decided yet'}
        </h1>
        {amendedSince(job) !== null && <p class="note">{amendedSince(job)}</p>}
        {decision && job.outcome === null && (
          <p class="note">
            Decided at revision {decision.revision}: {DECISION_WORD[decision.body.decision]}. Readings,
            inspection or cut changed after that, so it does not count now. What follows is worked out from
            the readings as they stand.
          </p>
        )}
        {check && (
          <p class="why">
            {check.headline} {check.because}
          </p>
        )}
        {decision && decision.body.reason !== '' && <p>Reason given: {decision.body.reason}</p>}
        <p>{lookedSummary(job)}.</p>
      </div>
      <Qr modules={qr} label={`Job ${job.number}`} />
    </header>
  );
}

/** The face drawn, and its stations as a table beside it where they have room. */
function SheetFace({ frame, shape, check }: SheetProps) {
  const unit = frame.lengthUnit;
  const long = isLong(check);
  return (
    <div class="paper-two">
      {check && shape && (
        <figure class="drawing">
          <FacePlan
            id="sheet-plan"
            shape={shape}
            bossDiameterMm={shape.bossDiameterMm}
            rimDiameterMm={shape.rimDiameterMm}
            padDiameterMm={shape.padDiameterMm}
            stations={planStations(check)}
            marks={planMarks(check)}
            thinnest={check.leastWall.station}
            unit={unit}
          />
        </figure>
      )}
      {check && !long && <StationsAnswered check={check} unit={unit} />}
      {check && long && <p>{check.stations.length} stations: see the continuation sheet.</p>}
    </div>
  );
}

function SheetText({ frame, job, check, plan, bending, verified, photos }: SheetProps) {
  const unit = frame.lengthUnit;
  const cuts = countingPasses(job);
  const beforeRing = passesBeforeRing(job);
  const studs = job.sections.studs?.body;
  return (
    <div class="paper-columns">
      {check && <SheetFindings title="Found before the cut" findings={check.findings} />}
      <div>
        {verified.length > 0 && (
          <SheetFindings title="Measured after the cut" findings={verified.filter(notBelow)} />
        )}
        <h2>Cut</h2>
        <p>
          {check ? `To dial: ${printLength(check.cut.dialledMm, unit)} from the highest point. ` : ''}
          {cuts.length === 0
            ? 'No pass recorded.'
            : `Passes made: ${cuts.map((cut) => `${lengthFigure(cut.depthMm, unit)} ${unit}${cut.look ? ` (${LAYER_WORD[cut.look]})` : ''}`).join(', ')}.`}
          {beforeRing > 0 &&
            ` ${beforeRing === 1 ? 'One pass was' : `${beforeRing} passes were`} made before the ring was welded on.`}
        </p>
        <CutPlanPart plan={plan} unit={unit} id="sheet" level={2} paper />
        {bending && <p>Advice on bending: {bendingInWords(bending, unit)}</p>}
        <StudsOnPaper studs={studs ?? null} writing={frame} />
        <PhotoList photos={photos} unit={unit} />
      </div>
    </div>
  );
}

/** Its stations have no room on the first sheet. */
function isLong(check: CoverCheck | null): boolean {
  return check !== null && check.stations.length > STATIONS_ON_A_SHEET;
}

/** Cut as decided is said by the passes below. */
function notBelow({ id, status }: Finding): boolean {
  return id !== 'after-depth' || status !== 'pass';
}

function SheetFindings({ title, findings }: { title: string; findings: readonly Finding[] }) {
  return (
    <section>
      <h2>{title}</h2>
      <ul class="sheet-findings">
        {findings.map((finding) => (
          <li class={finding.status === 'pass' ? 'passed' : undefined}>
            <Sign status={finding.status} /> <b>{finding.title}:</b> {finding.sentence}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Which studs, whether they hold, and what was replaced or re-torqued. */
function StudsOnPaper({ studs, writing }: { studs: StudsChosen | null; writing: Writing }) {
  const unit = writing.lengthUnit;
  return (
    <section class="paper-studs">
      <h2>Studs</h2>
      {studs === null ? (
        <p>Not chosen.</p>
      ) : (
        <>
          <p>
            <b>{studs.stud.name}</b>, {studs.stud.stud.thread.designation}, in {studs.stack.name}:{' '}
            {studs.check.headline} {stackInWords(studs.stack, unit)}
            {studs.note !== '' && ` Note: ${studs.note}`}
          </p>
          {studs.input?.joint ? (
            <JointLine
              check={studs.check}
              joint={studs.input.joint}
              unit={unit}
              torqueFrom={studs.jointFrom?.torque ?? ''}
            />
          ) : (
            <p>Whether the joint holds was not worked out. The vehicle maker’s torque comes first.</p>
          )}
          {studs.replaced?.map((one) => (
            <p>
              <b>Replaced stud {one.stud}:</b> {replacedInWords(one, writing)}.{' '}
              <FoundShort findings={one.findings} />
            </p>
          ))}
          {studs.retightening && (
            <p>
              <b>Re-torqued:</b> {retorqueInWords(studs.retightening, writing)}.{' '}
              <FoundShort findings={studs.retightening.findings} />
            </p>
          )}
        </>
      )}
    </section>
  );
}

/** What did not pass in whole sentences; what passed by its name. */
function FoundShort({ findings }: { findings: readonly Finding[] }) {
  const passed = findings.filter(({ status }) => status === 'pass');
  return (
    <>
      {findings
        .filter(({ status }) => status !== 'pass')
        .map((finding) => (
          <>
            <Sign status={finding.status} /> {finding.sentence}{' '}
          </>
        ))}
      {passed.length > 0 && (
        <>
          <Sign status="pass" /> {passed.map(({ title }) => title).join(', ')}.
        </>
      )}
    </>
  );
}

function Signatures({ job }: { job: Job }) {
  const { decision, signature } = job.sections;
  const line = (what: string, kept: { who: string; at: string } | null) => (
    <div>
      <dt>{what}</dt>
      <dd>
        {kept && (
          <>
            {kept.who}, <When at={kept.at} />
          </>
        )}
      </dd>
    </div>
  );
  return (
    <dl class="signatures">
      {line('decided', decision)}
      {line('signed', job.stage === 'signed' ? signature : null)}
      {line('by hand', null)}
    </dl>
  );
}

function Continuation({ job, check, unit }: { job: Job; check: CoverCheck; unit: LengthUnit }) {
  return (
    <article class="paper continuation">
      <h2>Job {job.number}, continuation: every station</h2>
      <StationsAnswered check={check} unit={unit} />
    </article>
  );
}

import type { Writing } from '../../../shared/quantity/fieldText.ts';
import { writeAsTyped } from '../../../shared/quantity/writeQuantity.ts';
import {
  type CoverCheck,
  type CutPlanAnswer,
  isMeasured,
  type MeasuredCheck,
} from '../../../shared/words/cover.ts';
import { printCut } from '../../../shared/words/cut.ts';
import { PLAN } from '../../../shared/words/fields/job.ts';
import { cutTold } from '../../../shared/words/findingsShown.ts';
import type { Job, JobSections, Kept } from '../../../shared/words/job.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { WayCost } from '../../../shared/words/trends/costs.ts';
import { DECISION_WORD, FOLLOWS } from '../../../shared/words/verdicts.ts';
import type { BesideProps } from '../../parts/bendingPart.tsx';
import {
  CoverCautions,
  type CoverDrawingShape,
  CoverFindings,
  CoverPlan,
  CoverVerdict,
} from '../../parts/coverAnswer.tsx';
import { CoverRows, type CoverRowsProps } from '../../parts/coverAnswerRows.tsx';
import { FindingList } from '../../parts/findingList.tsx';
import { Boxes } from '../../parts/form/bodyFields.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, TextArea } from '../../parts/form/fieldBox.tsx';
import { FoldedBoxes } from '../../parts/form/foldedBoxes.tsx';
import { type Compared, SideBySide } from '../../parts/sideBySide.tsx';
import { WayCostsPart } from '../../parts/wayCostsPart.tsx';
import { CutDrawnAsTyped } from './drawnParts.tsx';
import { decidedInWords } from './jobHead.tsx';
import { AsKept, JobForm, type Refused, Who } from './section.tsx';

export interface DecideProps {
  readonly job: Job;
  readonly shape: CoverDrawingShape | null;
  /** Worked out from the readings as they stand; null while there are none or they cannot be used. */
  readonly check: CoverCheck | null;
  readonly plan: CutPlanAnswer | null;
  /** Lathes to choose from, each with its revision, and the one chosen. */
  readonly lathes: { readonly toName: readonly string[]; readonly chosen: string };
  /** How it bends and heats, as kept while the decision stands; null while there is nothing to reckon from. */
  readonly bending: CoverRowsProps['bending'];
  readonly beside: BesideProps;
  /** Ids of the findings that decided it. */
  readonly decides: readonly string[];
  readonly checkFaults: readonly Fault[];
  /** Of the shop's criteria that `check` was worked out under: a decision is sent with it. */
  readonly criteriaRevision: number;
  /** The decision that follows from the verdict needs a reason. */
  readonly reasonAsked: boolean;
  /** What each way is expected to cost; none where that is not entered. */
  readonly costs: readonly WayCost[];
  /** True when the decision rests on readings or an inspection that have changed since. */
  readonly outdated: boolean;
  /** What the present calculation would say otherwise of the decision's inputs; null when it says the same. */
  readonly otherwise: string | null;
  /** Stations are still to be measured. */
  readonly measureMore: boolean;
  /** The findings are shown in the words and the unit they were kept in. */
  readonly asKept: boolean;
  /** The shop's criteria where they are not those kept with the decision. */
  readonly criteriaSince: readonly Compared[];
  readonly unit: LengthUnit;
  readonly writing: Writing;
  readonly initials: string;
  readonly refused: Refused | null;
  readonly refusedPlan: Refused | null;
  readonly readOnly: boolean;
}

export function decisionSummary(job: Job, outdated: boolean, unit: LengthUnit): string {
  const decision = job.sections.decision;
  if (!decision) return 'not yet';
  const decided = outdated ? DECISION_WORD[decision.body.decision] : decidedInWords(job, unit);
  return `${decided}, by ${decision.who}${outdated ? '; changed since' : ''}`;
}

/** What the readings say, and what a person makes of it: the answer and its form together, then a row for each subject. */
export function Decide(props: DecideProps) {
  const { job, shape, check, checkFaults, outdated, unit, readOnly } = props;
  const kept = job.sections.decision;
  const undecided = kept === null || outdated;
  return (
    <>
      {kept && <KeptDecision {...props} kept={kept} />}
      {checkFaults.map((fault) => (
        <p class="note">{fault.message}</p>
      ))}
      {check && shape && undecided && (
        <div class={readOnly ? '' : 'decide-now'}>
          <div class="decide-answer">
            <CoverVerdict check={check} unit={unit} id="job" level={3}>
              {props.measureMore && !readOnly && (
                <p>
                  <a
                    class="button first"
                    href={`/jobs/${encodeURIComponent(job.number)}/measure`}
                    id="measure-more"
                  >
                    Measure at the bench
                  </a>
                </p>
              )}
            </CoverVerdict>
            {isMeasured(check) && <CoverPlan shape={shape} check={check} unit={unit} id="job" />}
          </div>
          {!readOnly && <DecideForm {...props} check={check} />}
        </div>
      )}
      {check && shape && undecided && <WayCostsPart costs={props.costs} />}
      {check && !isMeasured(check) && undecided && <CoverFindings check={check} unit={unit} id="job" />}
      {!check && checkFaults.length === 0 && <p>Measure the wall first.</p>}
      <Subjects {...props} undecided={undecided} />
      {check && !readOnly && !undecided && <DecideForm {...props} check={check} />}
      <CoverCautions ring={job.sections.received?.body.family.ringAllowed ?? false} />
    </>
  );
}

function DecideForm(props: DecideProps & { check: CoverCheck }) {
  const { job, check, criteriaRevision, initials, outdated, refused, measureMore } = props;
  const kept = job.sections.decision;
  return (
    <DecisionForm
      job={job}
      check={check}
      criteriaRevision={criteriaRevision}
      initials={initials}
      refused={refused}
      first={!measureMore}
      again={kept !== null && !outdated}
      reasonAsked={props.reasonAsked}
      sayNow={(kept !== null && !outdated) || (refused?.stale ?? null) !== null}
    />
  );
}

/** A row for each subject, of the answer as it is now, or of the one that the decision was made on while it stands. */
function Subjects(props: DecideProps & { undecided: boolean }) {
  const { job, shape, check, plan, bending, beside, unit, readOnly, refusedPlan, undecided, asKept } = props;
  const answered = undecided ? check : (job.sections.decision?.body.check ?? null);
  if (answered === null || !isMeasured(answered) || shape === null) return null;
  const now = check && isMeasured(check) && !readOnly ? check : null;
  // From the decision on the plan stands at the cut, which waits for the ring.
  const ringDue = job.outcome === 'face-and-ring' && (job.weldedAt ?? 0) === 0;
  const href = `/jobs/${encodeURIComponent(job.number)}`;
  return (
    <>
      {!undecided && asKept && <AsKept />}
      <CoverRows
        id="job"
        level={3}
        unit={unit}
        cut={job.outcome !== 'replace' && cutTold(answered.verdict, job.outcome === 'face')}
        shape={shape}
        check={answered}
        plan={plan}
        lathe={job.sections.plan?.body.lathe}
        decides={undecided ? props.decides : []}
        bending={bending}
        beside={readOnly ? null : beside}
        drawings={`${href}/bending`}
        tryCut={now && { action: `${href}/what-if`, check: now }}
        cutPlanned={now && <TryAnotherCut {...props} check={now} />}
        passesElsewhere={job.outcome !== null && !ringDue}
        opened={[
          ...(refusedPlan ? (['cut'] as const) : []),
          ...(beside.chosen === '' ? [] : (['bending'] as const)),
        ]}
      />
    </>
  );
}

function KeptDecision({
  kept,
  outdated,
  otherwise,
  asKept,
  criteriaSince,
  unit,
}: DecideProps & { kept: Kept<JobSections['decision']> }) {
  return (
    <div class="kept-decision">
      <p>
        {FOLLOWS[kept.body.check.verdict] === kept.body.decision ? (
          <b>Decided: {kept.body.check.headline}</b>
        ) : (
          <>
            <b>Decided: {DECISION_WORD[kept.body.decision]}.</b> The verdict was: {kept.body.check.headline}
          </>
        )}{' '}
        {kept.body.check.because}
        {kept.body.reason !== '' && <> Reason given: {kept.body.reason}</>}
      </p>
      <Who kept={kept} />
      {outdated && (
        <p class="note">Readings, inspection or planned cut changed after this decision. Decide again.</p>
      )}
      {otherwise !== null && (
        <p class="note" id="answers-otherwise">
          {otherwise}
        </p>
      )}
      {criteriaSince.length > 0 && (
        <details class="twin" id="criteria-since">
          <summary>Shop limits changed since; this decision still uses the earlier ones</summary>
          <SideBySide
            caption="Shop limits at the decision and today"
            heads={['at the decision', 'today']}
            lines={criteriaSince}
          />
        </details>
      )}
      {(outdated || !isMeasured(kept.body.check)) && (
        <details class="twin">
          <summary>Basis for the decision</summary>
          {asKept && <AsKept />}
          <FindingList findings={kept.body.check.findings} unit={unit} id="kept-finding" />
        </details>
      )}
      <p class="hint">
        Calculation {kept.body.calcVersion}, job revision {kept.body.workedOutAtRevision}.
      </p>
    </div>
  );
}

function TryAnotherCut({
  job,
  unit,
  writing,
  initials,
  refusedPlan,
  lathes,
  check,
}: DecideProps & { check: MeasuredCheck }) {
  const tried = job.sections.plan?.body;
  const shown =
    tried?.plannedCutMm == null
      ? ''
      : writeAsTyped(tried.plannedCutMm, tried.typed, unit, writing.decimalSign);
  return (
    <JobForm
      id="plan-form"
      action={`/jobs/${encodeURIComponent(job.number)}/plan`}
      revision={job.revision}
      initials={initials}
      signed={job.stage === 'signed'}
      refused={refusedPlan}
      submit="Check this cut"
      beside={<CutDrawnAsTyped job={job} drawn="plan" />}
      unit={unit}
      first={false}
    >
      <div class="fields">
        <Boxes
          of={PLAN}
          fields={refusedPlan?.fields ?? { [PLAN.plannedCutMm.box]: shown }}
          faults={refusedPlan?.faults ?? []}
          writing={writing}
          hints={{
            plannedCutMm: `Blank: the least cut that cleans up, ${printCut(check.cut.cleanUpMm, unit)}`,
          }}
        />
        <LatheChoice {...lathes} refused={refusedPlan} />
      </div>
    </JobForm>
  );
}

/** Whose figures the passes are planned with. */
function LatheChoice({
  toName,
  chosen,
  refused,
}: DecideProps['lathes'] & { readonly refused: Refused | null }) {
  const { label, box } = PLAN.lathe;
  const value = refused?.fields[box] ?? chosen;
  const names = new Set([...toName, chosen, value]);
  names.delete('');
  if (names.size === 0) return null;
  return (
    <Choice
      label={label}
      name={box}
      value={value}
      error={errorsOf(refused?.faults ?? [])(box)}
      hint="Its figures plan the passes"
      options={[
        { value: '', label: 'not chosen: the shop’s figures' },
        ...[...names].map((name) => ({ value: name, label: name })),
      ]}
    />
  );
}

interface DecisionFormProps {
  job: Job;
  check: CoverCheck;
  criteriaRevision: number;
  initials: string;
  refused: Refused | null;
  /** It is what is to be done next. */
  first: boolean;
  again: boolean;
  /** The answer of now is nowhere else near. */
  sayNow: boolean;
  /** The decision that follows from the verdict needs a reason. */
  reasonAsked: boolean;
}

function DecisionForm(props: DecisionFormProps) {
  const form = <DecisionBoxes {...props} />;
  if (!props.again) return form;
  return (
    <details class="change" open={props.refused !== null}>
      <summary>Decide again</summary>
      {form}
    </details>
  );
}

const NO_REASON = 'No reason overrules a crack or a wall below the minimum.';

function DecisionBoxes({
  job,
  check,
  criteriaRevision,
  initials,
  refused,
  first,
  sayNow,
  reasonAsked,
}: DecisionFormProps) {
  const error = errorsOf(refused?.faults ?? []);
  const natural = FOLLOWS[check.verdict];
  const reason = { name: 'reason', value: refused?.fields.reason, error: error('reason'), rows: 2 };
  return (
    <JobForm
      id="decision-form"
      action={`/jobs/${encodeURIComponent(job.number)}/decision`}
      revision={job.revision}
      initials={initials}
      signed={job.stage === 'signed'}
      refused={refused}
      submit="Decide"
      first={first}
    >
      <input type="hidden" name="criteria" value={criteriaRevision} />
      {sayNow && (
        <p id="answer-now">
          Under today’s shop limits: <b>{check.headline}</b> {check.because}
        </p>
      )}
      <div class="fields">
        <Choice
          label="Decision"
          name="decision"
          as="radios"
          value={refused?.fields.decision ?? natural}
          error={error('decision')}
          box={reasonAsked ? {} : { 'data-opens': 'decision-form-fold-reason', 'data-unless': natural ?? '' }}
          options={[
            { value: 'face', label: DECISION_WORD.face },
            ...(job.sections.received?.body.family.ringAllowed
              ? [{ value: 'face-and-ring', label: DECISION_WORD['face-and-ring'] }]
              : []),
            { value: 'replace', label: DECISION_WORD.replace },
          ]}
        />
      </div>
      {reasonAsked ? (
        <TextArea label="Reason" {...reason} hint={`Needed here. ${NO_REASON}`} />
      ) : (
        <FoldedBoxes
          head="Reason"
          says={`Needed if you decide against the verdict. ${NO_REASON}`}
          names={['reason']}
          fields={refused?.fields ?? {}}
          faults={refused?.faults ?? []}
        >
          <TextArea label={<span class="unseen">Reason</span>} {...reason} />
        </FoldedBoxes>
      )}
    </JobForm>
  );
}

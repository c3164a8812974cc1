import type { Writing } from '../../../shared/quantity/fieldText.ts';
import type { CatalogueStack } from '../../../shared/words/catalogue.ts';
import type { KnownFigures } from '../../../shared/words/fields/field.ts';
import type { Job, JobSections, Kept } from '../../../shared/words/job.ts';
import { type LengthUnit, printLength } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { Skipped, StudChoice } from '../../../shared/words/stud/choices.ts';
import type { Joint } from '../../../shared/words/stud/stud.ts';
import {
  FIT_STATUS,
  FIT_WORD,
  holdsInWords,
  leftOutOfMany,
  needsReason,
} from '../../../shared/words/verdicts.ts';
import { StudInStack } from '../../drawings/studInStack.tsx';
import { Caution } from '../../parts/caution.tsx';
import { FindingList } from '../../parts/findingList.tsx';
import type { DoubtedLength } from '../../parts/form/askedHere.ts';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field } from '../../parts/form/fieldBox.tsx';
import { FoldedBoxes } from '../../parts/form/foldedBoxes.tsx';
import { Questions } from '../../parts/form/questionAt.tsx';
import { Sign } from '../../parts/form/sign.tsx';
import {
  JOINT_FINDING,
  JointAnswer,
  JointFields,
  type JointFieldsProps,
  jointInWords,
} from '../stud/jointFields.tsx';
import { SkippedNote } from '../stud/shelfParts.tsx';
import { stackInWords } from '../stud/studPage.tsx';
import { StudDrawnAsChosen } from './drawnParts.tsx';
import { AsKept, JobForm, type Refused, Who } from './section.tsx';
import { StudWork } from './studWorkForms.tsx';

/** What a stud is chosen from, and what was typed to choose it. */
export interface StudsAsked {
  readonly stacks: readonly { readonly id: string; readonly stack: CatalogueStack }[];
  /** The stack being looked at, and every stud held against it. */
  readonly stackId: string;
  /** What was typed of gap, joint and note. */
  readonly fields: Readonly<Record<string, string>>;
  readonly choices: readonly StudChoice[];
  readonly skipped: readonly Skipped[];
  /** How many of a large catalog are not among the choices. */
  readonly leftOut: number;
  /** Taken off the pads: every stud reaches that much farther. */
  readonly resurfacedMm: number;
  /** What the choices were worked out from, as it is now: a choice is sent with it. */
  readonly revisions: {
    readonly criteria: number;
    readonly stack: number;
    readonly studs: Readonly<Record<string, number>>;
  };
  /** The gap as typed, or the catalog’s. */
  readonly pullForwardMm: number | null;
  /** null until a torque is typed. */
  readonly joint: Joint | null;
  /** How what was typed is written. */
  readonly writing: Writing;
  readonly figures: KnownFigures;
  readonly ring: JointFieldsProps['ring'];
  readonly prevailing: boolean;
  /** What cannot be used of what was typed to look at a stack. */
  readonly faults: readonly Fault[];
  readonly doubts: readonly DoubtedLength[];
  /** Leads to what was kept, typed into the form again. */
  readonly againQuery: string | null;
  /** What the present calculation would say otherwise of those kept; null when it says the same. */
  readonly otherwise: string | null;
  /** The counter slip the job was begun from; null where there is none. */
  readonly slip: { readonly number: string; readonly stackName: string; readonly studName: string } | null;
}

export interface StudsProps extends StudsAsked {
  /** What was found of those kept is shown in the words and the unit it was kept in. */
  readonly asKept: boolean;
  readonly job: Job;
  readonly unit: LengthUnit;
  readonly initials: string;
  readonly refused: Refused | null;
  readonly refusedReplaced: Refused | null;
  readonly refusedRetorque: Refused | null;
  readonly readOnly: boolean;
}

export function studsSummary(job: Job): string {
  const studs = job.sections.studs?.body;
  return studs
    ? `${studs.stud.name} in ${studs.stack.name}: ${FIT_WORD[studs.check.fits]}${studs.check.joint === null ? '' : `; ${holdsInWords(studs.check).toLowerCase()}`}`
    : 'not chosen yet';
}

/** Which flexplate it goes back to, and the stud that belongs in it. */
export function Studs(props: StudsProps) {
  const { job, unit, writing, initials, refusedReplaced, refusedRetorque, readOnly } = props;
  const kept = job.sections.studs;
  return (
    <>
      {kept && <KeptStuds {...props} kept={kept} />}
      {kept?.body.input && (
        <StudWork
          job={job}
          studs={kept.body}
          unit={unit}
          writing={writing}
          initials={initials}
          refusedReplaced={refusedReplaced}
          refusedRetorque={refusedRetorque}
          readOnly={readOnly}
        />
      )}
      <Caution kind="torque" />
      {!readOnly && <ChooseStuds {...props} />}
    </>
  );
}

function KeptStuds({
  kept,
  otherwise,
  asKept,
  unit,
  writing,
}: Pick<StudsProps, 'otherwise' | 'asKept' | 'unit' | 'writing'> & { kept: Kept<JobSections['studs']> }) {
  const { stud, stack, check, input, note, pullForwardMm, calcVersion } = kept.body;
  const joint = input?.joint ?? null;
  return (
    <>
      <p>
        <Sign status={FIT_STATUS[check.fits]} />{' '}
        <b>
          {stud.name} in {stack.name}: {FIT_WORD[check.fits]}.
        </b>{' '}
        {check.because}
        {note !== '' && <> Note: {note}</>}
      </p>
      {otherwise !== null && <p class="note">{otherwise}</p>}
      {asKept && <AsKept />}
      <p class="hint">{stackInWords(stack, unit)}</p>
      <Who kept={kept} />
      <figure class="drawing wide">
        <StudInStack
          id="job-stud"
          stud={stud.stud}
          stack={stack.stack}
          nut={stack.nut}
          check={check}
          pullForwardMm={pullForwardMm}
          name={stud.name}
          unit={unit}
        />
      </figure>
      <details class="twin">
        <summary>What was checked</summary>
        <FindingList
          findings={check.findings.filter(({ id }) => !JOINT_FINDING.test(id))}
          unit={unit}
          id="job-stud-finding"
        />
      </details>
      {joint ? (
        <KeptJoint body={kept.body} joint={joint} unit={unit} writing={writing} />
      ) : (
        <p class="note">
          The joint is not checked: no torque is entered. The vehicle maker's torque comes first.
        </p>
      )}
      <p class="hint">Calculation {calcVersion}.</p>
    </>
  );
}

function KeptJoint({
  body: { check, jointFrom },
  joint,
  unit,
  writing,
}: Pick<StudsProps, 'unit' | 'writing'> & { body: JobSections['studs']; joint: Joint }) {
  return (
    <>
      <JointAnswer
        id="kept-joint"
        check={check}
        joint={joint}
        unit={unit}
        torqueFrom={jointFrom?.torque ?? ''}
      />
      <p class="hint">{jointInWords(joint, jointFrom ?? null, writing)}</p>
    </>
  );
}

function ChooseStuds(props: StudsProps) {
  const { job, stackId, choices, resurfacedMm, refused, faults, againQuery, unit } = props;
  const kept = job.sections.studs;
  const wrong = refused?.faults ?? faults;
  const href = `/jobs/${encodeURIComponent(job.number)}`;
  return (
    <details class="change" open={kept === null || stackId !== '' || refused !== null}>
      <summary>{kept ? 'Choose again' : 'Choose the flexplate stack and its stud'}</summary>
      {props.slip && (
        <p id="studs-slip">
          Counter slip <a href={`/slips/${props.slip.number}`}>{props.slip.number}</a>: {props.slip.studName}{' '}
          in {props.slip.stackName}.
        </p>
      )}
      {againQuery !== null && stackId === '' && (
        <p>
          <a class="button" href={`${href}?${againQuery}#studs`} id="studs-again">
            Start from the saved studs
          </a>
        </p>
      )}
      {(refused === null || choices.length === 0) && <ErrorSummary faults={wrong} />}
      <StackForm {...props} wrong={wrong} />
      {choices.length > 0 && resurfacedMm > 0 && (
        <p class="note" id="pads-resurfaced">
          {printLength(resurfacedMm, unit)} was taken off the pads, so every stud reaches that much farther.
          The pull-forward gap grows by it too: enter the gap that remains.
        </p>
      )}
      {choices.length > 0 && <StudsForm {...props} wrong={wrong} />}
      <SkippedNote kind="stud" skipped={props.skipped} />
    </details>
  );
}

/** Which stack every stud is held against, and the gap. */
function StackForm({
  job,
  stacks,
  stackId,
  fields,
  doubts,
  writing,
  unit,
  wrong,
}: StudsProps & { wrong: readonly Fault[] }) {
  const error = errorsOf(wrong);
  const href = `/jobs/${encodeURIComponent(job.number)}`;
  return (
    <form method="get" action={`${href}#studs`} id="job-stack-form">
      <input type="hidden" name="unit" value={writing.lengthUnit} />
      <Questions doubts={doubts.filter(isOfGap)} fields={fields}>
        <div class="fields">
          <Choice
            label="Flexplate stack"
            name="stack"
            value={stackId}
            options={[
              ...(stackId === '' ? [{ value: '', label: 'choose' }] : []),
              ...stacks.map(({ id, stack }) => ({ value: id, label: stack.name })),
            ]}
          />
          <Field
            label="Pull-forward gap"
            name="pull"
            value={fields.pull}
            unit={unit}
            hint="Blank: the catalog’s. Measure yours."
            error={error('pull')}
          />
        </div>
      </Questions>
      <div class="actions">
        <button class="button" type="submit" id="hold-studs">
          Check every stud
        </button>
      </div>
    </form>
  );
}

/** Asked about in the form of the stack; all else in that of the joint. */
function isOfGap({ name }: DoubtedLength): boolean {
  return name === 'pull';
}

/** The stud and its joint, to be kept. */
function StudsForm(props: StudsProps & { wrong: readonly Fault[] }) {
  const { job, stackId, fields, choices, joint, writing, unit, initials, refused, wrong } = props;
  const error = errorsOf(wrong);
  const stack = props.stacks.find(({ id }) => id === stackId);
  const chosen = choices.find(({ match }) => match.id === fields.stud) ?? choices[0] ?? null;
  const href = `/jobs/${encodeURIComponent(job.number)}`;
  return (
    <JobForm
      id="studs-form"
      action={`${href}/studs`}
      revision={job.revision}
      initials={initials}
      signed={job.stage === 'signed'}
      unit={writing.lengthUnit}
      refused={refused}
      doubts={props.doubts.filter((one) => !isOfGap(one))}
      shown={fields}
      submit="Save these studs"
      first={job.stage === 'to-sign'}
    >
      <input type="hidden" name="stack" value={stackId} />
      <input type="hidden" name="pull" value={fields.pull ?? ''} />
      <SeenWith choices={choices} revisions={props.revisions} />
      <BestFirst {...props} chosen={chosen} wrong={wrong} />
      {chosen && stack && (
        <StudDrawnAsChosen
          job={job}
          choice={chosen}
          stack={stack.stack}
          pullForwardMm={props.pullForwardMm}
          unit={unit}
        />
      )}
      <JointFields
        fields={fields}
        faults={wrong}
        writing={writing}
        figures={props.figures}
        ring={props.ring}
        prevailing={props.prevailing}
      />
      <div class="actions">
        <button
          class="button"
          type="submit"
          formmethod="get"
          formaction={`${href}#studs`}
          id="work-out-joint"
        >
          Work it out, don't save yet
        </button>
      </div>
      {joint && chosen && (
        <JointAnswer
          check={chosen.match.check}
          joint={joint}
          unit={unit}
          torqueFrom={fields.torqueFrom ?? ''}
        />
      )}
      <FoldedBoxes
        head="Note"
        says="Needed where the stud does not fit, or the joint is not OK."
        names={['note']}
        fields={fields}
        faults={wrong}
        open={chosen !== null && needsReason(chosen.match.check)}
      >
        <Field
          label={<span class="unseen">Note</span>}
          name="note"
          value={fields.note}
          error={error('note')}
          size="full"
        />
      </FoldedBoxes>
    </JobForm>
  );
}

/** The revisions the choices were worked out from. */
function SeenWith({ choices, revisions }: Pick<StudsProps, 'choices' | 'revisions'>) {
  return (
    <>
      <input type="hidden" name="criteria" value={revisions.criteria} />
      <input type="hidden" name="stackRevision" value={revisions.stack} />
      {choices.map(({ match }) => (
        <input type="hidden" name={`studRevision.${match.id}`} value={revisions.studs[match.id]} />
      ))}
    </>
  );
}

/** What of the catalog is not listed; undefined where nothing is left out. */
function leftOutInWords(worse: number, otherThread: number): string | undefined {
  const left = [
    ...(otherThread > 0 ? [`${otherThread} with a different thread from the nut`] : []),
    ...(worse > 0 ? [leftOutOfMany(worse)] : []),
  ];
  return left.length === 0 ? undefined : `Left out: ${left.join(', ')}`;
}

/** Those whose thread goes on the nut, or all where none does. */
function BestFirst({
  choices,
  leftOut,
  joint,
  chosen,
  wrong,
}: Pick<StudsProps, 'choices' | 'leftOut' | 'joint'> & {
  chosen: StudChoice | null;
  wrong: readonly Fault[];
}) {
  const error = errorsOf(wrong);
  const goesOn = choices.filter(({ match }) => match.decidedBy !== 'thread');
  const near = goesOn.length > 0 ? goesOn : choices;
  return (
    <Choice
      label="Stud, best first"
      name="stud"
      as="radios"
      value={chosen?.match.id}
      error={error('stud')}
      hint={leftOutInWords(leftOut, choices.length - near.length)}
      options={near.map(({ match, entry }) => ({
        value: match.id,
        label: (
          <>
            <Sign status={FIT_STATUS[match.fits]} /> <b>{entry.name}</b> {FIT_WORD[match.fits]}
            {joint && `; ${holdsInWords(match.check).toLowerCase()}`}
          </>
        ),
        hint: match.check.because,
      }))}
    />
  );
}

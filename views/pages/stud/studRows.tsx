import { rowTold } from '../../../shared/words/answerRows.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import { type LengthUnit, printLength } from '../../../shared/words/print.ts';
import type { Joint, StudCheck } from '../../../shared/words/stud/stud.ts';
import { FIT_STATUS, HOLDS_STATUS, holdsInWords } from '../../../shared/words/verdicts.ts';
import { AnswerRow, AnswerRows } from '../../parts/answerRows.tsx';
import { FindingList } from '../../parts/findingList.tsx';
import { JOINT_FINDING, JointAnswer } from './jointFields.tsx';
import { assembliesInWords, Tolerances, type TolerancesProps } from './tolerancesPart.tsx';

export interface StudRowsProps {
  readonly check: StudCheck;
  readonly joint: Joint | null;
  readonly torqueFrom: string;
  readonly tolerances: Omit<TolerancesProps, 'unit'> | null;
  readonly pullForwardMm: number | null;
  readonly unit: LengthUnit;
}

/** The gap and what goes under the pads. */
const SHIMS = ['pull-forward', 'hub-engagement'];

/** Everything that was looked at of a stud in its stack, a row a subject. */
export function StudRows(props: StudRowsProps) {
  const { check, tolerances, unit } = props;
  const own = check.findings.filter(({ id }) => !JOINT_FINDING.test(id));
  const shims = own.filter(({ id }) => SHIMS.includes(id));
  return (
    <AnswerRows label="What was looked at">
      <FitRow check={check} findings={own.filter(({ id }) => !SHIMS.includes(id))} unit={unit} />
      <JointRow {...props} />
      {tolerances && (
        <AnswerRow
          id="tolerances"
          status={tolerances.anyFails < 0.5 / tolerances.draws ? 'pass' : 'caution'}
          title="Tolerances"
          says={`With every size within its tolerance, ${assembliesInWords(tolerances)} would fail.`}
        >
          <Tolerances rows={tolerances.rows} draws={tolerances.draws} unit={unit} />
        </AnswerRow>
      )}
      <ShimsRow findings={shims} pullForwardMm={props.pullForwardMm} unit={unit} />
    </AnswerRows>
  );
}

/** Lengths, thread and holes: what says whether it fits. */
function FitRow(props: { check: StudCheck; findings: readonly Finding[]; unit: LengthUnit }) {
  const { check, findings, unit } = props;
  const cautions = findings.filter(({ status }) => status === 'caution').map(({ id }) => id);
  const told = rowTold(findings, check.fits === 'with-care' ? cautions : []);
  const count = (status: Finding['status']) => findings.filter((one) => one.status === status).length;
  const unchecked = count('not-checked');
  const says = told.open
    ? told.says?.sentence
    : `${count('pass')} checks OK${unchecked > 0 ? `, ${unchecked} not checked` : ''}.`;
  return (
    <AnswerRow
      id="stud-row-fit"
      status={FIT_STATUS[check.fits]}
      title="Length, thread and holes"
      says={says}
      open={told.open}
    >
      <FindingList findings={findings} unit={unit} id="stud-finding" />
      <p class="to-how">
        <a href="/how/studs">How it is worked out</a>
      </p>
    </AnswerRow>
  );
}

function JointRow({ check, joint, torqueFrom, unit }: StudRowsProps) {
  const status = HOLDS_STATUS[check.holds];
  const words = holdsInWords(check);
  const findings = check.findings.filter(({ id }) => JOINT_FINDING.test(id));
  const decides = findings.find((finding) => finding.status === status);
  return (
    <AnswerRow
      id="stud-row-joint"
      status={joint ? status : 'not-checked'}
      title="Joint"
      says={
        joint ? (decides?.sentence ?? `${words}.`) : 'Enter the torque and the engine torque to check it.'
      }
      open={joint !== null && findings.some((finding) => finding.status === 'fail')}
    >
      {joint ? (
        <JointAnswer check={check} joint={joint} unit={unit} torqueFrom={torqueFrom} />
      ) : (
        <p>
          <a class="button" href="#joint-fields">
            Enter the torque
          </a>
        </p>
      )}
    </AnswerRow>
  );
}

function ShimsRow(props: { findings: readonly Finding[]; pullForwardMm: number | null; unit: LengthUnit }) {
  const { findings, pullForwardMm, unit } = props;
  const told = rowTold(findings, []);
  const gap = pullForwardMm === null ? null : printLength(pullForwardMm, unit, 'coarse');
  const says =
    gap === null
      ? 'The pull-forward gap is not known. Measure it.'
      : `The pull-forward gap is ${gap}. No limit is set, so it is not judged.`;
  return (
    <AnswerRow
      id="stud-row-shims"
      status={told.status}
      title="Shims"
      says={told.says?.sentence ?? says}
      open={told.open}
    >
      {findings.length > 0 && <FindingList findings={findings} unit={unit} id="stud-finding" />}
      <p>
        <a class="button" href="/stud/gap">
          Measure the gap and choose shims
        </a>
      </p>
    </AnswerRow>
  );
}

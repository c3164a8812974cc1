import { linesOf } from '../../../shared/quantity/fieldLines.ts';
import { boxesOf, type Writing } from '../../../shared/quantity/fieldText.ts';
import type { KnownFigures } from '../../../shared/words/fields/field.ts';
import { JOINT } from '../../../shared/words/fields/joint.ts';
import type { JointFrom } from '../../../shared/words/job.ts';
import {
  briefLength,
  FORCE,
  type LengthUnit,
  printNumber,
  printShare,
  printTorque,
} from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { StudRing } from '../../../shared/words/stud/choices.ts';
import type { Joint, StudCheck } from '../../../shared/words/stud/stud.ts';
import { HOLDS_STATUS, holdsInWords } from '../../../shared/words/verdicts.ts';
import { TorqueWindow } from '../../drawings/torqueWindowPicture.tsx';
import { FindingList } from '../../parts/findingList.tsx';
import { Boxes, filledInWords } from '../../parts/form/bodyFields.tsx';
import { Choice } from '../../parts/form/fieldBox.tsx';
import { FoldedBoxes } from '../../parts/form/foldedBoxes.tsx';
import { Sign } from '../../parts/form/sign.tsx';
import { KeyFigures } from '../../parts/keyFigures.tsx';

export interface JointFieldsProps {
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly writing: Writing;
  readonly figures: KnownFigures;
  /** How many studs on which circle, where these are left empty. */
  readonly ring: StudRing;
  readonly prevailing: boolean;
}

/** What every joint is asked; the rest has a usual figure, or is the cover's own. */
const ASKED = [
  'torqueNm',
  'engineTorqueNm',
  'nutFactor',
  'scatter',
  'friction',
] as const satisfies readonly (keyof Joint)[];
const FEW = [
  'serviceFactor',
  'surface',
  'studCount',
  'studCircleDiameterMm',
  'studsUsedBefore',
  'retightened',
] as const satisfies readonly (keyof Joint)[];
const FEW_NAMES = boxesOf(Object.fromEntries(FEW.map((key) => [key, JOINT[key]])));
const AS_USUAL = { [JOINT.serviceFactor.box]: '2', surface: JOINT.surface.ifEmpty };

/** What is asked to say whether the joint holds. The vehicle maker's torque comes first. */
export function JointFields(props: JointFieldsProps) {
  const { fields, faults, writing, figures, ring } = props;
  const whose = ring.of === 'cover' ? 'the cover’s' : 'the flexplate’s';
  const given = [JOINT.torqueNm, JOINT.engineTorqueNm].some(({ box }) => (fields[box] ?? '') !== '');
  const few = { ...AS_USUAL, ...fields };
  const boxes = { of: JOINT, fields, faults, writing, known: figures };
  return (
    <details class="more-findings" id="joint-fields" open={given || faults.some(isOfJoint)}>
      <summary>Will it hold? Torque and joint</summary>
      <p class="note">
        The vehicle maker's torque comes first: look it up and use it. What follows is advice.
      </p>
      {fields.torqueUnit && <input type="hidden" name="torqueUnit" value={fields.torqueUnit} />}
      <div class="fields">
        <Boxes
          {...boxes}
          only={[...ASKED, ...(props.prevailing ? ['prevailingNm'] : [])]}
          hints={{ torqueNm: 'Another unit? Type it after the figure' }}
          after={{
            torqueNm: (
              <Choice
                label="Where the torque is from"
                name="torqueFrom"
                value={fields.torqueFrom ?? ''}
                options={[
                  { value: '', label: 'not entered' },
                  { value: 'maker', label: 'the vehicle maker' },
                  { value: 'other', label: 'somewhere else' },
                ]}
              />
            ),
          }}
        />
      </div>
      <FoldedBoxes
        fields={few}
        faults={faults}
        head="Shock load, surfaces, studs"
        says="Needed where they differ from what is usual, or the studs were used before or re-torqued."
        names={FEW_NAMES}
        kept={AS_USUAL}
        told={filledInWords({ ...boxes, fields: few, only: FEW })}
      >
        <Boxes
          {...boxes}
          only={FEW}
          hints={{
            ...(ring.count !== null && { studCount: `Blank: ${whose}, ${ring.count}` }),
            ...(ring.circleMm !== null && {
              studCircleDiameterMm: `Blank: ${whose}, ${briefLength(ring.circleMm, writing.lengthUnit)}`,
            }),
          }}
        />
      </FoldedBoxes>
    </details>
  );
}

const BOXES: ReadonlySet<string> = new Set(boxesOf(JOINT));

function isOfJoint({ path }: Fault): boolean {
  return BOXES.has(path);
}

/** Findings of the joint are shown in a place of their own. */
export const JOINT_FINDING = /^(joint|stud-shear|bearing-pressure)/;

export interface JointAnswerProps {
  /** Where more than one stands on a page. */
  readonly id?: string;
  readonly check: StudCheck;
  readonly joint: Joint;
  readonly unit: LengthUnit;
  readonly torqueFrom: string;
}

/** Whether the tightened joint holds the engine: the sentence, the figures, the window of torque, every finding. */
export function JointAnswer({ id = 'joint', check, joint, unit, torqueFrom }: JointAnswerProps) {
  const found = check.joint;
  if (found === null) return null;
  const findings = check.findings.filter((finding) => JOINT_FINDING.test(finding.id));
  const decides = (['joint-slip', 'joint-proof'] as const)
    .map((id) => findings.find((finding) => finding.id === id))
    .find((finding) => finding?.status === HOLDS_STATUS[check.holds]);
  const status = HOLDS_STATUS[check.holds];
  const words = holdsInWords(check);
  const force = FORCE[unit];
  const load = (N: number | null) => (N === null ? '—' : printNumber(N * force.per, force.decimals));
  const answer = (name: string) => check.answers[name]?.value ?? null;
  return (
    <section id={`${id}-answer`} aria-labelledby={`${id}-head`}>
      <h2 id={`${id}-head`}>
        <Sign status={status} /> {words}.
      </h2>
      <p class="why">{decides?.sentence}</p>
      <p class="note">{whoseTorque(torqueFrom, joint, unit)}</p>
      <KeyFigures
        figures={[
          {
            label: 'Preload per stud',
            value: load(found.preloadN.nominal),
            unit: force.unit,
            note: `lowest ${load(found.preloadN.least)} once settled, highest ${load(found.preloadN.most)}`,
          },
          {
            label: 'Lost to settling',
            value: load(found.embeddingLossN),
            unit: force.unit,
          },
          {
            label: 'Highest share of proof load',
            value: found.proofShare === null ? '—' : printShare(found.proofShare),
            how: check.answers.proofShare,
            note: 'advised: 75 % or less',
          },
          {
            label: 'Lowest slip torque',
            value: found.slipTorqueNm.least === null ? '—' : printTorque(found.slipTorqueNm.least, unit),
            how: check.answers.slipTorqueLeastNm,
            note: `needed: ${printTorque(joint.engineTorqueNm * joint.serviceFactor, unit)}`,
          },
        ]}
      />
      <figure class="drawing wide">
        <TorqueWindow
          id={id}
          torqueNm={joint.torqueNm}
          enoughNm={answer('torqueEnoughNm')}
          mostNm={answer('torqueMostNm')}
          preloadN={found.preloadN}
          lossN={found.embeddingLossN}
          proofShare={found.proofShare}
          neededN={
            (1000 * joint.engineTorqueNm * joint.serviceFactor) /
            ((joint.friction * joint.studCount * joint.studCircleDiameterMm) / 2)
          }
          unit={unit}
        />
      </figure>
      <FindingList findings={findings} unit={unit} id={`${id}-finding`} />
    </section>
  );
}

function whoseTorque(torqueFrom: string, joint: Joint, unit: LengthUnit): string {
  const torque = printTorque(joint.torqueNm, unit, 1);
  if (torqueFrom === 'maker')
    return `${torque} is the vehicle maker’s figure: use it. If the range below disagrees, check the stud grade, nut factor and engine torque, and ask.`;
  return `${torque} is not marked as the vehicle maker’s figure. Look that up first; what is below is advice.`;
}

/** What the joint was worked with, each figure with its source. */
export function jointInWords(joint: Joint, from: JointFrom | null, writing: Writing): string {
  const lines = linesOf(JOINT, joint, writing, { made: { ofStack: [] }, beside: sourcesOf(from) });
  return `${lines.map(({ label, value }) => `${label}: ${value}`).join('; ')}.`;
}

/** Where the figures of a joint are from, by the names of its fields. */
export function sourcesOf(from: JointFrom | null) {
  const whose = { maker: 'the vehicle maker’s', other: 'not the vehicle maker’s' } as const;
  return {
    torqueNm: from?.torque ? whose[from.torque] : undefined,
    nutFactor: from?.nutFactor,
    scatter: from?.scatter,
    friction: from?.friction,
  };
}

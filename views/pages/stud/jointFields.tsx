import type { JointFrom } from '../../../shared/words/job.ts';
import {
  briefLength,
  FORCE,
  type LengthUnit,
  printLength,
  printNumber,
  printShare,
  printTorque,
} from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { Joint, StudCheck } from '../../../shared/words/stud.ts';
import { HOLDS_WORD } from '../../../shared/words/verdicts.ts';
import { TorqueWindow } from '../../drawings/torqueWindowPicture.tsx';
import { FindingList } from '../../parts/findingList.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field, Tick } from '../../parts/form/fieldBox.tsx';
import { Sign } from '../../parts/form/sign.tsx';
import { KeyFigures } from '../../parts/keyFigures.tsx';

export type TorqueUnit = 'N·m' | 'lb-ft';

interface FigureChoice {
  readonly id: string;
  readonly value: number;
  readonly says: string;
  readonly source: string;
}

export interface FigureChoices {
  readonly nutFactors: readonly FigureChoice[];
  readonly scatters: readonly FigureChoice[];
  readonly frictions: readonly FigureChoice[];
  readonly surfaces: readonly { readonly id: string; readonly says: string }[];
  /** What counts where nothing is chosen. */
  readonly scatter: string;
  readonly friction: string;
  readonly surface: string;
  readonly serviceFactor: number;
}

/** How many studs on which circle, by the cover or by a stack's holes. */
export interface StudRing {
  readonly count: number | null;
  readonly circleMm: number | null;
  readonly of: 'cover' | 'stack';
}

export interface JointFieldsProps {
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly unit: LengthUnit;
  readonly torqueUnit: TorqueUnit;
  readonly figures: FigureChoices;
  /** How many studs on which circle, where these are left empty. */
  readonly ring: StudRing;
  readonly prevailing: boolean;
}

const ownChoice = { value: 'own', label: 'another figure: type it' };

/** What is asked to say whether the joint holds. The vehicle maker's torque comes first. */
export function JointFields(props: JointFieldsProps) {
  const { fields, faults, unit, torqueUnit, figures, ring } = props;
  const whose = ring.of === 'cover' ? "the cover's" : "the stack's holes'";
  const error = errorsOf(faults);
  const field = (label: string, name: string, more: Partial<Parameters<typeof Field>[0]> = {}) => (
    <Field label={label} name={name} value={fields[name]} error={error(name)} {...more} />
  );
  const choice = (
    label: string,
    name: string,
    known: readonly FigureChoice[],
    otherwise: string | null,
    share = false,
  ) => (
    <Choice
      label={label}
      name={name}
      value={fields[name] || (otherwise ?? '')}
      error={error(name)}
      options={[
        ...(otherwise === null && !fields[name] ? [{ value: '', label: 'choose' }] : []),
        ...known.map(({ id, value, says, source }) => ({
          value: id,
          label: `${share ? `± ${printShare(value, 0)}` : value.toFixed(2)}: ${says} (${source})`,
        })),
        ownChoice,
      ]}
    />
  );
  const given = ['torque', 'engine'].some((name) => (fields[name] ?? '') !== '');
  return (
    <details class="more-findings" id="joint-fields" open={given || faults.some(isOfJoint)}>
      <summary>Will it hold? Torque and the joint</summary>
      <p class="note">
        The vehicle maker's torque comes first: look it up and tighten to it. What follows says what a torque
        does to the stud and the joint; it is advice.
      </p>
      <input type="hidden" name="torqueUnit" value={torqueUnit} />
      <div class="fields">
        {field('Tightening torque', 'torque', {
          unit: torqueUnit,
          hint: torqueUnit === 'N·m' ? 'Or with its unit: 27 lb-ft' : 'Or with its unit: 37 N·m',
        })}
        <Choice
          label="Whose figure it is"
          name="torqueFrom"
          value={fields.torqueFrom ?? ''}
          options={[
            { value: '', label: 'not said' },
            { value: 'maker', label: "the vehicle maker's" },
            { value: 'other', label: "not the vehicle maker's" },
          ]}
        />
        {field('Engine torque', 'engine', { unit: torqueUnit, hint: 'The most the engine gives' })}
        {field('Service factor', 'service', {
          value: fields.service ?? String(figures.serviceFactor),
          size: 'figure',
          inputmode: 'decimal',
          hint: 'For jerks; common practice, no source',
        })}
        {choice('Nut factor K: how nut and stud are', 'kFrom', figures.nutFactors, null)}
        {fields.kFrom === 'own' &&
          field('Nut factor K', 'k', { size: 'figure', hint: 'Write down where it is from' })}
        {choice('Spread of the preload', 'scatterFrom', figures.scatters, figures.scatter, true)}
        {fields.scatterFrom === 'own' && field('Spread ±', 'scatter', { unit: '%' })}
        {choice('Friction, pad on plate', 'muFrom', figures.frictions, figures.friction)}
        {fields.muFrom === 'own' && field('Friction', 'mu', { size: 'figure' })}
        <Choice
          label="Surfaces of pad, plate and nut"
          name="surface"
          value={fields.surface || figures.surface}
          hint="How much settles: VDI 2230:2003, table 5, from memory"
          options={figures.surfaces.map(({ id, says }) => ({ value: id, label: says }))}
        />
        {field('Number of studs', 'jointStuds', {
          size: 'figure',
          hint: ring.count === null ? undefined : `Empty: ${whose}, ${ring.count}`,
        })}
        {field('Stud circle Ø', 'jointCircle', {
          unit,
          hint: ring.circleMm === null ? undefined : `Empty: ${whose}, ${briefLength(ring.circleMm, unit)}`,
        })}
        {props.prevailing &&
          field('Torque that only turns the nut', 'prevTorque', {
            unit: torqueUnit,
            optional: true,
            hint: 'On the last turn before it seats',
          })}
      </div>
      <div>
        <Tick
          label="The studs were used before"
          name="usedBefore"
          value="1"
          checked={fields.usedBefore === '1'}
        />
        <Tick
          label="Tightened again after the first heat cycle: count half the settling (only where the vehicle's maker allows it, without thread-locker)"
          name="retightened"
          value="1"
          checked={fields.retightened === '1'}
        />
      </div>
    </details>
  );
}

const OF_JOINT = /^(torque|engine|service|k|kFrom|scatter|mu|joint|prevTorque)/;

function isOfJoint({ path }: Fault): boolean {
  return OF_JOINT.test(path);
}

/** Findings of the joint are shown in a place of their own. */
export const JOINT_FINDING = /^(joint|stud-shear|bearing-pressure)/;

/** Whether it holds, by sign and word. */
export const HOLDS = {
  yes: { status: 'pass', words: HOLDS_WORD.yes },
  no: { status: 'fail', words: HOLDS_WORD.no },
  'not-checked': { status: 'not-checked', words: HOLDS_WORD['not-checked'] },
} as const;

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
    .find((finding) => finding?.status === HOLDS[check.holds].status);
  const { status, words } = HOLDS[check.holds];
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
            label: 'Preload of each stud',
            value: load(found.preloadN.nominal),
            unit: force.unit,
            note: `at least ${load(found.preloadN.least)} once settled, at most ${load(found.preloadN.most)}`,
          },
          {
            label: 'Lost as it settles',
            value: load(found.embeddingLossN),
            unit: force.unit,
          },
          {
            label: 'Share of proof, at most',
            value: found.proofShare === null ? '—' : printShare(found.proofShare),
            note: 'advised: 75 % or less',
          },
          {
            label: 'Slips at, at least',
            value: found.slipTorqueNm.least === null ? '—' : printTorque(found.slipTorqueNm.least, unit),
            note: `asked: ${printTorque(joint.engineTorqueNm * joint.serviceFactor, unit)}`,
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
    return `${torque} is the vehicle maker's figure: tighten to it. The window below is advice and does not change it; if the two disagree, look again at the stud's grade, the nut factor and the engine, and ask.`;
  return `${torque} is not said to be the vehicle maker's figure. Look that up first: it comes before anything below, which is advice.`;
}

/** What the joint was worked with, each figure with its source. */
export function jointInWords(joint: Joint, from: JointFrom | null, unit: LengthUnit): string {
  const source = (words: string | undefined) => (words ? `: ${words}` : '');
  return [
    `Torque ${printTorque(joint.torqueNm, unit, 1)}`,
    `engine ${printTorque(joint.engineTorqueNm, unit)} × service factor ${joint.serviceFactor} (common practice, no source)`,
    `nut factor ${joint.nutFactor}${source(from?.nutFactor)}`,
    `spread ± ${printShare(joint.scatter, 0)}${source(from?.scatter)}`,
    `friction ${joint.friction}${source(from?.friction)}`,
    `surfaces ${SURFACE_WORD[joint.surface ?? 'rz-10-to-40']}`,
    `${joint.studCount} studs on Ø ${printLength(joint.studCircleDiameterMm, unit, 'coarse')}`,
    ...(joint.prevailingNm ? [`${printTorque(joint.prevailingNm, unit, 1)} only turns the nut`] : []),
    ...(joint.studsUsedBefore ? ['studs used before'] : []),
    ...(joint.retightened ? ['half the settling counted, for tightening again'] : []),
  ]
    .join('; ')
    .concat('.');
}

export const SURFACE_WORD = {
  'rz-under-10': 'Rz under 10 µm',
  'rz-10-to-40': 'Rz 10 to 40 µm',
  'rz-40-to-160': 'Rz 40 to 160 µm',
} as const;

/** The same in two sentences, for a slip. */
export function JointLine({ check, joint, unit, torqueFrom }: JointAnswerProps) {
  const { status, words } = HOLDS[check.holds];
  const torque = check.findings.find((finding) => finding.id === 'joint-torque');
  return (
    <p>
      <Sign status={status} /> <b>{words}</b>, tightened to {printTorque(joint.torqueNm, unit, 1)}
      {torqueFrom === 'maker' ? " (the vehicle maker's figure)" : " (not said to be the vehicle maker's)"}:{' '}
      {torque?.sentence} Advice; the vehicle maker's torque comes first.
    </p>
  );
}

import { passFigures } from '../../../../shared/words/cut.ts';
import { dayIn, printDay } from '../../../../shared/words/day.ts';
import { CRITERIA } from '../../../../shared/words/fields/criteria.ts';
import { heatMarksInWords } from '../../../../shared/words/heatMarks.ts';
import {
  foundOfItem,
  type InspectedItem,
  isItemOk,
  limitsOfItem,
} from '../../../../shared/words/inspection.ts';
import type { Job, StudsChosen } from '../../../../shared/words/job.ts';
import { countingPasses, passesBeforeRing } from '../../../../shared/words/passes.ts';
import {
  type LengthUnit,
  lengthFigure,
  listInWords,
  printAs,
  printLength,
  printNumber,
  printTorque,
  SURFACE_SPEED,
} from '../../../../shared/words/print.ts';
import { FIT_WORD, holdsInWords } from '../../../../shared/words/verdicts.ts';
import type { Frame } from '../../../frame.ts';
import { bendingInWords } from '../../../parts/bendingPart.tsx';
import { Cautions } from '../../../parts/caution.tsx';
import { When } from '../../../parts/when.tsx';
import { PhotoList } from '../photosPart.tsx';
import { LAYER_WORD } from '../stepWords.ts';
import { replacedInWords, retorqueInWords } from '../studWorkForms.tsx';
import type { TypedText } from './longTexts.ts';
import type { SheetProps } from './sheetProps.ts';

/** More than these have no room on the first sheet: tried by printing a full one on A4 and Letter. */
const MOST_PASSES = 6;
const MOST_REPLACED = 2;

/** Where what has no room on the first sheet goes on. */
interface Continued {
  readonly fullFrom: number;
}

/** Passes and replaced studs that have no room on the first sheet, whole, for sheets of their own. */
export function listsInFull({ printing, job }: Pick<SheetProps, 'printing' | 'job'>): readonly TypedText[] {
  const unit = printing.frame.lengthUnit;
  const inspected = job.sections.inspected?.body.items ?? [];
  const made = countingPasses(job);
  const replaced = job.sections.studs?.body.replaced ?? [];
  let totalMm = 0;
  const lines = made.map((pass, i) => {
    totalMm += pass.depthMm;
    const seen = [pass.look ? LAYER_WORD[pass.look] : '', pass.note].filter((word) => word !== '');
    return [
      `${i + 1}: ${printLength(pass.depthMm, unit)}, total ${printLength(totalMm, unit)}`,
      ...seen,
    ].join('; ');
  });
  return [
    ...(inspected.length > 0
      ? [{ title: 'Inspection list', text: inspectedInFull(inspected, printing.frame) }]
      : []),
    ...(made.length > MOST_PASSES ? [{ title: 'Passes made', text: lines.join('\n') }] : []),
    ...(replaced.length > MOST_REPLACED
      ? replaced.map((one) => ({
          title: `Stud ${one.stud}, replaced`,
          text: `${replacedInWords(one, { ...printing.frame, rounded: true })}.`,
        }))
      : []),
  ];
}

/** What was found of the inspection list, a line for each item. */
function inspectedInFull(items: readonly InspectedItem[], { lengthUnit, timeZone }: Frame): string {
  return items
    .map((one) => {
      const state = isItemOk(one) ? 'OK' : 'NOT OK';
      const said = `${one.item.name}: ${foundOfItem(one, lengthUnit)}; needed ${limitsOfItem(one.item, lengthUnit)}; ${state}`;
      const by = `${one.who}, ${printDay(dayIn(timeZone, one.at))}`;
      return `${said}. ${by}.${one.note === '' ? '' : ` ${one.note.replaceAll(/\s+/g, ' ')}`}`;
    })
    .join('\n');
}

/** The passes that were made, else those that are advised; nothing where nothing is to be cut. */
export function CutOnPaper({ printing, job, cut, plan, photos, fullFrom }: SheetProps & Continued) {
  const unit = printing.frame.lengthUnit;
  const made = countingPasses(job);
  const beforeRing = passesBeforeRing(job);
  return (
    <section>
      {made.length > 0 ? (
        <>
          <h2>Passes made{cut !== null && `; decided: ${cut}`}</h2>
          {made.length > MOST_PASSES ? (
            <p>
              {made.length} passes, {printLength(totalOf(made), unit)} in all. In full from sheet {fullFrom}.
            </p>
          ) : (
            <PassesMade job={job} unit={unit} />
          )}
        </>
      ) : (
        <Planned job={job} cut={cut} plan={plan} unit={unit} ringFirst={job.outcome === 'face-and-ring'} />
      )}
      {beforeRing > 0 && (
        <p>
          {beforeRing === 1 ? 'One pass was' : `${beforeRing} passes were`} made before the ring was welded
          on.
        </p>
      )}
      <p>{chuckedInWords(job)}</p>
      <PhotoList photos={photos} unit={unit} />
    </section>
  );
}

function totalOf(made: readonly { readonly depthMm: number }[]): number {
  return made.reduce((sum, { depthMm }) => sum + depthMm, 0);
}

function PassesMade({ job, unit }: { job: Job; unit: LengthUnit }) {
  let totalMm = 0;
  return (
    <table class="figures">
      <thead>
        <tr>
          <th scope="col">Pass</th>
          <th scope="col">Depth, {unit}</th>
          <th scope="col">Total, {unit}</th>
          <th scope="col" class="word">
            After it
          </th>
        </tr>
      </thead>
      <tbody>
        {countingPasses(job).map((pass, i) => {
          totalMm += pass.depthMm;
          const seen = [pass.look ? LAYER_WORD[pass.look] : '', pass.note].filter((word) => word !== '');
          return (
            <tr>
              <th scope="row">{i + 1}</th>
              <td>{lengthFigure(pass.depthMm, unit)}</td>
              <td>{lengthFigure(totalMm, unit)}</td>
              <td class="word">{seen.join('; ') || '—'}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

function Planned({
  job,
  cut,
  plan,
  unit,
  ringFirst,
}: Pick<SheetProps, 'job' | 'cut' | 'plan'> & { unit: LengthUnit; ringFirst: boolean }) {
  if (cut === null) {
    return (
      <>
        <h2>Cut</h2>
        <p>None: the cover is not used again.</p>
      </>
    );
  }
  const figures = passFigures(plan?.passes ?? [], unit);
  const lathe = job.sections.plan?.body.lathe;
  return (
    <>
      <h2>
        Cut plan, advice: {cut} from the highest point
        {ringFirst && ', for the face as it is now; weld the ring and re-measure first'}
      </h2>
      {plan === null ? (
        <p>No passes are planned: the shop limits do not describe the lathe.</p>
      ) : (
        <>
          <table class="figures">
            <thead>
              <tr>
                <th scope="col">Pass</th>
                <th scope="col">Depth, {unit}</th>
                <th scope="col">Total, {unit}</th>
                <th scope="col">Feed, {unit}/rev</th>
              </tr>
            </thead>
            <tbody>
              {plan.passes.map((pass, i) => (
                <tr>
                  <th scope="row">
                    {i + 1} {pass.kind}
                  </th>
                  <td>{figures[i]?.depth}</td>
                  <td>{figures[i]?.total}</td>
                  <td>{lengthFigure(pass.feedMm, unit)}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <p>
            {lathe && `${lathe.lathe.name}, revision ${lathe.revision}: `}
            {printNumber(plan.spindleRpm, 0)} rpm, {printAs(plan.cuttingSpeedMPerMin, SURFACE_SPEED[unit])} at
            the outer edge. Look after every pass, then re-measure.{' '}
            {plan.warnings.map(({ text }) => text).join(' ')}
          </p>
        </>
      )}
    </>
  );
}

const CHUCKED = {
  'pads-and-pilot-trued': 'Pads and crank pilot indicated in.',
  'side-wall-jaws': 'Held in jaws on the side wall.',
} as const;

function chuckedInWords(job: Job): string {
  const chucking = job.sections.setup?.body.chucking ?? null;
  return chucking === null ? 'How it was held is not recorded.' : CHUCKED[chucking];
}

/** Which studs, nuts and torque, and what was replaced or re-torqued. */
export function StudsOnPaper({ printing, job, fullFrom }: SheetProps & Continued) {
  const kept = job.sections.studs?.body ?? null;
  return (
    <section>
      <h2>Studs, nuts, torque</h2>
      {kept === null ? (
        <p>{job.outcome === 'replace' ? 'None: the cover is not used again.' : 'Not chosen.'}</p>
      ) : (
        <dl class="terms">
          {studTerms(kept, job, printing.frame, fullFrom).map(([term, said]) => (
            <>
              <dt>{term}</dt>
              <dd>{said}</dd>
            </>
          ))}
        </dl>
      )}
    </section>
  );
}

function studTerms(kept: StudsChosen, job: Job, frame: SheetProps['printing']['frame'], fullFrom: number) {
  const unit = frame.lengthUnit;
  const telling = { ...frame, rounded: true };
  const { stud, stack, check } = kept;
  const count = job.sections.received?.body.family.studCount;
  const gap = kept.pullForwardMm;
  const nut = stack.nut;
  const of = (what: string) => (count === undefined ? what : `${count} ${what}`);
  const quoted = check.findings.some(({ status }) => status === 'fail' || status === 'caution');
  const rows: (readonly [string, string] | null)[] = [
    [
      of('studs'),
      `${stud.name}, ${stud.stud.thread.designation}, ${printLength(stud.stud.projectionMm, unit, 'coarse')} from pad: ${FIT_WORD[check.fits]}.`,
    ],
    [of('nuts'), nut === null ? 'Not given.' : nutInWords(nut, unit)],
    [
      'Flexplate',
      `${stack.name}, ${printLength(thicknessMm(stack), unit, 'coarse')} thick; pull-forward gap ${gap === null ? 'not measured' : printLength(gap, unit, 'coarse')}.`,
    ],
    ['Torque', torqueInWords(kept, unit)],
    ...replacedTerms(kept.replaced ?? [], telling, fullFrom),
    kept.retightening ? ['Re-torqued', `${retorqueInWords(kept.retightening, telling)}.`] : null,
    kept.note === '' || quoted ? null : ['Note', kept.note],
  ];
  return rows.filter((row) => row !== null);
}

function replacedTerms(
  replaced: NonNullable<StudsChosen['replaced']>,
  telling: Parameters<typeof replacedInWords>[1],
  fullFrom: number,
): readonly (readonly [string, string])[] {
  if (replaced.length <= MOST_REPLACED)
    return replaced.map((one) => [`Stud ${one.stud}`, `Replaced. ${replacedInWords(one, telling)}.`]);
  const studs = listInWords(replaced.map(({ stud }) => String(stud)));
  return [['Replaced', `Studs ${studs}. In full from sheet ${fullFrom}.`]];
}

function thicknessMm({ stack }: StudsChosen['stack']): number {
  return stack.layers.reduce((sum, layer) => sum + layer.thicknessMm, 0);
}

function nutInWords(nut: NonNullable<StudsChosen['stack']['nut']>, unit: LengthUnit): string {
  const parts = [
    nut.thread?.designation ?? '',
    `${printLength(nut.heightMm, unit, 'coarse')} high`,
    nut.washerMm > 0 ? `washer ${printLength(nut.washerMm, unit, 'coarse')}` : '',
    nut.prevailing ? 'prevailing torque' : '',
  ];
  return `${parts.filter((part) => part !== '').join(', ')}.`;
}

function torqueInWords({ input, jointFrom, check }: StudsChosen, unit: LengthUnit): string {
  const joint = input?.joint ?? null;
  if (joint === null) return 'Use the vehicle maker’s; the joint was not worked out.';
  const whose =
    jointFrom?.torque === 'maker' ? 'the vehicle maker’s' : 'not stated to be the vehicle maker’s';
  return `${printTorque(joint.torqueNm, unit, 1)}, ${whose}. ${holdsInWords(check)}. Advice.`;
}

/** What the signer says, in the signer's words. */
export function Statement({ job }: SheetProps) {
  const { signature } = job.sections;
  if (signature === null || job.stage !== 'signed') return null;
  const { statement } = signature.body;
  return (
    <section class="statement">
      <p class="said">
        <b>Statement of the signer.</b> Signed: {signature.who}, <When at={signature.at} />
        {statement === '' ? ', without a statement.' : `. “${statement}”`}
      </p>
    </section>
  );
}

const MINIMUM: readonly string[] = [CRITERIA.minimumWallMm.label, CRITERIA.minimumWallFormula.label];

/** The limits it stands on, the usual cautions, and room for hands. */
export function Foot({ printing, job, check, limits, bending, madeUpCover }: SheetProps) {
  const [marks] = heatMarksInWords(check?.heatMarks ?? [], printing.frame.lengthUnit);
  const { decision, signature, cuts } = job.sections;
  const hands = [...new Set([...job.readings.map(({ who }) => who), ...(cuts ? [cuts.who] : [])])];
  const deciders = [
    ...new Set([decision?.who, job.stage === 'signed' ? signature?.who : undefined].filter((who) => who)),
  ] as string[];
  const by = (who: readonly string[]) => (who.length === 0 ? '' : `: ${listInWords(who)}`);
  return (
    <>
      <div class="small">
        <p>
          Shop limits{decision && job.outcome !== null ? ' at the decision' : ''}:{' '}
          {limits
            // The minimum that counts, or that there is none, stands at the head of the sheet.
            .filter(({ label, value }) => !(MINIMUM.includes(label) && value === 'none'))
            .map((one) => `${one.label.toLowerCase()} ${one.value}`)
            .join('; ')}
          .{marks !== undefined && ` Heat marks (advice): ${marks}`}
          {bending && ` Bending (advice): ${bendingInWords(bending, printing.frame.lengthUnit)}`}
          {job.demo && ' Demo shop: everything here is invented.'}
          {madeUpCover && ' The figures of this cover type are the demo’s, made up.'}
        </p>
        <Cautions />
      </div>
      <ul class="hands">
        <li>Measured and cut{by(hands)}</li>
        <li>Decided and signed{by(deciders)}</li>
        <li>Received by customer, date</li>
      </ul>
    </>
  );
}

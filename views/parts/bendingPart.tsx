import type { Answer } from '../../shared/words/answer.ts';
import {
  type Bending,
  type BendingCase,
  CASE_WORD,
  type PistonRange,
  type RingTold,
} from '../../shared/words/bending/bending.ts';
import { BENDING_FORMULA } from '../../shared/words/bending/bendingWorkings.ts';
import {
  offAtMost,
  offInWords,
  offSolid,
  RING_WIDENED,
  ringNotJoined,
} from '../../shared/words/bending/solid.ts';
import { rangeThanNew, thanNew, timesNew } from '../../shared/words/bending/thanNew.ts';
import {
  briefLength,
  HOTTER,
  type LengthUnit,
  lengthFigure,
  MASS,
  MM_PER_UNIT,
  PRESSURE,
  printAs,
  printLength,
  printNumber,
  printShare,
  printTemperature,
  printTorque,
  STRESS,
  UNBALANCE,
  UNIT_WORD,
  WAVINESS,
} from '../../shared/words/print.ts';
import { Caution } from './caution.tsx';
import { Choice } from './form/fieldBox.tsx';
import { HowFigure } from './how/howFigure.tsx';

export interface BendingPartProps {
  readonly bending: Bending | null;
  /** Why there is none. */
  readonly why: string | null;
  /** Why another cover type is not set beside it, though one was chosen. */
  readonly besideWhy: string | null;
  readonly unit: LengthUnit;
  readonly id: string;
  readonly level: 2 | 3;
  /** Where the drawings are; without it they are not offered. */
  readonly drawings?: string;
  /** Families to set beside it, and the form that takes the choice. */
  readonly beside?: BesideProps;
}

export interface BesideProps {
  readonly families: readonly { readonly id: string; readonly name: string }[];
  readonly chosen: string;
  /** The form its choice belongs to; without one it has a form of its own, sent to `action`. */
  readonly form?: string;
  readonly action?: string;
}

/** How the cover bends and heats: advice, in a table from new to ringed. */
export function BendingPart(props: BendingPartProps) {
  const { bending, why, besideWhy, unit, id, level, drawings, beside } = props;
  const Heading = level === 2 ? 'h2' : 'h3';
  return (
    <section id={`${id}-bending`} class="bending" aria-labelledby={`${id}-bending-head`}>
      <Heading id={`${id}-bending-head`}>Bending and heat: advice</Heading>
      {bending === null ? (
        <p class="hint">{why}</p>
      ) : (
        <>
          <p>{bendingInWords(bending, unit)}</p>
          {bending.cases.some(({ beyondYield }) => beyondYield) && (
            <BeyondYield bending={bending} unit={unit} />
          )}
          {bending.cases.some(({ largeDeflection }) => largeDeflection) && (
            <LargeDeflection bending={bending} unit={unit} />
          )}
          {bending.padsTooFarMm != null && (
            <p class="note">
              The pads reach {printLength(bending.padsTooFarMm, unit, 'coarse')} over the friction surface.
              Peak lining pressure can be 10 % higher than shown. Allow for it.
            </p>
          )}
          {unjoined(bending) !== null && <p class="note">{unjoined(bending)}</p>}
          <BendingTable bending={bending} unit={unit} />
          {colourInWords(bending, unit) && <p>{colourInWords(bending, unit)}</p>}
          {bending.marks && <p>{marksInWords(bending.marks)}</p>}
          {drawings !== undefined && <Drawings id={id} href={drawings} />}
          {bending.ring && <Ring ring={bending.ring} bending={bending} unit={unit} />}
          {beside && <Beside id={id} {...beside} />}
          {beside && besideWhy && <p class="note">{besideWhy}</p>}
          <Worth bending={bending} unit={unit} />
        </>
      )}
    </section>
  );
}

const find = (bending: Bending, id: BendingCase['id']) => bending.cases.find((one) => one.id === id) ?? null;

/** "1.03 to 1.05", least first; one figure where both print alike. */
function rangeInWords({ rigid, conforming }: PistonRange, decimals: number): string {
  const [least, most] = [Math.min(rigid, conforming), Math.max(rigid, conforming)].map((value) =>
    printNumber(value, decimals),
  );
  return least === most ? least! : `${least} to ${most}`;
}

/** Why a ring that is planned or on gets no credit; null where none is, or it does. */
function unjoined({ ring }: Bending): string | null {
  if (ring === null || ring.size.joinedToPads === true) return null;
  return ringNotJoined(ring.size.joinedToPads ?? null);
}

/** What the cut does to it, and what a ring would do, in one or two sentences. */
export function bendingInWords(bending: Bending, unit: LengthUnit): string {
  const [fresh, after] = [find(bending, 'new'), find(bending, 'after')];
  if (fresh === null || after === null) return '';
  const against = (one: BendingCase) => {
    const widened = one.ring === null ? { ripple: 1, peak: 1 } : RING_WIDENED;
    const waviness = rangeThanNew(timesNew(one.rippleMm, fresh.rippleMm, widened.ripple));
    const peak = rangeThanNew(timesNew(one.peakOverMean, fresh.peakOverMean, widened.peak));
    return `friction-surface waviness ${waviness}; peak lining pressure ${peak}`;
  };
  const ringed = find(bending, 'ring-unbonded');
  const left = `${printLength(after.trackWallMm, unit)} left on the friction surface`;
  const withRing = after.ring === null ? '' : ', ring at its least stiff';
  const parts = [`After the cut, with ${left}${withRing}: ${against(after)}.`];
  if (ringed) parts.push(`With the stiffening ring, at its least stiff: ${against(ringed)}.`);
  const { peakOverNew } = bending.limits;
  if (peakOverNew !== null && bending.wallForPeakMm !== null) {
    parts.push(
      `Peak lining pressure reaches the shop’s limit, ${thanNew(peakOverNew)}, at about ${printLength(bending.wallForPeakMm, unit, 'coarse')} left on the friction surface, without a ring.`,
    );
  } else if (peakOverNew !== null) {
    parts.push(
      `Peak lining pressure stays within the shop’s limit, ${thanNew(peakOverNew)}, at any wall that could be faced.`,
    );
  }
  return parts.join(' ');
}

function BeyondYield({ bending, unit }: { bending: Bending; unit: LengthUnit }) {
  const worst = bending.cases
    .filter(({ beyondYield }) => beyondYield)
    .flatMap(({ greatestStressMPa }) => [greatestStressMPa.rigid, greatestStressMPa.conforming]);
  return (
    <p class="note">
      The greatest stress reaches {printAs(Math.max(...worst), STRESS[unit])}, above the yield strength of{' '}
      {printAs(bending.base.yieldMPa ?? 0, STRESS[unit])}. The cover would bend for good there. Do not rely on
      these deflections.
    </p>
  );
}

/** The case that moves most beside its wall stands for the others. */
function LargeDeflection({ bending, unit }: { bending: Bending; unit: LengthUnit }) {
  const [worst] = bending.cases
    .filter(({ largeDeflection }) => largeDeflection)
    .map(({ id, trackWallMm, bossDeflectionMm: { rigid, conforming } }) => {
      const base = id === 'other' && bending.other ? bending.other.base : bending.base;
      const movesMm = Math.max(Math.abs(rigid), Math.abs(conforming));
      return { id, movesMm, wallMm: Math.min(base.wallMm, trackWallMm) };
    })
    .sort((a, b) => b.movesMm / b.wallMm - a.movesMm / a.wallMm);
  if (worst === undefined) return null;
  return (
    <p class="note">
      The center of the cover moves {printLength(worst.movesMm, unit, 'coarse')} (
      {caseName(bending, worst.id)}), more than half the wall of {printLength(worst.wallMm, unit, 'coarse')}.
      A plate bent so far also stretches. Do not rely on these deflections.
    </p>
  );
}

export function caseName(bending: Bending, id: BendingCase['id']): string {
  if (id === 'other' && bending.other) return `${bending.other.name}, new`;
  const ringed = find(bending, id)?.ring != null;
  if (bending.welded && ringed && (id === 'now' || id === 'after'))
    return `${CASE_WORD[id]}, ring least stiff`;
  return CASE_WORD[id];
}

function BendingTable({ bending, unit }: { bending: Bending; unit: LengthUnit }) {
  const range = (of: PistonRange, scale = 1, decimals = 2) =>
    rangeInWords({ rigid: of.rigid * scale, conforming: of.conforming * scale }, decimals);
  const hotter = HOTTER[unit];
  const waviness = WAVINESS[unit];
  return (
    <section class="table-box" tabindex={0} aria-label="Bending and heat, case by case">
      <table class="figures">
        <caption>
          Range shown: stiffest to most flexible piston. Wall and center in {UNIT_WORD[unit]}. The friction
          surface is taken to be as thin everywhere as at its thinnest.
        </caption>
        <thead>
          <tr>
            <th scope="col">cover</th>
            <th scope="col">wall</th>
            <th scope="col">
              <HowFigure how={BENDING_FORMULA.peak}>peak ÷ mean</HowFigure>
            </th>
            <th scope="col">
              <HowFigure how={BENDING_FORMULA.waviness}>waviness, {waviness.unit}</HowFigure>
            </th>
            <th scope="col">
              <HowFigure how={BENDING_FORMULA.center}>center moves</HowFigure>
            </th>
            <th scope="col">
              <HowFigure how={BENDING_FORMULA.stress}>stress, {STRESS[unit].unit}</HowFigure>
            </th>
            {bending.heat && (
              <>
                <th scope="col">hotter by, {hotter.unit}</th>
                <th scope="col">behind a stud, {hotter.unit}</th>
              </>
            )}
          </tr>
        </thead>
        <tbody>
          {bending.cases.map((one) => (
            <tr>
              <th scope="row">{caseName(bending, one.id)}</th>
              <td>{lengthFigure(one.trackWallMm, unit)}</td>
              <td>{range(one.peakOverMean)}</td>
              <td>{range(one.rippleMm, waviness.per, waviness.decimals)}</td>
              <td>
                {one.ring === null
                  ? range(one.bossDeflectionMm, 1 / MM_PER_UNIT[unit], unit === 'mm' ? 2 : 3)
                  : 'no bound'}
                {one.largeDeflection && <b> over half the wall</b>}
              </td>
              <td>
                {range(one.greatestStressMPa, STRESS[unit].per, STRESS[unit].decimals)}
                {one.beyondYield && <b> above yield</b>}
              </td>
              {one.heat && (
                <>
                  <td>{printNumber(one.heat.peakRiseK * hotter.per, 0)}</td>
                  <td>{range(one.heat.behindStudRiseK, hotter.per, 0)}</td>
                </>
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** What the face reaches behind a stud as the cut leaves it, and what color clean steel takes there. */
function colourInWords({ cases, heat }: Bending, unit: LengthUnit): string | null {
  const { behindStudC = null, temperColour = null } = cases.find(({ id }) => id === 'after')?.heat ?? {};
  if (behindStudC === null || heat === null || heat.startTemperatureC === null) return null;
  const colour =
    temperColour === null
      ? 'does not color clean steel yet'
      : `turns clean steel ${printColor(temperColour)} at most`;
  const [least, most] = [
    Math.min(behindStudC.rigid, behindStudC.conforming),
    Math.max(behindStudC.rigid, behindStudC.conforming),
  ].map((celsius) => printTemperature(celsius, unit)) as [string, string];
  const to = least === most ? most : `${least.slice(0, least.lastIndexOf(' '))} to ${most}`;
  const from = printTemperature(heat.startTemperatureC, unit);
  return `After the cut, one slip of the clutch heats the face behind a stud to ${to}, starting at ${from}. That ${colour}. Temper colors are a rough guide: time at heat, alloy and oil change them.`;
}

/** Kept with decisions in the spelling of its day. */
const printColor = (color: string) => color.replace('grey', 'gray');

const AGREE = {
  yes: 'The recorded heat marks are where the model expects them',
  one: 'The recorded heat marks are where the model expects them with one of the two pistons shown, not clearly with the other',
  no: 'The recorded heat marks are not where the model expects them. Look for another cause too',
  unclear: 'It is not clear whether the recorded heat marks are where the model expects them',
} as const;

/** Are the marks where the model says? */
function marksInWords({ count, onPressed, pressedArea, agree }: NonNullable<Bending['marks']>): string {
  const share = ({ rigid, conforming }: PistonRange) => {
    const [least, most] = [Math.min(rigid, conforming), Math.max(rigid, conforming)].map((value) =>
      printShare(Math.round(100 * value) / 100, 0),
    );
    return least === most ? least! : `${least!.replace(' %', '')} to ${most}`;
  };
  return `${AGREE[agree]}. By depth, ${share(onPressed)} of the ${count} marks is where the lining presses harder than average. By chance it would be ${share(pressedArea)}.`;
}

/** With a script they come when they are opened; without one the link leads to them. */
function Drawings({ id, href }: { id: string; href: string }) {
  return (
    <details
      class="twin"
      id={`${id}-bending-drawings`}
      hx-get={href}
      hx-trigger="toggle once"
      hx-select="#bending-drawings"
      hx-target={`#${id}-bending-drawn`}
      hx-swap="innerHTML"
    >
      <summary>Drawings: lining pressure with the heat marks, and the section bent</summary>
      <div id={`${id}-bending-drawn`}>
        <a class="button" href={href}>
          See the drawings
        </a>
      </div>
    </details>
  );
}

function Ring({ ring, bending, unit }: { ring: RingTold; bending: Bending; unit: LengthUnit }) {
  const { size, massKg, unbalanceGmm, permissibleGmm, clearanceMm } = ring;
  const unbalance = ({ value }: Answer) => printAs(value ?? 0, UNBALANCE[unit]);
  const room = clearanceMm.value ?? 0;
  return (
    <section class="ring-told">
      <p>
        <b>
          {bending.welded ? 'Stiffening ring welded on: ' : 'Stiffening ring: '}Ø{' '}
          {briefLength(size.innerDiameterMm, unit)} to Ø {briefLength(size.outerDiameterMm, unit)},{' '}
          {briefLength(size.thicknessMm, unit)} thick
        </b>
        , flat on the engine side, with openings for the pads. It weighs at most{' '}
        {printAs(massKg.value ?? 0, MASS[unit])}.
        {unbalanceGmm &&
          ` At the runout the shop allows, it adds up to ${unbalance(unbalanceGmm)} of unbalance${
            permissibleGmm
              ? `, ${(unbalanceGmm.value ?? 0) > (permissibleGmm.value ?? 0) ? 'more than' : 'within'} the ${unbalance(permissibleGmm)} of the shop’s grade (ISO 21940-11)`
              : ''
          }.`}{' '}
        {room > 0
          ? `It clears a flat flexplate by ${briefLength(room, unit)}, less welds and bolt heads.`
          : `It is ${room === 0 ? 'as thick as the pads' : `${briefLength(-room, unit)} thicker than the pads`}. It would hit a flat flexplate.`}
      </p>
      <Caution kind="weld" />
    </section>
  );
}

function Beside({ id, families, chosen, form, action }: BesideProps & { id: string }) {
  const choice = (
    <>
      <Choice
        label="Compare with a new cover of another type"
        name="beside"
        id={`${id}-beside`}
        value={chosen}
        options={[
          { value: '', label: 'none' },
          ...families.map((one) => ({ value: one.id, label: one.name })),
        ]}
        {...(form !== undefined && { select: { form } })}
      />
      <button class="button" type="submit" form={form}>
        Compare
      </button>
    </>
  );
  if (form !== undefined) return <div class="actions beside">{choice}</div>;
  return (
    <form method="get" action={action} class="actions beside">
      {choice}
    </form>
  );
}

/** What the numbers are worth, and what they leave out. */
function Worth({ bending, unit }: { bending: Bending; unit: LengthUnit }) {
  const { base } = bending;
  const off = offSolid(bending.calcVersion);
  return (
    <details class="twin">
      <summary>How far to trust this</summary>
      <ul>
        <li>
          It compares one cover with another. It promises nothing, and is no limit unless the shop makes it
          one.
        </li>
        <li>
          The cover is a thin plate under {printAs(base.pressureMPa, PRESSURE[unit])}. Compared with a solid
          model of five covers, waviness is {offInWords(off.ripple)}, peak pressure {offInWords(off.peak)}.
        </li>
        <li>
          The change from new to cut agrees with the solid within {offAtMost(off.cutRipple)} for waviness and{' '}
          {offAtMost(off.cutPeak)} for peak pressure.
        </li>
        <li>A real piston is between the stiffest and the most flexible one.</li>
        <li>
          A ring counts only when welded to the pads all around. In the sentences above, not in the table, its
          waviness is raised by {printShare(RING_WIDENED.ripple - 1, 0)} and its peak pressure by{' '}
          {printShare(RING_WIDENED.peak - 1, 0)} to allow for the error of the model.
        </li>
        <li>The greatest stress is found away from the pads’ edges, to about 5 %.</li>
        <li>
          {base.speedRpm === null
            ? 'Ballooning from the spinning oil is left out.'
            : `Ballooning from the spinning oil is included, at ${base.speedRpm} rpm.`}
        </li>
        {bending.steel && (
          <li>
            Steel: {bending.steel.name}, the catalog’s revision {bending.steel.revision}.
          </li>
        )}
        {bending.lining && (
          <li>
            Lining: {bending.lining.name}, the catalog’s revision {bending.lining.revision}.
          </li>
        )}
        {bending.heat && (
          <li>
            Heat: one slip of {bending.heat.slipTimeS} s from {bending.heat.slipRpm} rpm at{' '}
            {printTorque(bending.heat.torqueNm, unit)}, {printShare(bending.heat.share, 0)} of it into the
            cover, straight through the wall. Behind a stud it is more by the pressure peak. Heat that spreads
            sideways makes it less.
          </li>
        )}
      </ul>
      <p>
        <a class="button quiet" href="/how/bending">
          How bending is worked out
        </a>{' '}
        <a class="button quiet" href="/how/heat">
          How heat is worked out
        </a>
      </p>
    </details>
  );
}

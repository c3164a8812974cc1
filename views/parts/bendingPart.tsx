import type { Answer } from '../../shared/words/answer.ts';
import type { Bending, BendingCase, PistonRange, RingTold } from '../../shared/words/bending.ts';
import {
  briefLength,
  HOTTER,
  type LengthUnit,
  lengthFigure,
  MM_PER_UNIT,
  PRESSURE,
  printAs,
  printLength,
  printNumber,
  printShare,
  printTorque,
  STRESS,
  UNIT_WORD,
} from '../../shared/words/print.ts';
import { offAtMost, offInWords, offSolid, RING_WIDENED, ringNotJoined } from '../../shared/words/solid.ts';
import { Caution } from './caution.tsx';
import { Choice } from './form/fieldBox.tsx';

export interface BendingPartProps {
  readonly bending: Bending | null;
  /** Why there is none. */
  readonly why: string | null;
  /** Why another family is not set beside it, though one was chosen. */
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
      <Heading id={`${id}-bending-head`}>How it bends and heats, advice</Heading>
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
              The pressure peak can be 10 % higher than shown: allow for it.
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

/** "1.03 to 1.05": so many times the new cover's, from one bound of the piston to the other. */
export function againstNew(one: PistonRange, fresh: PistonRange, widened = 1): string {
  const times = ({ rigid, conforming }: PistonRange) => ({
    rigid: (widened * rigid) / fresh.rigid,
    conforming: (widened * conforming) / fresh.conforming,
  });
  return rangeInWords(times(one), 2);
}

/** What the cut does to it, and what a ring would do, in one or two sentences. */
export function bendingInWords(bending: Bending, unit: LengthUnit): string {
  const [fresh, after] = [find(bending, 'new'), find(bending, 'after')];
  if (fresh === null || after === null) return '';
  const against = (one: BendingCase) => {
    const widened = one.ring === null ? { ripple: 1, peak: 1 } : RING_WIDENED;
    return `ripple is ${againstNew(one.rippleMm, fresh.rippleMm, widened.ripple)} times new, peak lining pressure ${againstNew(one.peakOverMean, fresh.peakOverMean, widened.peak)} times new`;
  };
  const ringed = find(bending, 'ring-unbonded');
  const withRing = after.ring === null ? '' : ', ring at its worse bound';
  const parts = [
    `After the cut (${printLength(after.trackWallMm, unit)} on the friction surface${withRing}) ${against(after)}.`,
  ];
  if (ringed) parts.push(`With the stiffening ring, at its worse bound, ${against(ringed)}.`);
  const { peakOverNew } = bending.limits;
  if (peakOverNew !== null && bending.wallForPeakMm !== null) {
    parts.push(
      `The shop’s limit on the peak, ${printNumber(peakOverNew, 2)} × new, would be reached at about ${printLength(bending.wallForPeakMm, unit, 'coarse')} on the friction surface, without a ring.`,
    );
  } else if (peakOverNew !== null) {
    parts.push(
      `The shop’s limit on the peak, ${printNumber(peakOverNew, 2)} × new, is not reached at any wall that could be faced.`,
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
      The greatest stress reaches {printAs(Math.max(...worst), STRESS[unit])}, above the yield of{' '}
      {printAs(bending.base.yieldMPa ?? 0, STRESS[unit])}: there the cover would give, and the deflections are
      not to be relied on.
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
      The boss moves {printLength(worst.movesMm, unit, 'coarse')} ({caseName(bending, worst.id)}), more than
      half the wall of {printLength(worst.wallMm, unit, 'coarse')}: a plate so far bent also stretches, and
      the deflections are not to be relied on.
    </p>
  );
}

const CASE: Readonly<Record<BendingCase['id'], string>> = {
  new: 'new',
  now: 'now',
  after: 'after the cut',
  'ring-unbonded': 'and a ring, unbonded',
  'ring-bonded': 'and a ring, bonded',
  other: 'another family, new',
};

export function caseName(bending: Bending, id: BendingCase['id']): string {
  if (id === 'other' && bending.other) return `${bending.other.name}, new`;
  const ringed = find(bending, id)?.ring != null;
  if (bending.welded && ringed && (id === 'now' || id === 'after')) return `${CASE[id]}, ring unbonded`;
  return CASE[id];
}

function BendingTable({ bending, unit }: { bending: Bending; unit: LengthUnit }) {
  const range = (of: PistonRange, scale = 1, decimals = 2) =>
    rangeInWords({ rigid: of.rigid * scale, conforming: of.conforming * scale }, decimals);
  const hotter = HOTTER[unit];
  const micro = { per: 1000 / MM_PER_UNIT[unit], name: unit === 'mm' ? 'µm' : 'thou' };
  return (
    <section class="table-box" tabindex={0} aria-label="Bending and heat, case by case">
      <table class="figures">
        <caption>
          From one bound of the piston to the other, rigid and conforming; a real one lies between. Wall and
          center in {UNIT_WORD[unit]}. The friction surface counts as thin everywhere as where it is thinnest.
          Rows with a ring are as computed, not widened.
        </caption>
        <thead>
          <tr>
            <th scope="col">cover</th>
            <th scope="col">wall</th>
            <th scope="col">peak ÷ mean</th>
            <th scope="col">ripple, {micro.name}</th>
            <th scope="col">center moves</th>
            <th scope="col">stress, {STRESS[unit].unit}</th>
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
              <td>{range(one.rippleMm, micro.per, unit === 'mm' ? 1 : 2)}</td>
              <td>
                {one.ring === null
                  ? range(one.bossDeflectionMm, 1 / MM_PER_UNIT[unit], unit === 'mm' ? 2 : 3)
                  : 'no bound'}
                {one.largeDeflection && <b> past half the wall</b>}
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

/** What the face reaches behind a stud as the cut leaves it, and what colour clean steel takes there. */
function colourInWords({ cases, heat }: Bending, unit: LengthUnit): string | null {
  const { behindStudC = null, temperColour = null } = cases.find(({ id }) => id === 'after')?.heat ?? {};
  if (behindStudC === null || heat === null || heat.startTemperatureC === null) return null;
  const colour =
    temperColour === null ? 'does not colour clean steel yet' : `turns clean steel ${temperColour} at most`;
  const degrees = (celsius: number) => HOTTER[unit].per * celsius + (unit === 'in' ? 32 : 0);
  const [from, name] = [printNumber(degrees(heat.startTemperatureC), 0), unit === 'in' ? '°F' : '°C'];
  const to = rangeInWords(
    { rigid: degrees(behindStudC.rigid), conforming: degrees(behindStudC.conforming) },
    0,
  );
  return `After the cut one such slip, from ${from} ${name} before it, takes the face behind a stud to ${to} ${name}, which ${colour}. Temper colours are a rough guide to what was seen: time at heat, alloy and oil change them.`;
}

const AGREE = {
  yes: 'The recorded marks sit where the model says',
  one: 'The recorded marks sit where the model says under one bound of the piston, not clearly under the other',
  no: 'The recorded marks do not sit where the model says: look for another cause as well',
  unclear: 'Whether the recorded marks sit where the model says is not clear',
} as const;

/** Do the marks sit where the model says? */
function marksInWords({ count, onPressed, pressedArea, agree }: NonNullable<Bending['marks']>): string {
  const share = ({ rigid, conforming }: PistonRange) => {
    const [least, most] = [Math.min(rigid, conforming), Math.max(rigid, conforming)].map((value) =>
      printShare(Math.round(100 * value) / 100, 0),
    );
    return least === most ? least! : `${least!.replace(' %', '')} to ${most}`;
  };
  return `${AGREE[agree]}. Of the darkening of ${count} marks, weighed by depth, ${share(onPressed)} lies where the lining presses above its mean; by chance it would be ${share(pressedArea)}.`;
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
      <summary>Where the lining presses, with the marks over it, and how the section bends</summary>
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
  const value = ({ value: found }: Answer, decimals: number) => printNumber(found ?? 0, decimals);
  const room = clearanceMm.value ?? 0;
  return (
    <section class="ring-told">
      <p>
        <b>
          {bending.welded ? 'The ring welded on: ' : 'The ring: '}Ø {briefLength(size.innerDiameterMm, unit)}{' '}
          to Ø {briefLength(size.outerDiameterMm, unit)}, {briefLength(size.thicknessMm, unit)} thick
        </b>
        , flat on the engine side with openings for the pads. It weighs at most {value(massKg, 2)} kg.
        {unbalanceGmm &&
          ` Running out as far as the shop allows, it adds up to ${value(unbalanceGmm, 0)} g·mm of unbalance${
            permissibleGmm
              ? `, ${(unbalanceGmm.value ?? 0) > (permissibleGmm.value ?? 0) ? 'more than' : 'within'} the ${value(permissibleGmm, 1)} g·mm of the shop’s grade (ISO 21940-11)`
              : ''
          }.`}{' '}
        {room > 0
          ? `It stands ${briefLength(room, unit)} clear of a flat flexplate; welds and bolt heads take from that.`
          : `It is ${room === 0 ? 'as thick as the pads' : `${briefLength(-room, unit)} thicker than the pads`}: it would foul a flat flexplate.`}
      </p>
      <Caution kind="weld" />
    </section>
  );
}

function Beside({ id, families, chosen, form, action }: BesideProps & { id: string }) {
  const choice = (
    <>
      <Choice
        label="Set another family’s new cover beside it"
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
        Set it beside
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
      <summary>What this is worth</summary>
      <ul>
        <li>To compare one cover with another; not a promise. No limit, unless the shop has made it one.</li>
        <li>
          A thin plate, at {printAs(base.pressureMPa, PRESSURE[unit])}. Beside a solid model of five covers
          its ripple is {offInWords(off.ripple)}, its pressure peak {offInWords(off.peak)}.
        </li>
        <li>
          Cut over new agrees with the solid within {offAtMost(off.cutRipple)} for ripple and{' '}
          {offAtMost(off.cutPeak)} for the pressure peak.
        </li>
        <li>A rigid and a conforming piston are bounds; a real one lies between.</li>
        <li>
          A ring counts only when it is welded to the pads all round. Its bounds are widened by{' '}
          {printShare(RING_WIDENED.ripple - 1, 0)} for ripple and {printShare(RING_WIDENED.peak - 1, 0)} for
          the pressure peak; the center has none.
        </li>
        <li>The greatest stress is looked for away from the pads’ edges, and is good to about 5 %.</li>
        <li>
          {base.speedRpm === null
            ? 'Ballooning by the oil’s rotation is left out.'
            : `Ballooning by the oil’s rotation is reckoned at ${base.speedRpm} rpm.`}
        </li>
        {bending.heat && (
          <li>
            Heat: one slip of {bending.heat.slipTimeS} s from {bending.heat.slipRpm} rpm at{' '}
            {printTorque(bending.heat.torqueNm, unit)}, {printShare(bending.heat.share, 0)} of it into the
            cover, straight through the wall. Behind a stud the flux is larger by the peak; heat that spreads
            sideways makes it less.
          </li>
        )}
      </ul>
      <p>
        <a class="button quiet" href="/how/bending">
          How the bending is worked out
        </a>{' '}
        <a class="button quiet" href="/how/heat">
          How the heat is worked out
        </a>
      </p>
    </details>
  );
}

import type { ComponentChildren } from 'preact';
import { boxesOf, type Writing } from '../../../shared/quantity/fieldText.ts';
import type { CatalogueStack, CatalogueStud } from '../../../shared/words/catalogue.ts';
import type { KnownFigures } from '../../../shared/words/fields/field.ts';
import { JOINT } from '../../../shared/words/fields/joint.ts';
import { lengthFigure, printLength } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { Skipped, StudChoice, StudRing, Substitute } from '../../../shared/words/stud/choices.ts';
import type { Kit } from '../../../shared/words/stud/kit.ts';
import type { Fits, Joint, ToleranceRow } from '../../../shared/words/stud/stud.ts';
import { FIT_STATUS, FIT_WORD, leftOutOfMany } from '../../../shared/words/verdicts.ts';
import { StudInStack } from '../../drawings/studInStack.tsx';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { Cautions } from '../../parts/caution.tsx';
import type { DoubtedLength } from '../../parts/form/askedHere.ts';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field } from '../../parts/form/fieldBox.tsx';
import { Questions } from '../../parts/form/questionAt.tsx';
import { Sign } from '../../parts/form/sign.tsx';
import type { StackTyped } from '../../parts/stackDrawnPart.tsx';
import { bareCallout } from './handParts.tsx';
import { JointFields } from './jointFields.tsx';
import { KitPart } from './kitPart.tsx';
import { FewerStacks, Narrow, SkippedNote, Substitutes, shelfInWords } from './shelfParts.tsx';
import { StackFields } from './stackFields.tsx';
import { StudRows } from './studRows.tsx';

export interface StudPageProps {
  readonly frame: Frame;
  readonly fields: Readonly<Record<string, string>>;
  readonly stackId: string;
  readonly stacks: readonly { readonly id: string; readonly stack: CatalogueStack }[];
  /** What there is to show fewer stacks by. */
  readonly stackFilters: { readonly counts: readonly string[]; readonly nutThreads: readonly string[] };
  readonly layerRows: number;
  /** Of a stack that is entered layer by layer: what of it can be drawn. */
  readonly typedStack: StackTyped | null;
  readonly doubts: readonly DoubtedLength[];
  readonly chosen: CatalogueStack | null;
  /** No nut thread is entered, and none was chosen: no stud can be named. */
  readonly threadMissing: boolean;
  readonly pullForwardMm: number | null;
  /** Best first. */
  readonly choices: readonly StudChoice[];
  /** How many of a large catalog are not among them. */
  readonly leftOut: number;
  readonly shownId: string | null;
  /** Brought along from where it was measured: checked beside those of the shelf. */
  readonly hand: {
    readonly entry: CatalogueStud;
    readonly boxes: Readonly<Record<string, string>>;
  } | null;
  /** null until a torque is typed. */
  readonly joint: Joint | null;
  /** What the stack's holes say. */
  readonly ring: StudRing;
  /** How what was typed is written. */
  readonly writing: Writing;
  readonly figures: KnownFigures;
  /** By stud: what would make something better of it. */
  readonly mends: Readonly<Record<string, readonly string[]>>;
  readonly substitutes: readonly Substitute[];
  readonly skipped: readonly Skipped[];
  readonly tolerances: {
    readonly rows: readonly ToleranceRow[];
    readonly draws: number;
    readonly anyFails: number;
  } | null;
  /** What goes out with the stud shown. */
  readonly kit?: Kit | null;
  readonly threads: readonly string[];
  readonly faults: readonly Fault[];
}

/** Which stud for this flexplate: every one in the catalog, best first, each with its reason. */
export function StudPage(props: StudPageProps) {
  const { frame, choices, shownId, chosen } = props;
  const shown = choices.find((choice) => choice.match.id === shownId);
  return (
    <Layout title="Find a stud" here="studs" {...frame}>
      <div id="stud-page">
        <StudHead props={props} shown={shown} />
        <StudForm {...props} />
        {chosen && <p class="hint">{stackInWords(chosen, frame.lengthUnit)}</p>}
        {props.threadMissing && (
          <p class="note" id="thread-missing">
            The nut thread is missing, so no stud can be named. Measure the nut or the old stud and enter its
            thread.
          </p>
        )}
        {shown && chosen && <StudAnswer props={props} shown={shown} chosen={chosen} />}
        {choices.length > 0 && <EveryStud {...props} />}
        <SkippedNote kind="stud" skipped={props.skipped} />
        <p>
          <a class="button quiet" href="/stud/flexplate" id="which-flexplate">
            I don't know which flexplate it is
          </a>
          <a class="button quiet" href="/stud/gap" id="to-gap">
            Measure the pull-forward gap and choose shims
          </a>
          <a class="button quiet" href="/stud/stacks?stud=own" id="to-caliper">
            I have the old stud and a caliper
          </a>
          <a class="button quiet" href="/stud/stacks">
            Which flexplate stacks does a stud fit?
          </a>
          <a class="button quiet" href="/slips" id="to-slips">
            Counter slips saved before
          </a>
        </p>
        <Cautions kinds={['torque', 'general']} />
      </div>
    </Layout>
  );
}

function StudHead({ props, shown }: { props: StudPageProps; shown: StudChoice | undefined }) {
  return (
    <section id="stud-head" class="answer-head">
      {shown ? (
        <>
          <div class="head-stays" data-tell>
            <h1 class={`verdict fits-${shown.match.fits}`}>
              {shown.entry.name} {lowerFirst(shown.match.check.headline)}
            </h1>
            <p class="why">{shown.match.check.because}</p>
          </div>
          <div class="actions">
            <a class="button first" id="slip" href={`/stud/slip?${slipQuery(props, shown.match.id)}`}>
              Counter slip
            </a>
            <a class="button" id="other-stacks" href={`/stud/stacks?${otherStacks(props, shown.match.id)}`}>
              Other flexplate stacks it fits
            </a>
          </div>
        </>
      ) : (
        <>
          <h1>Which stud for which flexplate?</h1>
          <p class="why">
            Choose the flexplate stack, or measure it layer by layer at a stud hole. Every stud in the catalog
            is then checked against it, best first.
          </p>
        </>
      )}
    </section>
  );
}

/** The stack, the gap, and from then on the joint. */
function StudForm(props: StudPageProps) {
  const { frame, fields, stackId, faults, chosen } = props;
  const unit = frame.lengthUnit;
  return (
    <form
      id="stud-form"
      method="get"
      action="/stud"
      hx-get="/stud"
      hx-target="#stud-page"
      hx-select="#stud-page"
      hx-swap="outerHTML"
      hx-trigger="change from:#f-stack, change from:#fewer-stacks"
      hx-push-url="true"
      hx-select-oob="#unit-form"
    >
      <ErrorSummary faults={faults} />
      <input type="hidden" name="unit" value={unit} />
      <input type="hidden" name="gapOf" value={stackId} />
      <Questions doubts={props.doubts} fields={fields}>
        {props.hand && <HandAlong {...props.hand} frame={frame} />}
        <FewerStacks fields={fields} {...props.stackFilters} />
        <WhichStack {...props} />
        {props.typedStack && (
          <StackFields
            fields={fields}
            rows={props.layerRows}
            faults={faults}
            writing={props.writing}
            typedStack={props.typedStack}
            inHand
          />
        )}
        {(chosen || stackId === 'own') && (
          <div class="folds">
            <JointFields
              fields={fields}
              faults={faults}
              writing={props.writing}
              figures={props.figures}
              ring={props.ring}
              prevailing={chosen?.nut?.prevailing ?? fields.prevailing === '1'}
            />
            <Narrow fields={fields} threads={props.threads} />
          </div>
        )}
      </Questions>
      <div class="actions">
        <button class={chosen ? 'button' : 'button first'} type="submit" id="find">
          {chosen ? 'Work it out' : 'Find the stud'}
        </button>
        {stackId === 'own' && (
          <button class="button" type="submit" name="add" value="layer" id="add-layer">
            Add a layer
          </button>
        )}
      </div>
    </form>
  );
}

/** The stud that was measured: named, and sent along with every question. */
function HandAlong({ entry, boxes, frame }: NonNullable<StudPageProps['hand']> & { frame: Frame }) {
  return (
    <>
      {Object.entries(boxes).map(([name, value]) => (
        <input type="hidden" name={name} value={value} />
      ))}
      <p class="note" id="hand-along">
        The stud in hand is checked too: {entry.stud.thread.designation}, length from pad{' '}
        {printLength(entry.stud.projectionMm, frame.lengthUnit, 'coarse')}.
      </p>
    </>
  );
}

/** What tells it from the others first: a phone shows the beginning only. */
function stackTold({ name, stack, nut }: CatalogueStack): string {
  const thread = nut?.thread ? bareCallout(nut.thread) : 'thread not entered';
  const count = stack.holeCount === null ? [] : [`${stack.holeCount} studs`];
  return [thread, stack.style, ...count, name].join(' · ');
}

function WhichStack({ frame, fields, stackId, stacks, faults, pullForwardMm }: StudPageProps) {
  const error = errorsOf(faults);
  const unit = frame.lengthUnit;
  return (
    <div class="fields">
      <Choice
        label="Flexplate stack"
        name="stack"
        value={stackId}
        options={[
          ...(stackId === '' ? [{ value: '', label: 'choose' }] : []),
          ...stacks.map(({ id, stack }) => ({
            value: id,
            label: stackTold(stack),
          })),
          { value: 'own', label: 'not listed: enter its layers' },
        ]}
      />
      <Field
        label="Pull-forward gap"
        name="pull"
        value={fields.pull}
        unit={unit}
        hint={
          pullForwardMm === null
            ? 'Converter fully back on the pump, pads to flexplate. Measure it.'
            : `Used: ${printLength(pullForwardMm, unit, 'coarse')}. Blank: the catalog’s. Measure yours.`
        }
        error={error('pull')}
      />
    </div>
  );
}

function StudAnswer({
  props,
  shown,
  chosen,
}: {
  props: StudPageProps;
  shown: StudChoice;
  chosen: CatalogueStack;
}) {
  const { fields, pullForwardMm } = props;
  const unit = props.frame.lengthUnit;
  return (
    <section class="stud-answer" aria-label={`${shown.entry.name} in the stack`}>
      <figure class="drawing wide">
        <StudInStack
          id="stud"
          stud={shown.entry.stud}
          stack={chosen.stack}
          nut={chosen.nut}
          check={shown.match.check}
          pullForwardMm={pullForwardMm}
          name={shown.entry.name}
          unit={unit}
        />
      </figure>
      <div class="stud-kit">
        {props.kit && <KitPart kit={props.kit} studName={shown.entry.name} unit={unit} />}
        <Substitutes
          substitutes={props.substitutes}
          unit={unit}
          hrefOf={(id) => `/stud?${slipQuery(props, id)}`}
        />
      </div>
      <StudRows
        check={shown.match.check}
        joint={props.joint}
        torqueFrom={fields.torqueFrom ?? ''}
        tolerances={props.tolerances}
        pullForwardMm={pullForwardMm}
        unit={unit}
      />
    </section>
  );
}

/** Its thread does not go on the nut. */
function otherThread({ match }: StudChoice): boolean {
  return match.fits === 'no' && match.decidedBy === 'thread';
}

function EveryStud(props: StudPageProps) {
  const near = props.choices.filter((choice) => !otherThread(choice));
  const others = props.choices.filter(otherThread);
  return (
    <section>
      <h2>{props.leftOut > 0 ? 'The best studs first' : 'Every stud, best first'}</h2>
      <Ranked choices={near} props={props} drawn />
      {props.leftOut > 0 && (
        <p>{`Left out: ${leftOutOfMany(props.leftOut)}. Choose a thread above to list fewer.`}</p>
      )}
      {others.length > 0 && (
        <details class="more-findings">
          <summary>{others.length} more with a different thread from the nut</summary>
          <Ranked choices={others} props={props} />
        </details>
      )}
    </section>
  );
}

function Ranked({
  choices,
  props,
  drawn = false,
}: {
  choices: readonly StudChoice[];
  props: StudPageProps;
  drawn?: boolean;
}) {
  const unit = props.frame.lengthUnit;
  return (
    <ol class="rows">
      {choices.map(({ match, entry }) => (
        <RankedRow
          id={`stud-${match.id}`}
          href={`/stud?${slipQuery(props, match.id)}`}
          fits={match.fits}
          name={entry.name}
          detail={`${entry.stud.thread.designation}, length from pad ${printLength(entry.stud.projectionMm, unit, 'coarse')}`}
          shelf={shelfInWords(entry)}
          because={match.check.because}
          mends={props.mends[match.id] ?? []}
          shown={match.id === props.shownId}
          drawing={
            drawn && props.chosen && match.id !== props.shownId ? (
              <StudInStack
                id={`row-${match.id}`}
                stud={entry.stud}
                stack={props.chosen.stack}
                nut={props.chosen.nut}
                check={match.check}
                pullForwardMm={props.pullForwardMm}
                name={entry.name}
                unit={unit}
              />
            ) : undefined
          }
        />
      ))}
    </ol>
  );
}

/** "plate 3.20, casting 11.10; nut 8.30 high, 3/8-24 UNF-2B". */
export function stackInWords(entry: CatalogueStack, unit: Frame['lengthUnit']): string {
  const figure = (mm: number) => lengthFigure(mm, unit, 'coarse');
  const layers = entry.stack.layers.map((layer) => `${layer.name} ${figure(layer.thicknessMm)}`).join(', ');
  const total = entry.stack.layers.reduce((sum, layer) => sum + layer.thicknessMm, 0);
  const nut = entry.nut
    ? `; nut ${figure(entry.nut.heightMm)} high${entry.nut.thread ? `, ${entry.nut.thread.designation}` : ''}`
    : '; no nut entered';
  return `${entry.stack.style === 'one-piece' ? 'One-piece' : 'Two-piece'}: ${layers}, total ${figure(total)} ${unit}${nut}.`;
}

/** The address of one stud in this very stack, typed layers and all. */
function slipQuery({ fields }: StudPageProps, studId: string): string {
  const query = new URLSearchParams({ ...fields, stud: studId });
  query.delete('add');
  return query.toString();
}

/** The stud with the gap and the torque typed beside it: what stays with it in any stack. */
function otherStacks({ fields, hand }: StudPageProps, studId: string): string {
  const query = new URLSearchParams(studId === 'own' ? hand?.boxes : {});
  query.set('stud', studId);
  const along = ['unit', 'pull', 'torqueFrom', 'torqueUnit', ...boxesOf(JOINT)];
  for (const name of along.flatMap((one) => [one, `ok.${one}`]))
    if (fields[name]) query.set(name, fields[name]);
  return query.toString();
}

export function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

/** One of several, best first: sign and word, name, and the dimension that decides. */
export function RankedRow(props: {
  id: string;
  href: string;
  fits: Fits;
  name: string;
  detail: string;
  because: string;
  shelf?: string;
  /** What would have to change, a sentence each. */
  mends?: readonly string[];
  shown?: boolean;
  /** To scale, folded under the row. */
  drawing?: ComponentChildren;
  /** Where its slip is. */
  slipHref?: string | undefined;
}) {
  const { id, href, fits, name, detail, because, shelf = '', mends = [], shown = false, drawing } = props;
  return (
    <li>
      <a class="row ranked" id={id} href={href} aria-current={shown ? 'true' : undefined}>
        <Sign status={FIT_STATUS[fits]} />
        <span>
          <b>{name}</b> {detail}
          {shelf !== '' && <span class="shelf-place"> · {shelf}</span>}
        </span>
        <span class="fits-word">{FIT_WORD[fits]}</span>
        <span class="row-line">{because}</span>
        {mends.length > 0 && (
          <span class="row-line mends">
            <b>What would work:</b> {mends.join(' ')}
          </span>
        )}
      </a>
      {props.slipHref && (
        <a class="button row-slip" id={`slip-${id}`} href={props.slipHref}>
          Counter slip<span class="unseen"> for {name}</span>
        </a>
      )}
      {drawing && (
        <details class="more-findings row-drawing">
          <summary>
            Drawing<span class="unseen"> of {name}, to scale</span>
          </summary>
          <figure class="drawing wide">{drawing}</figure>
        </details>
      )}
    </li>
  );
}

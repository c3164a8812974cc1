import type { Writing } from '../../../shared/quantity/fieldText.ts';
import { FLEXPLATE_SEEN } from '../../../shared/words/fields/gap.ts';
import { CATALOGUE_STACK } from '../../../shared/words/fields/stud.ts';
import { type LengthUnit, printLength } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { FlexplateFound, FlexplateSeen, FlexplatesFound } from '../../../shared/words/stud/choices.ts';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { Cautions } from '../../parts/caution.tsx';
import type { DoubtedLength } from '../../parts/form/askedHere.ts';
import { Boxes } from '../../parts/form/bodyFields.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { Questions } from '../../parts/form/questionAt.tsx';
import { AnswersSoFar, AskNext, LOOK, TwoKinds, without } from './flexplateAsk.tsx';
import { stackInWords } from './studPage.tsx';

type Style = 'one-piece' | 'two-piece';

export interface FlexplateProps {
  readonly frame: Frame;
  readonly fields: Readonly<Record<string, string>>;
  readonly writing: Writing;
  readonly doubts: readonly DoubtedLength[];
  /** null with faults. */
  readonly seen: FlexplateSeen | null;
  readonly found: FlexplatesFound | null;
  readonly faults: readonly Fault[];
}

/** For somebody on the phone: which flexplate it is, one look after the other. It ends in a stack, or in what to measure. */
export function FlexplatePage(props: FlexplateProps) {
  const { found, seen } = props;
  const next = found?.next ?? null;
  return (
    <Layout title="Which flexplate is it?" here="studs" {...props.frame}>
      <h1>{headline(props)}</h1>
      {seen && found && next && <AskNext {...props} seen={seen} next={next} />}
      {seen && found && next === null && <End {...props} seen={seen} found={found} />}
      {seen && <AnswersSoFar {...props} seen={seen} />}
      <FlexplateForm {...props} />
      {seen && found && isBegun(seen) && <Found {...props} seen={seen} found={found} />}
      {next?.look !== 'style' && <TwoKinds unit={props.frame.lengthUnit} />}
      <Cautions kinds={['torque', 'general']} />
    </Layout>
  );
}

function isBegun({ style, totalMm, thread, nutHeightMm, holeCount }: FlexplateSeen): boolean {
  return [style, totalMm, thread, nutHeightMm, holeCount].some((answer) => answer !== null);
}

function headline({ seen, found }: FlexplateProps): string {
  if (seen === null || found === null) return 'Which flexplate is it?';
  const { matches, of } = found;
  const [only] = matches;
  if (matches.length === 1 && only)
    return seen.totalMm === null ? `One left: ${only.stack.name}.` : `It is ${only.stack.name}.`;
  if (matches.length > 1)
    return isBegun(seen)
      ? `${matches.length} of ${of} flexplate stacks are left.`
      : `Which of ${of} flexplate stacks is it?`;
  const which = seen.style === null ? '' : `${seen.style} `;
  return seen.totalMm === null
    ? `No ${which}flexplate stack in the catalog is like that.`
    : `No ${which}flexplate stack in the catalog is that thick.`;
}

/** Where nothing is left to ask: the stack, or what to measure. */
function End(props: FlexplateProps & { seen: FlexplateSeen; found: FlexplatesFound }) {
  const { seen, found, frame, fields } = props;
  const { matches, against } = found;
  const [only] = matches;
  const unit = frame.lengthUnit;
  if (matches.length === 1 && only)
    return (
      <section id="flexplate-end" aria-label="The stack">
        {seen.totalMm === null && (
          <p class="why">
            Check it when the converter is loose: pad face to the engine side is{' '}
            {printLength(only.totalMm, unit, 'coarse')} at a stud hole.
          </p>
        )}
        <div class="actions">
          <a class="button first" id="use-stack" href={stackHref(only, unit)}>
            Find its stud
          </a>
        </div>
      </section>
    );
  return (
    <section id="flexplate-end" aria-label="Measure this">
      <p class="why">
        {matches.length > 1
          ? 'Nothing asked here tells these apart. Measure plate and casting at a stud hole, layer by layer.'
          : 'Look again at the answer that rules out the most, or measure it layer by layer.'}
      </p>
      {against.length > 0 && (
        <ul class="plain" id="against">
          {against.map(({ look, left }) => (
            <li>
              <a href={`/stud/flexplate?${without(fields, look)}`}>Without the {LOOK[look].called}</a>: {left}{' '}
              {left === 1 ? 'stack is' : 'stacks are'} left.
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function FlexplateForm({ frame, fields, writing, doubts, faults }: FlexplateProps) {
  const unit = frame.lengthUnit;
  const boxes = { of: FLEXPLATE_SEEN, fields, faults, writing };
  const thread = CATALOGUE_STACK.nutThreadTyped;
  return (
    <details class="more-findings" id="all-at-once" open={faults.length > 0}>
      <summary>Enter everything you know in one form</summary>
      <form method="get" action="/stud/flexplate" id="flexplate-form">
        <ErrorSummary faults={faults} />
        <input type="hidden" name="unit" value={unit} />
        <Questions doubts={doubts} fields={fields}>
          <Boxes {...boxes} only={['style']} />
          <div class="fields">
            <Boxes
              {...boxes}
              without={['style', 'onBench']}
              hints={{ withinMm: `Blank: ${printLength(FLEXPLATE_SEEN.withinMm.ifEmpty, unit, 'coarse')}` }}
              after={{ withinMm: <Boxes {...boxes} of={{ thread }} /> }}
            />
          </div>
          <Boxes {...boxes} only={['onBench']} />
        </Questions>
        <div class="actions">
          <button class="button" type="submit" id="tell">
            Which one is it?
          </button>
        </div>
      </form>
    </details>
  );
}

/** The stacks that are left; the next nearest, and why it is not the one; the way on without any. */
function Found(props: FlexplateProps & { seen: FlexplateSeen; found: FlexplatesFound }) {
  const { frame, seen, found } = props;
  const { matches, nearest, ofOtherStyle } = found;
  const { style } = seen;
  const unit = frame.lengthUnit;
  return (
    <section id="flexplate-found" aria-labelledby="left-head">
      <h2 id="left-head">{matches.length === 0 ? 'None left' : 'Flexplate stacks left'}</h2>
      {matches.length > 0 && (
        <ol class="rows">
          {matches.map((match) => (
            <MatchRow match={match} unit={unit} measured={seen.totalMm !== null} />
          ))}
        </ol>
      )}
      {nearest && (
        <p class="hint">
          Not {nearest.stack.name}: it is {printLength(Math.abs(nearest.offMm), unit, 'coarse')}{' '}
          {nearest.offMm > 0 ? 'thicker' : 'thinner'}.
        </p>
      )}
      {ofOtherStyle.length > 0 && style !== null && (
        <div class="note">
          <p>
            You saw a {style} flexplate, but the thickness is that of{' '}
            {ofOtherStyle.length === 1 ? 'this' : 'these'} {other(style)}. Look again, or measure again.
          </p>
          <ol class="rows">
            {ofOtherStyle.map((match) => (
              <MatchRow match={match} unit={unit} measured />
            ))}
          </ol>
        </div>
      )}
      <div class="actions">
        {seen.totalMm !== null && (
          <a
            class={matches.length === 0 ? 'button first' : 'button'}
            id="as-measured"
            href={`/stud?${asMeasured(props)}`}
          >
            None of these: go on with the measured thickness
          </a>
        )}
        <a class="button" id="by-layers" href={`/stud?${byLayers(props)}`}>
          Enter it layer by layer
        </a>
      </div>
    </section>
  );
}

function other(style: Style): Style {
  return style === 'one-piece' ? 'two-piece' : 'one-piece';
}

function stackHref({ id }: FlexplateFound, unit: LengthUnit): string {
  return `/stud?stack=${encodeURIComponent(id)}&unit=${unit}`;
}

function MatchRow({ match, unit, measured }: { match: FlexplateFound; unit: LengthUnit; measured: boolean }) {
  const off = Math.abs(match.offMm);
  const said = off < 0.005 ? 'as measured' : `${printLength(off, unit, 'coarse')} off`;
  return (
    <li>
      <a class="row stack-row" id={`match-${match.id}`} href={stackHref(match, unit)}>
        <b>{match.stack.name}</b>
        <span>{measured && said}</span>
        <span class="row-line">{stackInWords(match.stack, unit)}</span>
      </a>
    </li>
  );
}

/** What was typed, carried on to the stack's own form. */
function carried({ fields, seen, frame }: FlexplateProps): URLSearchParams {
  const query = new URLSearchParams({ stack: 'own', unit: frame.lengthUnit });
  if (seen?.style) query.set('style', seen.style);
  for (const name of ['nutThread', 'nutHeight', 'holeCount']) {
    const typed = fields[name] ?? '';
    if (typed !== '') query.set(name, typed);
  }
  return query;
}

/** One layer, the whole thickness. */
function asMeasured(props: FlexplateProps): string {
  const query = carried(props);
  query.set('ln.0', 'from the pad face to the engine side');
  query.set('lt.0', props.fields.total ?? '');
  query.set('lo.0', props.fields.within || `${FLEXPLATE_SEEN.withinMm.ifEmpty} mm`);
  return query.toString();
}

/** Its layers by name, thicknesses to be typed. */
function byLayers(props: FlexplateProps): string {
  const query = carried(props);
  query.set('ln.0', 'plate');
  if (props.seen?.style !== 'one-piece') query.set('ln.1', 'casting');
  return query.toString();
}

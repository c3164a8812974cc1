import type { Writing } from '../../../shared/quantity/fieldText.ts';
import { FLEXPLATE_SEEN } from '../../../shared/words/fields/gap.ts';
import { CATALOGUE_STACK } from '../../../shared/words/fields/stud.ts';
import { type LengthUnit, printLength } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { FlexplateFound, FlexplateSeen } from '../../../shared/words/stud/choices.ts';
import { FlexplateSection } from '../../drawings/flexplateSection.tsx';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { Cautions } from '../../parts/caution.tsx';
import { Boxes } from '../../parts/form/bodyFields.tsx';
import { Doubted, type DoubtedLength } from '../../parts/form/doubted.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { stackInWords } from './studPage.tsx';

type Style = 'one-piece' | 'two-piece';

export interface FlexplateProps {
  readonly frame: Frame;
  readonly fields: Readonly<Record<string, string>>;
  readonly writing: Writing;
  readonly doubts: readonly DoubtedLength[];
  /** null with faults. */
  readonly seen: FlexplateSeen | null;
  readonly matches: readonly FlexplateFound[];
  /** The nearest of those that are not the one. */
  readonly nearest: FlexplateFound | null;
  /** As thick as measured, but of the style that was not seen. */
  readonly ofOtherStyle: readonly FlexplateFound[];
  readonly faults: readonly Fault[];
}

/** For somebody on the phone: which flexplate it is, by what can be seen and measured. It ends in a stack. */
export function FlexplatePage(props: FlexplateProps) {
  return (
    <Layout title="Which flexplate is it?" here="studs" {...props.frame}>
      <h1>{headline(props)}</h1>
      <p class="why">
        Look at one stud hole from the engine side, where the nut goes, and put a caliper on it.
      </p>
      {props.seen?.totalMm != null && <Found {...props} />}
      <TwoKinds unit={props.frame.lengthUnit} />
      <FlexplateForm {...props} />
      <Cautions kinds={['torque', 'general']} />
    </Layout>
  );
}

function TwoKinds({ unit }: { unit: LengthUnit }) {
  const about = unit === 'in' ? { one: '1/8 in', two: '1/2 in' } : { one: '3 mm', two: '13 mm' };
  return (
    <section aria-label="The two kinds">
      <div class="two even">
        <div>
          <h2>One piece</h2>
          <p>
            A single thin plate; the nut sits straight on it. You see the edge of the plate and daylight
            beside it. About {about.one} at a stud hole.
          </p>
          <figure class="drawing">
            <FlexplateSection id="one" style="one-piece" />
          </figure>
        </div>
        <div>
          <h2>Two piece</h2>
          <p>
            A plate, and in its middle a thick steel casting the studs pass through; the nut sits on the
            casting, down in the middle. About {about.two} at a stud hole.
          </p>
          <figure class="drawing">
            <FlexplateSection id="two" style="two-piece" />
          </figure>
        </div>
      </div>
      <p class="hint">
        Common practice in the trade, no source. The converter's side wall does not tell which it is. Leave
        shims on the pads while you measure: they are part of the flexplate stack.
      </p>
    </section>
  );
}

function FlexplateForm({ frame, fields, writing, doubts, faults, seen }: FlexplateProps) {
  const unit = frame.lengthUnit;
  const measured = seen?.totalMm != null;
  const boxes = { of: FLEXPLATE_SEEN, fields, faults, writing };
  const thread = CATALOGUE_STACK.nutThreadTyped;
  return (
    <form method="get" action="/stud/flexplate" id="flexplate-form">
      <ErrorSummary faults={faults} />
      <input type="hidden" name="unit" value={unit} />
      <Boxes {...boxes} only={['style']} />
      <div class="fields">
        <Boxes
          {...boxes}
          without={['style']}
          hints={{ withinMm: `Empty: ${printLength(FLEXPLATE_SEEN.withinMm.ifEmpty, unit, 'coarse')}` }}
          after={{ withinMm: <Boxes {...boxes} of={{ thread }} /> }}
        />
      </div>
      <Doubted doubts={doubts} fields={fields} />
      <div class="actions">
        <button class={measured ? 'button' : 'button first'} type="submit" id="tell">
          Which one is it?
        </button>
      </div>
    </form>
  );
}

function headline({ seen, matches }: FlexplateProps): string {
  const { totalMm = null, style = null } = seen ?? {};
  const [only] = matches;
  if (totalMm === null) return 'Which flexplate is it?';
  if (matches.length === 1 && only) return `It is ${only.stack.name}.`;
  if (matches.length > 1) return `${matches.length} flexplate stacks are that thick. Which one is it?`;
  return `No ${style === null ? '' : `${style} `}flexplate stack in the catalog is that thick.`;
}

/** The stacks that are as thick as measured; the next nearest, and why it is not the one; the way on without any. */
function Found(props: FlexplateProps) {
  const { frame, matches, nearest, ofOtherStyle } = props;
  const style = props.seen?.style ?? null;
  const unit = frame.lengthUnit;
  return (
    <section id="flexplate-found" aria-label="Stacks that are as thick">
      {matches.length > 0 && (
        <ol class="rows">
          {matches.map((match) => (
            <MatchRow match={match} unit={unit} />
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
              <MatchRow match={match} unit={unit} />
            ))}
          </ol>
        </div>
      )}
      <div class="actions">
        <a
          class={matches.length === 0 ? 'button first' : 'button'}
          id="as-measured"
          href={`/stud?${asMeasured(props)}`}
        >
          None of these: go on with the measured thickness
        </a>
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

function MatchRow({ match, unit }: { match: FlexplateFound; unit: LengthUnit }) {
  const off = Math.abs(match.offMm);
  return (
    <li>
      <a
        class="row stack-row"
        id={`match-${match.id}`}
        href={`/stud?stack=${encodeURIComponent(match.id)}&unit=${unit}`}
      >
        <b>{match.stack.name}</b>
        <span>{off < 0.005 ? 'as measured' : `${printLength(off, unit, 'coarse')} off`}</span>
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

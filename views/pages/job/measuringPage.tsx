import { askedHeading, askedInWords, withUnit } from '../../../shared/measuring/askedInWords.ts';
import type { Asked, BenchState, StandingReading } from '../../../shared/measuring/benchState.ts';
import type { Order } from '../../../shared/measuring/steps.ts';
import type { Job, Pass, ReadingKind } from '../../../shared/words/job.ts';
import { writePlace } from '../../../shared/words/places.ts';
import { READING_WORD } from '../../../shared/words/readings.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { FacePlan, type FacePlanProps, isSpread, PlanKey } from '../../drawings/facePlan.tsx';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import type { CoverDrawingShape } from '../../parts/coverAnswer.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field, FieldError } from '../../parts/form/fieldBox.tsx';

/** What is asked, and where the links of the page without its script lead from there. */
export interface AskedHere extends Asked {
  readonly back: string | null;
  readonly skip: string | null;
}

export interface MeasuringProps {
  readonly frame: Frame;
  readonly job: Job;
  readonly pass: Pass;
  readonly order: Order;
  readonly shape: CoverDrawingShape;
  readonly stations: BenchState['stations'];
  readonly asked: AskedHere | null;
  readonly standing: readonly StandingReading[];
  readonly expected: BenchState['expected'];
  readonly gauge: string;
  readonly id: string;
  readonly typed: string;
  readonly faults: readonly Fault[];
  readonly doubt: { readonly question: string; readonly meant: string | null } | null;
  readonly fields: Readonly<Record<string, string>>;
  readonly counts: { readonly measured: number; readonly all: number };
}

const LETTER: Readonly<Record<ReadingKind, string>> = { wall: 'w', face: 'f', mark: 'm' };

/** One box, one reading at a time: made for a gauge that types its reading and Enter. */
export function MeasuringPage(props: MeasuringProps) {
  const { frame, job, pass, asked, faults } = props;
  const href = `/jobs/${encodeURIComponent(job.number)}`;
  const plan = planOf(props);
  return (
    <Layout title={`Measure, job ${job.number}`} here="jobs" {...frame} nothingSwaps>
      <link rel="stylesheet" href="/assets/bench.css" />
      <div id="measuring" data-state={JSON.stringify(stateOf(props))}>
        <p class="measuring-of">
          <a href={`${href}#${pass === 'before' ? 'measure' : 'verify'}`}>Job {job.number}</a>,{' '}
          {pass === 'before' ? 'before the cut' : 'after the cut'}
        </p>
        <div class="two">
          <div>
            <ErrorSummary faults={faults} idOf={(path) => (path === 'value' ? 'reading' : undefined)} />
            <h1 id="asked" class={`asked-${asked?.kind ?? 'none'}`}>
              {askedHeading(asked, READING_WORD[pass])}
            </h1>
            <p class="why" id="asked-more">
              {asked
                ? askedInWords(asked, frame.lengthUnit, props.counts)
                : 'Every station has its reading. Go on to the answer, or measure one again.'}
            </p>
            <ReadingForm {...props} />
            <p id="elsewhere" class="note" hidden />
          </div>
          <figure class="drawing" id="plan-figure">
            <FacePlan {...plan} />
            <figcaption>
              Seen from the clutch side, stud 1 scribed on the rim. The target is the next reading.
              {isSpread(plan) && ' Not to scale: rows of stations are drawn apart.'}
              <PlanKey states={['next', 'measured', 'missing']} />
            </figcaption>
          </figure>
        </div>
        <WhoMeasures {...props} />
        <KeptLists {...props} />
        <MarkBetween {...props} />
        <OrderForm {...props} />
      </div>
      <script type="module" src="/assets/modules/views/browser/bench/bench.js" />
    </Layout>
  );
}

function planOf({ frame, asked, standing, stations, shape }: MeasuringProps): FacePlanProps {
  const measuredAt = (index: number) => standing.some((one) => one.at === index && one.kind === 'wall');
  return {
    id: 'measuring-plan',
    shape,
    bossDiameterMm: shape.bossDiameterMm,
    rimDiameterMm: shape.rimDiameterMm,
    padDiameterMm: shape.padDiameterMm,
    stations: stations.map(({ angleDeg, radiusMm }, index) => ({
      angleDeg,
      radiusMm,
      state: measuredAt(index) ? 'measured' : 'missing',
    })),
    marks: standing
      .filter((one) => one.kind === 'mark')
      .map(({ angleDeg, radiusMm }) => ({ angleDeg, radiusMm, depthMm: 0.15 })),
    asked,
    forTouch: true,
    unit: frame.lengthUnit,
  };
}

/** What the script works from; without a script nobody reads it. */
function stateOf({
  frame,
  job,
  pass,
  order,
  shape,
  stations,
  asked,
  standing,
  expected,
  gauge,
}: MeasuringProps): BenchState {
  return {
    job: job.number,
    created: job.createdAt,
    pass,
    order,
    stations,
    trackInnerMm: shape.trackInnerDiameterMm / 2,
    trackOuterMm: shape.trackOuterDiameterMm / 2,
    nominalMm: shape.nominalWallMm,
    expected,
    unit: frame.lengthUnit,
    sign: frame.decimalSign,
    gauge,
    asked,
    standing,
    what: READING_WORD[pass],
    weldedAt: Math.max(job.weldedAt ?? 0, pass === 'after' ? (job.passesAt?.at(-1) ?? 0) : 0),
  };
}

function Hidden({ fields }: { fields: Readonly<Record<string, string | null | undefined>> }) {
  return (
    <>
      {Object.entries(fields).map(
        ([name, value]) => value != null && value !== '' && <input type="hidden" name={name} value={value} />,
      )}
    </>
  );
}

function ReadingForm(props: MeasuringProps) {
  const { frame, job, pass, order, asked, id, typed, faults, doubt, fields } = props;
  const error = errorsOf(faults)('value');
  const unit = frame.lengthUnit;
  return (
    <form method="post" action={`/jobs/${encodeURIComponent(job.number)}/measure`} id="reading-form">
      <Hidden
        fields={{
          pass,
          ...order,
          unit,
          id,
          kind: asked && LETTER[asked.kind],
          place: asked && writePlace(asked),
          replaces: asked?.replaces?.id,
          at: fields.at,
          after: fields.after,
          again: fields.again,
          ma: fields.ma,
          mr: fields.mr,
        }}
      />
      <div class={`field reading${error ? ' field-wrong' : ''}`}>
        <label for="reading" id="reading-label">
          Reading
        </label>
        <span class="box">
          <input
            id="reading"
            name="value"
            type="text"
            inputmode="decimal"
            autocomplete="off"
            value={typed}
            enterkeyhint="next"
            autofocus
            aria-describedby={`asked asked-more reading-unit${error ? ' reading-error' : ''}`}
            aria-invalid={error ? 'true' : undefined}
          />
          <span class="unit" id="reading-unit">
            {unit}
          </span>
        </span>
        <span id="reading-wrong">{error && <FieldError id="reading-error" text={error} />}</span>
      </div>
      <ReadingActions {...props} />
      <p id="said" class="said" role="status" />
      <Doubt doubt={doubt} typed={typed} />
      <p class="hint" id="reading-keys" hidden>
        Keys, each with Enter: s skips, b goes back, r repeats the last.
      </p>
    </form>
  );
}

function Doubt({ doubt, typed }: Pick<MeasuringProps, 'doubt' | 'typed'>) {
  return (
    <div class="doubt" id="doubt" role="alert" hidden={doubt === null}>
      <p id="doubt-question">{doubt?.question}</p>
      <div class="actions">
        <button
          class="button"
          type="submit"
          id="use-meant"
          name="meant"
          value={doubt?.meant ?? ''}
          hidden={doubt?.meant == null}
        >
          Use {doubt?.meant}
        </button>
        <button class="button" type="submit" id="is-right" name="ok" value={typed.trim()}>
          {typed.trim()} is right
        </button>
      </div>
      <p class="hint" id="doubt-keys" hidden>
        Keys, each with Enter: u uses it, y says it is right. Or measure again.
      </p>
    </div>
  );
}

function ReadingActions({ job, pass, order, asked, fields }: MeasuringProps) {
  const link = (more: Readonly<Record<string, string>>) =>
    `/jobs/${encodeURIComponent(job.number)}/measure?${new URLSearchParams({ pass, ...order, ...more })}`;
  return (
    <div class="actions" id="reading-actions">
      <button class={asked === null ? 'button' : 'button first'} type="submit" id="keep-reading">
        Save and next
      </button>
      <a
        class="button first"
        id="to-answer"
        href={`/jobs/${encodeURIComponent(job.number)}#${pass === 'before' ? 'decide' : 'verify'}`}
        hidden={asked !== null}
      >
        See the answer
      </a>
      <a class="button" id="skip" href={link({ after: asked?.skip ?? '' })}>
        Skip
      </a>
      <a class="button" id="back" href={link({ at: asked?.back ?? '' })}>
        Back
      </a>
      <a class="button" id="repeat" href={link({ at: fields.after || (asked?.skip ?? ''), again: '1' })}>
        Repeat the last
      </a>
      <button class="button" type="button" id="begin-mark" aria-pressed="false" hidden>
        Heat mark
      </button>
    </div>
  );
}

/** Stands below the drawing, so that box and drawing are seen together on a phone. */
function WhoMeasures({ job, fields, frame, faults }: MeasuringProps) {
  const signed = job.sections.signature !== null;
  return (
    <div class="fields">
      <Field
        label="Your initials"
        name="who"
        value={fields.who ?? frame.initials}
        size="figure"
        error={errorsOf(faults)('who')}
        input={{ maxLength: 8, form: 'reading-form' }}
      />
      {signed && (
        <Field
          label="Reason for the change after signing"
          name="why"
          value={fields.why}
          error={errorsOf(faults)('why')}
          size="words"
          input={{ form: 'reading-form' }}
        />
      )}
    </div>
  );
}

/** What is on the server, newest first, and what is still on this tablet. */
function KeptLists({ standing, job, pass, order, frame }: MeasuringProps) {
  const link = (one: StandingReading, more: Readonly<Record<string, string>>) =>
    `/jobs/${encodeURIComponent(job.number)}/measure?${new URLSearchParams({
      pass,
      ...order,
      ...(one.at >= 0
        ? { at: `${LETTER[one.kind]}.${one.at}` }
        : { ma: String(one.angleDeg), mr: `${one.radiusMm} mm` }),
      ...more,
    })}`;
  return (
    <div class="two even kept-lists">
      <section aria-labelledby="on-tablet-head">
        <h2 id="on-tablet-head">
          Waiting on this tablet: <span id="waiting-count">0</span>
        </h2>
        <noscript>
          <p class="hint">Scripts are off, so each reading goes to the server at once.</p>
        </noscript>
        <p class="trouble" id="trouble" role="status" />
        <p class="hint" id="nothing-waits">
          Nothing waiting.
        </p>
        <ol class="plain readings" id="on-tablet" />
      </section>
      <section aria-labelledby="on-server-head">
        <h2 id="on-server-head">
          Saved: <span id="server-count">{standing.length}</span>
        </h2>
        <ol class="plain readings" id="on-server">
          {[...standing].reverse().map((one) => (
            <li data-id={one.id}>
              <span>
                {one.at >= 0 && <b>{one.at + 1}</b>} {READING_WORD[pass][one.kind].toLowerCase()} {one.place}:{' '}
                <b>{withUnit(one.shown, frame.lengthUnit)}</b>, {one.who}
                {one.doubtful && <b>, not confirmed</b>}
              </span>
              <span class="reading-acts">
                <a class="button quiet" data-do="correct" href={link(one, {})}>
                  correct<span class="unseen"> {one.shown}</span>
                </a>
                {one.kind === 'wall' && (
                  <a class="button quiet" data-do="again" href={link(one, { again: '1' })}>
                    repeat<span class="unseen"> {one.place}</span>
                  </a>
                )}
              </span>
            </li>
          ))}
        </ol>
      </section>
    </div>
  );
}

function MarkBetween({ job, pass, order, frame, fields, faults }: MeasuringProps) {
  const error = errorsOf(faults);
  return (
    <details class="change" open={error('ma') !== null || error('mr') !== null}>
      <summary>Heat mark between stations</summary>
      <p class="hint" id="touch-hint" hidden>
        Press Heat mark and touch the drawing, or enter where it is.
      </p>
      <form method="get" action={`/jobs/${encodeURIComponent(job.number)}/measure`} id="mark-form">
        <Hidden fields={{ pass, ...order }} />
        <div class="fields">
          <Field
            label="Angle from stud 1"
            name="ma"
            value={fields.ma}
            unit="°"
            error={error('ma')}
            hint="Clockwise"
          />
          <Field label="Radius" name="mr" value={fields.mr} unit={frame.lengthUnit} error={error('mr')} />
        </div>
        <div class="actions">
          <button class="button" type="submit" id="place-mark">
            Measure this heat mark
          </button>
        </div>
      </form>
    </details>
  );
}

function OrderForm({ job, pass, order }: MeasuringProps) {
  return (
    <details class="change">
      <summary>Order of stations, and what to measure</summary>
      <form method="get" action={`/jobs/${encodeURIComponent(job.number)}/measure`} id="order-form">
        <Hidden fields={{ pass }} />
        <div class="fields">
          <Choice
            label="Stations"
            name="round"
            value={order.round}
            options={[
              { value: 'numbered', label: 'as numbered' },
              { value: 'clockwise', label: 'clockwise from stud 1, both rows' },
              { value: 'anticlockwise', label: 'counterclockwise from stud 1, both rows' },
              { value: 'across', label: 'each, then the one across' },
            ]}
          />
          <Choice
            label="Readings"
            name="by"
            value={order.by}
            options={[
              { value: 'kind', label: 'all walls, then all indicator readings, then heat marks' },
              { value: 'station', label: 'all of one station, then the next' },
            ]}
          />
          <Choice
            label="Measure"
            name="asks"
            value={order.asks}
            options={[
              { value: 'w', label: 'walls' },
              { value: 'wf', label: 'walls and indicator readings' },
              { value: 'wfm', label: 'walls, indicator readings and heat marks' },
            ]}
          />
        </div>
        <div class="actions">
          <button class="button" type="submit" id="set-order">
            Measure in this order
          </button>
        </div>
      </form>
    </details>
  );
}

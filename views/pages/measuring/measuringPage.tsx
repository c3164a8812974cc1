import { askedClass, askedHeading, askedInWords } from '../../../shared/measuring/askedInWords.ts';
import type { BenchState } from '../../../shared/measuring/benchState.ts';
import { READING_WORD } from '../../../shared/words/readings.ts';
import { FacePlan, type FacePlanProps, isSpread, PlanKey } from '../../drawings/facePlan.tsx';
import { Layout } from '../../layout.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Field } from '../../parts/form/fieldBox.tsx';
import { MarkBetween, OrderForm } from './measuringForms.tsx';
import { type MeasuringProps, measuringHref } from './measuringProps.ts';
import { ReadingForm } from './readingForm.tsx';
import { KeptLists, LeftLists } from './readingLists.tsx';

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
        <p class="note" id="kept-copy" hidden>
          This page is a copy saved on this tablet on <time id="kept-since" />. Readings are saved here and
          sent when the network returns; then <a href={measuringHref(props)}>reload the page</a>.
        </p>
        <div class="two">
          <div>
            <ErrorSummary faults={faults} idOf={(path) => (path === 'value' ? 'reading' : undefined)} />
            <h1 id="asked" aria-live="polite" class={askedClass(asked)}>
              {askedHeading(asked, READING_WORD[pass], {
                order: props.order,
                skipped: props.skipped.length,
                inDoubt: props.toCheck.length,
              })}
            </h1>
            <p class="why" id="asked-more">
              {asked ? askedInWords(asked, frame.lengthUnit, props.counts) : props.coverage}
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
        <LeftLists {...props} />
        <WhoMeasures {...props} />
        <KeptLists {...props} />
        <p>
          <a class="button" id="to-paste" href={`${href}/measure/paste?${new URLSearchParams({ pass })}`}>
            Paste readings, or from a CSV file
          </a>
        </p>
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
      .filter((one) => one.kind === 'mark' && one.valueMm > 0)
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
  skipped,
  notLaidOut,
  standing,
  expected,
  gauge,
}: MeasuringProps): BenchState {
  return {
    job: job.number,
    created: job.createdAt,
    person: frame.person?.initials ?? '',
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
    skipped: skipped.map((one) => one.step),
    notLaidOut,
    standing,
    what: READING_WORD[pass],
    weldedAt: Math.max(job.weldedAt ?? 0, pass === 'after' ? (job.passesAt?.at(-1) ?? 0) : 0),
  };
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

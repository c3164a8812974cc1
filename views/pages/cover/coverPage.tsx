import { type CoverCheck, type CutPlanAnswer, isMeasured } from '../../../shared/words/cover.ts';
import { cutTold } from '../../../shared/words/findingsShown.ts';
import { FacePlan } from '../../drawings/facePlan.tsx';
import { type Frame, may } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import {
  CoverCautions,
  type CoverDrawingShape,
  CoverFindings,
  CoverPlan,
  CoverVerdict,
} from '../../parts/coverAnswer.tsx';
import { CoverRows, type CoverRowsProps } from '../../parts/coverAnswerRows.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Field } from '../../parts/form/fieldBox.tsx';
import { DefaultSubmit } from '../../parts/form/questionAt.tsx';
import {
  type CoverFormView,
  CoverSetup,
  type DoubtView,
  type GivenLimits,
  MarkTable,
  StationTable,
} from './coverFields.tsx';

export interface CoverPageProps {
  readonly frame: Frame;
  readonly form: CoverFormView;
  readonly given: GivenLimits;
  readonly check: CoverCheck | null;
  readonly plan: CutPlanAnswer | null;
  readonly decides: CoverRowsProps['decides'];
  /** How it bends and heats; null while there is nothing to reckon from. */
  readonly bending: CoverRowsProps['bending'];
  /** A filled-in example to try, when the demo shop is there. */
  readonly exampleHref: string | null;
}

/** A cover, quickly: no job, nothing kept until the person says so. */
export function CoverPage(props: CoverPageProps) {
  const { frame, form } = props;
  return (
    <Layout title="Check a cover" here="covers" {...frame} lengthUnit={form.lengthUnit}>
      <div id="cover-page" class="answer-sheet">
        <CoverHead {...props} />
        <CoverForm {...props} />
        <CoverRowsPart {...props} />
        <KeepAsJob {...props} />
        <CoverCautions />
      </div>
    </Layout>
  );
}

/** What is typed, with the drawing in its midst; every change brings the answer anew. */
function CoverForm(props: CoverPageProps) {
  const { form, given, exampleHref } = props;
  return (
    <form
      id="cover-form"
      method="get"
      action="/cover"
      hx-get="/cover"
      hx-target="#cover-answer"
      hx-select="#cover-answer"
      hx-select-oob="#cover-head,#cover-rows,#unit-form"
      hx-swap="outerHTML"
      hx-trigger="input changed delay:150ms from:#stations, input changed delay:150ms from:#marks, input delay:150ms, change"
      hx-replace-url="true"
      hx-sync="this:replace"
    >
      <div class="sheet-setup">
        <ErrorSummary faults={form.faults} />
        <CoverSetup form={form} given={given} />
        {confirmed(form).map((name) => (
          <input type="hidden" name={name} value={form.fields[name]} />
        ))}
      </div>
      <CoverAnswerPart {...props} />
      <div class="sheet-readings">
        {form.cover && (
          <>
            <StationTable form={form} />
            <MarkTable form={form} />
          </>
        )}
      </div>
      <div class="actions sheet-actions">
        <button class={form.measuredCount > 0 ? 'button' : 'button first'} type="submit" id="work-out">
          {form.cover ? 'Work it out' : 'Show its stations'}
        </button>
        {form.cover && (
          <>
            <button class="button" type="submit" name="add" value="station" id="add-station">
              Add a station
            </button>
            <button class="button" type="submit" name="add" value="mark" id="add-mark">
              Add a heat mark
            </button>
          </>
        )}
        {exampleHref && form.measuredCount === 0 && (
          <a class="button" id="example" href={exampleHref}>
            Show an example
          </a>
        )}
      </div>
    </form>
  );
}

/** Readings the person has said are right although they were doubted. */
function confirmed(form: CoverFormView): string[] {
  return Object.keys(form.fields).filter((name) =>
    /^ok\.[a-zA-Z]{1,24}(\.[a-zA-Z\d]{1,24}){0,2}$/.test(name),
  );
}

/** Stands above everything: the verdict, or what to do first. */
function CoverHead({ form, check }: CoverPageProps) {
  return (
    <section id="cover-head" class="answer-head">
      {check ? (
        <CoverVerdict check={check} unit={form.lengthUnit} id="cover" />
      ) : (
        <div class="verdict-head">
          <div data-tell={form.faults.length > 0 || undefined}>
            <Waiting form={form} />
          </div>
        </div>
      )}
      {form.doubts.length > 0 && <DefaultSubmit form="cover-form" />}
      {(check === null && waitsForDoubt(form) ? form.doubts.slice(1) : form.doubts).map((doubt) => (
        <Doubt doubt={doubt} />
      ))}
    </section>
  );
}

/** Nothing is answered until the first question is. */
function waitsForDoubt({ faults, doubts }: CoverFormView): boolean {
  return faults.length === 0 && doubts.length > 0;
}

function Doubt({ doubt }: { doubt: DoubtView }) {
  return (
    <div class="doubt">
      <p data-tell>
        {doubt.label !== '' && <b>{doubt.label}:</b>} {doubt.question}
      </p>
      <div class="actions">
        {doubt.meant !== null && (
          <DoubtButton
            label={`Use ${doubt.meant}`}
            name="fix"
            value={`${doubt.name}=${doubt.meant}`}
            id={`use-${doubt.name}`}
            then={doubt.name}
          />
        )}
        {doubt.asTyped !== null && (
          <DoubtButton
            label={`${doubt.asTyped} is right`}
            name={`ok.${doubt.name}`}
            value={doubt.asTyped}
            id={`right-${doubt.name}`}
            then={doubt.name}
          />
        )}
      </div>
    </div>
  );
}

function DoubtButton(props: { label: string; name: string; value: string; id: string; then: string }) {
  const { label, name, value, id, then } = props;
  return (
    <button
      class="button"
      type="submit"
      form="cover-form"
      id={id}
      name={name}
      value={value}
      data-then={then}
      hx-get="/cover"
      hx-include="#cover-form"
      hx-target="#cover-page"
      hx-select="#cover-page"
      hx-swap="outerHTML"
      hx-push-url="true"
      hx-select-oob="#unit-form"
    >
      {label}
    </button>
  );
}

function Waiting({ form }: { form: CoverFormView }) {
  if (form.faults.length > 0) {
    return (
      <>
        <h1>Check what was entered.</h1>
        <p class="why">{form.faults[0]?.message}</p>
      </>
    );
  }
  if (waitsForDoubt(form)) {
    return (
      <>
        <h1>Is that right?</h1>
        <Doubt doubt={form.doubts[0]!} />
      </>
    );
  }
  if (form.cover === null) {
    return (
      <>
        <h1>Which cover is it?</h1>
        <p class="why">Choose its cover type, or enter its dimensions, to see where to measure.</p>
      </>
    );
  }
  return (
    <>
      <h1>Measure it.</h1>
      <p class="why">
        Enter the wall at each station, and indicator readings if you take them. The answer appears as you
        type; nothing is saved until you save it as a job.
      </p>
    </>
  );
}

function CoverAnswerPart({ form, check }: CoverPageProps) {
  const shape = drawingShape(form);
  return (
    <section id="cover-answer" aria-label="The answer">
      {check && isMeasured(check) && shape ? (
        <CoverPlan shape={shape} check={check} unit={form.lengthUnit} id="cover" />
      ) : (
        shape && (
          <figure class="drawing">
            <FacePlan
              id="cover-plan"
              shape={shape}
              bossDiameterMm={shape.bossDiameterMm}
              rimDiameterMm={shape.rimDiameterMm}
              padDiameterMm={shape.padDiameterMm}
              stations={form.rows.map(({ angleDeg, radiusMm }, index) => ({
                angleDeg,
                radiusMm,
                state: index === 0 ? 'next' : 'missing',
              }))}
              marks={[]}
              unit={form.lengthUnit}
            />
            <figcaption>Stations to measure, from the clutch side. Stud 1 is scribed on the rim.</figcaption>
          </figure>
        )
      )}
    </section>
  );
}

function CoverRowsPart({ form, check, plan, decides, bending }: CoverPageProps) {
  const shape = drawingShape(form);
  return (
    <div id="cover-rows">
      {check && isMeasured(check) && shape && (
        <CoverRows
          id="cover"
          level={2}
          unit={form.lengthUnit}
          cut={cutTold(check.verdict)}
          shape={shape}
          check={check}
          plan={plan}
          decides={decides}
          bending={bending}
          beside={{ families: form.families, chosen: form.fields.beside ?? '', form: 'cover-form' }}
          drawings={`/cover/bending?${new URLSearchParams(form.fields)}`}
          tryCut={{ action: '/cover/what-if', include: '#cover-form', check }}
        />
      )}
      {check && !isMeasured(check) && <CoverFindings check={check} unit={form.lengthUnit} id="cover" />}
    </div>
  );
}

function drawingShape({ cover, family }: CoverFormView): CoverDrawingShape | null {
  return (
    cover && {
      ...cover,
      densityKgPerM3: null,
      bossDiameterMm: family?.bossDiameterMm ?? null,
      rimDiameterMm: family?.rimDiameterMm ?? null,
      padDiameterMm: family?.padDiameterMm ?? null,
    }
  );
}

/** Sends what stands in the form above: nothing is typed twice. */
function KeepAsJob({ form, frame }: CoverPageProps) {
  if (form.cover === null || form.familyId === 'own' || !may(frame, 'recorder')) return null;
  const error = errorsOf(form.faults);
  return (
    <section class="keep sheet-keep">
      <h2>Save as a job</h2>
      <p>Readings and heat marks are saved with the job, under your initials.</p>
      <div class="fields keep-fields">
        <Field
          label="Job number"
          name="jobNumber"
          value={form.fields.jobNumber}
          error={error('jobNumber')}
          hint="Blank: next free"
          input={{ form: 'cover-form' }}
          optional
        />
        <Field
          label="Customer reference"
          name="customer"
          value={form.fields.customer}
          error={error('customer')}
          input={{ form: 'cover-form' }}
          optional
        />
        <Field
          label="Your initials"
          name="initials"
          value={form.fields.initials ?? frame.initials}
          error={error('initials')}
          size="figure"
          input={{ form: 'cover-form', maxLength: 8 }}
        />
        <button
          class="button first"
          type="submit"
          form="cover-form"
          formmethod="post"
          formaction="/cover/keep"
          id="keep"
        >
          Save as a job
        </button>
      </div>
    </section>
  );
}

import type { Bending } from '../../../shared/words/bending/bending.ts';
import type { CoverCheck, CutPlanAnswer } from '../../../shared/words/cover.ts';
import { cutTold } from '../../../shared/words/findingsShown.ts';
import { FacePlan } from '../../drawings/facePlan.tsx';
import { type Frame, may } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { BendingPart } from '../../parts/bendingPart.tsx';
import {
  CoverAnswer,
  CoverCautions,
  type CoverDrawingShape,
  CoverTrack,
  CoverVerdict,
} from '../../parts/coverAnswer.tsx';
import { CutPlanPart } from '../../parts/cutPlanPart.tsx';
import { Actions } from '../../parts/form/actions.tsx';
import { DefaultSubmit } from '../../parts/form/doubted.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Field } from '../../parts/form/fieldBox.tsx';
import { WhatIf } from '../../parts/whatIfPart.tsx';
import {
  type CoverFormView,
  type GivenLimits,
  LimitsAndCut,
  MarkTable,
  StationTable,
  WhichCover,
} from './coverFields.tsx';

export interface CoverPageProps {
  readonly frame: Frame;
  readonly form: CoverFormView;
  readonly given: GivenLimits;
  readonly check: CoverCheck | null;
  readonly plan: CutPlanAnswer | null;
  /** How it bends and heats; null while there is nothing to reckon from. */
  readonly bending: {
    readonly bending: Bending | null;
    readonly why: string | null;
    readonly besideWhy: string | null;
  } | null;
  /** A filled-in example to try, when the demo shop is there. */
  readonly exampleHref: string | null;
}

/** A cover, quickly: no job, nothing kept until the person says so. */
export function CoverPage(props: CoverPageProps) {
  const { frame, form } = props;
  return (
    <Layout title="Check a cover" here="covers" {...frame} lengthUnit={form.lengthUnit}>
      <div id="cover-page">
        <CoverHead {...props} />
        <div class="two">
          <CoverForm {...props} />
          <CoverAnswerPart {...props} />
        </div>
        <CoverTrackPart {...props} />
        <KeepAsJob {...props} />
        <CoverCautions />
      </div>
    </Layout>
  );
}

/** What is typed; every change brings the answer anew. */
function CoverForm({ form, given, exampleHref }: CoverPageProps) {
  return (
    <form
      id="cover-form"
      method="get"
      action="/cover"
      hx-get="/cover"
      hx-target="#cover-answer"
      hx-select="#cover-answer"
      hx-select-oob="#cover-head,#cover-track,#unit-form"
      hx-swap="outerHTML"
      hx-trigger="input changed delay:150ms from:#stations, input changed delay:150ms from:#marks, input delay:150ms, change"
      hx-replace-url="true"
      hx-sync="this:replace"
    >
      <ErrorSummary faults={form.faults} />
      {exampleHref && form.measuredCount === 0 && (
        <p>
          <a class="button" id="example" href={exampleHref}>
            Show an example
          </a>
        </p>
      )}
      <WhichCover form={form} />
      {form.cover && (
        <>
          <StationTable form={form} />
          <MarkTable form={form} />
          <div class="actions">
            <button class="button" type="submit" name="add" value="station" id="add-station">
              Add a station
            </button>
            <button class="button" type="submit" name="add" value="mark" id="add-mark">
              Add a heat mark between stations
            </button>
          </div>
          <LimitsAndCut form={form} given={given} />
        </>
      )}
      {confirmed(form).map((name) => (
        <input type="hidden" name={name} value={form.fields[name]} />
      ))}
      <Actions
        actions={[
          {
            label: form.cover ? 'Work it out' : 'Show its stations',
            id: 'work-out',
            type: 'submit',
          },
        ]}
      />
    </form>
  );
}

/** Readings the person has said are right although they were doubted. */
function confirmed(form: CoverFormView): string[] {
  return Object.keys(form.fields).filter((name) => /^ok\.[a-zA-Z]{1,24}(\.\d{1,3})?$/.test(name));
}

/** Stands above everything: the verdict, or what to do first. */
function CoverHead({ form, check }: CoverPageProps) {
  return (
    <section id="cover-head" class="answer-head" aria-live="polite">
      {check ? <CoverVerdict check={check} unit={form.lengthUnit} id="cover" /> : <Waiting form={form} />}
      {form.doubts.length > 0 && <DefaultSubmit form="cover-form" />}
      {form.doubts.map((doubt) => (
        <div class="doubt" role="alert">
          <p>
            <b>{doubt.label}:</b> {doubt.question}
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
            <DoubtButton
              label={`${doubt.asTyped} is right`}
              name={`ok.${doubt.name}`}
              value={doubt.asTyped}
              id={`right-${doubt.name}`}
              then={doubt.name}
            />
          </div>
        </div>
      ))}
    </section>
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
  if (form.doubts.length > 0) {
    return (
      <>
        <h1>Is that right?</h1>
        <p class="why">It is far from what is expected. Choose one below to get the answer.</p>
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
      {check && shape ? (
        <CoverAnswer shape={shape} check={check} unit={form.lengthUnit} id="cover" />
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

function CoverTrackPart({ form, check, plan, bending }: CoverPageProps) {
  const shape = drawingShape(form);
  return (
    <section id="cover-track" aria-label="The friction surface">
      {check && shape && (
        <>
          {cutTold(check.verdict) && (
            <WhatIf
              action="/cover/what-if"
              include="#cover-form"
              check={check}
              bending={bending?.bending ?? null}
              unit={form.lengthUnit}
              level={2}
            />
          )}
          <CoverTrack shape={shape} check={check} unit={form.lengthUnit} id="cover" />
          {cutTold(check.verdict) && <CutPlanPart plan={plan} unit={form.lengthUnit} id="cover" level={2} />}
          {bending && (
            <BendingPart
              {...bending}
              unit={form.lengthUnit}
              id="cover"
              level={2}
              drawings={`/cover/bending?${new URLSearchParams(form.fields)}`}
              beside={{ families: form.families, chosen: form.fields.beside ?? '', form: 'cover-form' }}
            />
          )}
        </>
      )}
    </section>
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
    <section class="keep">
      <h2>Save as a job</h2>
      <p>The readings and heat marks above are saved with the job, under your initials.</p>
      <div class="fields">
        <Field
          label="Job number"
          name="jobNumber"
          value={form.fields.jobNumber}
          error={error('jobNumber')}
          hint="Blank: the next free number"
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
      </div>
      <div class="actions">
        <button
          class="button"
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

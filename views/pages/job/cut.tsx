import type { Writing } from '../../../shared/quantity/fieldText.ts';
import type { ComparedWall, NextPass, PassView } from '../../../shared/words/afterCut.ts';
import { type CutPlanAnswer, isMeasured } from '../../../shared/words/cover.ts';
import { printCut } from '../../../shared/words/cut.ts';
import { CUT } from '../../../shared/words/fields/job.ts';
import { RING_WELDED } from '../../../shared/words/fields/weld.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import type { Job } from '../../../shared/words/job.ts';
import { countingPasses } from '../../../shared/words/passes.ts';
import {
  briefLength,
  type LengthUnit,
  lengthFigure,
  MM_PER_STEP,
  printLength,
  UNIT_WORD,
  wholeSteps,
} from '../../../shared/words/print.ts';
import { WallZones } from '../../drawings/wallZones.tsx';
import { Caution } from '../../parts/caution.tsx';
import { CutPlanPart } from '../../parts/cutPlanPart.tsx';
import { FindingList } from '../../parts/findingList.tsx';
import { BodyFields, Boxes } from '../../parts/form/bodyFields.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field } from '../../parts/form/fieldBox.tsx';
import { KeyFigures } from '../../parts/keyFigures.tsx';
import { CutDrawnAsTyped } from './drawnParts.tsx';
import { AsKept, JobForm, type Refused, Who } from './section.tsx';
import { LAYER_WORD } from './stepWords.ts';

/** What the last pass showed, and the cut in all as it would be typed; '' where none follows. */
export type NextPassView = NextPass & { readonly planTyped: string };

export interface CutProps {
  readonly job: Job;
  readonly passes: readonly PassView[];
  readonly nextPass: NextPassView | null;
  /** Of the decided cut; null while the lathe is not described. */
  readonly plan: CutPlanAnswer | null;
  readonly unit: LengthUnit;
  readonly writing: Writing;
  readonly initials: string;
  readonly refused: Refused | null;
  /** Of the form that records a weld. */
  readonly refusedWeld: Refused | null;
  /** Of the form that puts the depth of a pass right. */
  readonly refusedPass: Refused | null;
  readonly readOnly: boolean;
}

export function cutSummary(job: Job, unit: LengthUnit): string {
  const cuts = countingPasses(job);
  if (cuts.length === 0) {
    const planned = job.sections.decision?.body;
    return planned?.check.cut && planned.decision !== 'replace'
      ? `to cut: ${printCut(planned.check.cut.dialledMm, unit)} from the highest point`
      : 'none';
  }
  const total = cuts.reduce((sum, cut) => sum + cut.depthMm, 0);
  return `${printLength(total, unit)} cut, ${cuts.length} pass${cuts.length === 1 ? '' : 'es'}`;
}

/** The passes taken, one by one. */
export function Cut(props: CutProps) {
  const { job, passes, nextPass, plan, unit, readOnly } = props;
  const kept = job.sections.cuts;
  const decision = job.sections.decision?.body;
  const ringDue = job.outcome === 'face-and-ring' && (job.weldedAt ?? 0) === 0;
  return (
    <>
      {decision && isMeasured(decision.check) && decision.decision !== 'replace' && (
        <p>
          Depth of cut decided: {printCut(decision.check.cut.dialledMm, unit)} from the highest point. That
          leaves {printLength(decision.check.leastWall.afterMm, unit)} at the thinnest station.
        </p>
      )}
      <Caution kind="lathe" />
      {decision?.decision === 'face-and-ring' && (
        <>
          <Caution kind="weld" />
          <p>
            Weld ring, pads and studs first. Welding pulls the face, so earlier readings no longer count:
            measure again before facing.
          </p>
        </>
      )}
      {ringDue && !readOnly && <WeldedForm {...props} />}
      {job.stage === 'to-cut' && !ringDue && passes.length === 0 && (
        <CutPlanPart plan={plan} lathe={job.sections.plan?.body.lathe} unit={unit} id="job" level={3} />
      )}
      {kept && passes.length > 0 && (
        <>
          <Passes passes={passes} unit={unit} />
          <Who kept={kept} />
          {!readOnly && <PutRight {...props} />}
        </>
      )}
      {nextPass && <AfterPass {...props} next={nextPass} />}
      {!readOnly && !ringDue && <PassForm {...props} />}
    </>
  );
}

function PassForm({ job, nextPass, unit, writing, initials, refused }: CutProps) {
  return (
    <JobForm
      id="cuts-form"
      action={`/jobs/${encodeURIComponent(job.number)}/cuts`}
      revision={job.revision}
      initials={initials}
      signed={job.stage === 'signed'}
      refused={refused}
      submit="Save this pass"
      beside={<CutDrawnAsTyped job={job} drawn="pass" />}
      unit={unit}
      first={job.stage === 'to-cut' || nextPass?.state === 'cut-more'}
    >
      <BodyFields of={CUT} fields={refused?.fields ?? {}} faults={refused?.faults ?? []} writing={writing} />
    </JobForm>
  );
}

function WeldedForm({ job, writing, initials, ...props }: CutProps) {
  // A pass sent while the ring is due is refused here: no other form stands there.
  const refused = props.refusedWeld ?? props.refused;
  return (
    <JobForm
      id="welded-form"
      action={`/jobs/${encodeURIComponent(job.number)}/welded`}
      revision={job.revision}
      initials={initials}
      signed={job.stage === 'signed'}
      refused={refused}
      submit="Ring welded on: re-measure"
    >
      <div class="fields">
        <Boxes
          of={RING_WELDED}
          fields={refused?.fields ?? {}}
          faults={refused?.faults ?? []}
          writing={writing}
          hints={{ on: 'Blank: today' }}
        />
      </div>
    </JobForm>
  );
}

const { look, truedAgain } = CUT;

function Passes({ passes, unit }: { passes: readonly PassView[]; unit: LengthUnit }) {
  const figure = (mm: number | null) => (mm === null ? '—' : lengthFigure(mm, unit));
  return (
    <section class="table-box" tabindex={0} aria-label="The passes made">
      <table class="figures" id="passes">
        <caption>Passes made, lengths in {UNIT_WORD[unit]}; walls and marks as read after each.</caption>
        <thead>
          <tr>
            <th scope="col">pass</th>
            <th scope="col">depth of cut</th>
            <th scope="col">total</th>
            <th scope="col">thinnest wall</th>
            <th scope="col">heat mark remaining</th>
          </tr>
        </thead>
        <tbody>
          {passes.map((pass, i) => (
            <tr>
              <th scope="row" class="words">
                {i + 1}{' '}
                <small>
                  {[
                    pass.beforeRing ? 'before the ring' : '',
                    pass.look === null ? '' : LAYER_WORD[pass.look],
                    pass.note,
                  ]
                    .filter((text) => text !== '')
                    .join('; ')}
                </small>
              </th>
              <td>{figure(pass.depthMm)}</td>
              <td>{figure(pass.totalMm)}</td>
              <td>{figure(pass.thinnestMm)}</td>
              <td>{figure(pass.darkMm)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** A depth that was mistyped: a new revision with the reason, the one it was stays in the history. */
function PutRight({ job, passes, unit, initials, refusedPass }: CutProps) {
  const error = errorsOf(refusedPass?.faults ?? []);
  return (
    <details class="change no-print" id="put-right" open={refusedPass !== null}>
      <summary>Correct the depth of a pass</summary>
      <p>
        For a depth entered wrong. The history keeps the old figure and the readings stay. Re-measure a wall
        before the job is signed.
      </p>
      <JobForm
        id="pass-form"
        action={`/jobs/${encodeURIComponent(job.number)}/pass`}
        revision={job.revision}
        initials={initials}
        signed={job.stage === 'signed'}
        why="Reason for the correction"
        refused={refusedPass}
        submit="Save correction"
        unit={unit}
        first={false}
      >
        <div class="fields">
          <Choice
            label="Pass"
            name="pass"
            value={refusedPass?.fields.pass ?? String(passes.length)}
            options={passes.map(({ depthMm }, i) => ({
              value: String(i + 1),
              label: `pass ${i + 1}, entered as ${printLength(depthMm, unit)}`,
            }))}
            error={error('pass')}
          />
          <Field
            label="Depth actually cut"
            name="depth"
            value={refusedPass?.fields.depth}
            unit={unit}
            error={error('depth')}
            hint="That pass only, not the total"
          />
        </div>
      </JobForm>
    </details>
  );
}

interface AfterPassProps {
  readonly next: NextPassView;
  readonly job: Job;
  readonly unit: LengthUnit;
  readonly writing: Writing;
  readonly initials: string;
  readonly readOnly: boolean;
}

/** Cut, look, plan again: what the last pass showed, and what may follow. */
function AfterPass(props: AfterPassProps) {
  const { next, unit, readOnly } = props;
  return (
    <section id="after-pass" class="after-pass" aria-labelledby="after-pass-head">
      <div class="verdict-head">
        <div>
          <h3 id="after-pass-head">{next.headline}</h3>
          <p>{next.because}</p>
        </div>
        {next.check.minimumWall && (
          <figure class="drawing zones-figure">
            <WallZones id="pass-zones" check={next.check} unit={unit} />
          </figure>
        )}
      </div>
      <FiguresNow next={next} unit={unit} />
      {!readOnly && <WhatFollows {...props} />}
    </section>
  );
}

function FiguresNow({ next, unit }: { next: NextPassView; unit: LengthUnit }) {
  return (
    <KeyFigures
      figures={[
        {
          label: next.measured ? 'thinnest now, measured' : 'thinnest now, calculated',
          value: lengthFigure(next.wallNowMm, unit),
          unit,
        },
        ...(next.roomMm === null
          ? []
          : [
              {
                label: 'left above the minimum',
                value: lengthFigure(roomDown(next.roomMm, unit), unit),
                unit,
              },
            ]),
        ...(next.nextMm === null
          ? []
          : [{ label: 'next pass', value: lengthFigure(next.nextMm, unit), unit }]),
      ]}
    />
  );
}

/** What may be kept now: readings, what was seen, a deeper plan. */
function WhatFollows({ next, job, unit, writing, initials }: AfterPassProps) {
  const href = `/jobs/${encodeURIComponent(job.number)}`;
  const last = job.sections.cuts?.body.cuts.at(-1);
  const looked = (last?.look ?? null) !== null;
  const trued = (last?.truedAgain ?? null) !== null;
  const form = {
    revision: job.revision,
    initials,
    signed: job.stage === 'signed',
    refused: null,
    first: false,
  };
  return (
    <>
      {next.state !== 'gone' && (
        <p>
          <a class="button" id="bench-pass" href={`${href}/measure?pass=after`}>
            Measure walls and remaining heat marks
          </a>
        </p>
      )}
      {!(looked && trued) && (
        <JobForm {...form} id="seen-form" action={`${href}/cuts`} submit="Save">
          <input type="hidden" name="seen" value="1" />
          <div class="fields">
            <Boxes
              of={{ ...(!looked && { look }), ...(!trued && { truedAgain }) }}
              fields={{}}
              faults={[]}
              writing={writing}
            />
          </div>
        </JobForm>
      )}
      {next.state === 'plan-again' && next.planTyped !== '' && (
        <JobForm
          {...form}
          id="replan-form"
          action={`${href}/plan`}
          submit={`Plan a total cut of ${next.planTyped} ${unit}`}
          unit={unit}
        >
          <input type="hidden" name="cut" value={next.planTyped} />
        </JobForm>
      )}
    </>
  );
}

/** Rounded down: a cut of what is printed still leaves the minimum. */
function roomDown(mm: number, unit: LengthUnit): number {
  return Math.max(0, wholeSteps(mm, unit, 'down')) * MM_PER_STEP[unit];
}

/** Decided, cut and measured, station by station. */
export function Verified(props: {
  findings: readonly Finding[];
  asKept: boolean;
  compared: readonly ComparedWall[];
  unit: LengthUnit;
}) {
  const { findings, asKept, compared, unit } = props;
  if (findings.length === 0) return null;
  const figure = (mm: number | null) => (mm === null ? '—' : lengthFigure(mm, unit));
  return (
    <>
      {asKept && <AsKept />}
      <FindingList findings={findings} unit={unit} id="verified" />
      <details class="twin">
        <summary>Before and after the cut, by station</summary>
        <section class="table-box" tabindex={0} aria-label="Before the cut and after it">
          <table class="figures" id="compared">
            <caption>Walls in {UNIT_WORD[unit]}</caption>
            <thead>
              <tr>
                <th scope="col">station</th>
                <th scope="col">before</th>
                <th scope="col">expected, as decided</th>
                <th scope="col">expected, as cut</th>
                <th scope="col">measured</th>
                <th scope="col">measured − as cut</th>
              </tr>
            </thead>
            <tbody>
              {compared.map((one) => (
                <tr>
                  <th scope="row">
                    {one.place} <small>r {briefLength(one.radiusMm, unit)}</small>
                  </th>
                  <td>{figure(one.beforeMm)}</td>
                  <td>{figure(one.decidedMm)}</td>
                  <td>{figure(one.cutMm)}</td>
                  <td>{figure(one.measuredMm)}</td>
                  <td>{one.cutMm === null ? '—' : figure(one.measuredMm - one.cutMm)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      </details>
    </>
  );
}

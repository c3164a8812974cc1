import type { Finding } from '../../../shared/words/finding.ts';
import type { Job } from '../../../shared/words/job.ts';
import { type LengthUnit, printLength } from '../../../shared/words/print.ts';
import { Caution } from '../../parts/caution.tsx';
import { errorsOf } from '../../parts/errorsOf.ts';
import { Field } from '../../parts/field.tsx';
import { FindingList } from '../../parts/findingList.tsx';
import { JobForm, type Refused, Who } from './section.tsx';

export interface CutProps {
  readonly job: Job;
  readonly unit: LengthUnit;
  readonly initials: string;
  readonly refused: Refused | null;
  readonly readOnly: boolean;
}

export function cutSummary(job: Job, unit: LengthUnit): string {
  const cuts = job.sections.cuts?.body.cuts ?? [];
  if (cuts.length === 0) {
    const planned = job.sections.decision?.body;
    return planned && planned.decision !== 'replace'
      ? `to cut: ${printLength(planned.check.cut.dialledMm, unit)} from the highest point`
      : 'none';
  }
  const total = cuts.reduce((sum, cut) => sum + cut.depthMm, 0);
  return `${printLength(total, unit)} in ${cuts.length} pass${cuts.length === 1 ? '' : 'es'}`;
}

/** The passes taken, one by one. */
export function Cut({ job, unit, initials, refused, readOnly }: CutProps) {
  const kept = job.sections.cuts;
  const error = errorsOf(refused?.faults ?? []);
  const decision = job.sections.decision?.body;
  const ringDue = job.outcome === 'face-and-ring' && (job.weldedAt ?? 0) === 0;
  return (
    <>
      {decision && decision.decision !== 'replace' && (
        <p>
          Decided: {printLength(decision.check.cut.dialledMm, unit)} from the highest point, leaving{' '}
          {printLength(decision.check.leastWall.afterMm, unit)} where it is thinnest.
        </p>
      )}
      <Caution kind="lathe" />
      {decision?.decision === 'face-and-ring' && (
        <>
          <Caution kind="weld" />
          <p>
            Weld ring, pads and studs first. Welding pulls the face: every earlier reading is then void, so
            measure again before facing.
          </p>
        </>
      )}
      {ringDue && !readOnly && (
        <JobForm
          id="welded-form"
          action={`/jobs/${encodeURIComponent(job.number)}/welded`}
          revision={job.revision}
          initials={initials}
          signed={job.stage === 'signed'}
          refused={refused}
          submit="The ring is welded on: measure again"
        >
          <div class="fields">
            <Field
              label="Welded on"
              name="weldedOn"
              type="date"
              value={refused?.fields.weldedOn}
              size="figure"
            />
            <Field label="Note on the weld" name="weldNote" value={refused?.fields.weldNote} optional />
          </div>
        </JobForm>
      )}
      {kept && (
        <>
          <ol class="plain">
            {kept.body.cuts.map((cut) => (
              <li>
                {printLength(cut.depthMm, unit)}
                {cut.note !== '' && `: ${cut.note}`}
              </li>
            ))}
          </ol>
          <Who kept={kept} />
        </>
      )}
      {!readOnly && !ringDue && (
        <JobForm
          id="cuts-form"
          action={`/jobs/${encodeURIComponent(job.number)}/cuts`}
          revision={job.revision}
          initials={initials}
          signed={job.stage === 'signed'}
          refused={refused}
          submit="Keep this pass"
          first={job.stage === 'to-cut'}
        >
          <div class="fields">
            <Field
              label="Cut made"
              name="depth"
              value={refused?.fields.depth}
              unit={unit}
              error={error('depth')}
              hint="As dialled, this pass alone"
            />
            <Field label="Note" name="note" value={refused?.fields.note} error={error('note')} optional />
          </div>
        </JobForm>
      )}
    </>
  );
}

/** Planned against measured, after the cut. */
export function Verified({ findings, unit }: { findings: readonly Finding[]; unit: LengthUnit }) {
  if (findings.length === 0) return null;
  return <FindingList findings={findings} unit={unit} id="verified" />;
}

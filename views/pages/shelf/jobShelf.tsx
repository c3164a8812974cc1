import type { Job } from '../../../shared/words/job.ts';
import type { ShelfChange } from '../../../shared/words/shelf.ts';
import { type Frame, may } from '../../frame.ts';
import { Field } from '../../parts/form/fieldBox.tsx';
import { Hidden } from '../../parts/form/hidden.tsx';
import { InForm } from '../../parts/form/inForm.ts';
import { WhoField } from '../../parts/form/whoField.tsx';

export interface JobShelfProps {
  readonly frame: Frame;
  readonly job: Job;
  /** The newest change of this cover's stay on the shelf; null where it never lay there. */
  readonly stands: ShelfChange | null;
  /** Covers that lie on the shelf for this job. */
  readonly kept: readonly ShelfChange[];
}

/** Where this cover waits, and which covers wait for this job. */
export function JobShelf({ job, stands, kept }: Omit<JobShelfProps, 'frame'>) {
  const here = stands !== null && stands.what !== 'off' ? stands : null;
  if (here === null && kept.length === 0) return null;
  return (
    <p class="note" id="job-shelf">
      {here && (
        <>
          On the shelf at <a href={shelfAddress(job.number)}>{here.lies}</a>
          {here.forJob !== null && `, reserved for job ${here.forJob}`}.{' '}
        </>
      )}
      {kept.map((one) => (
        <>
          Reserved for this job: <a href={shelfAddress(one.jobNumber)}>the cover of job {one.jobNumber}</a>,{' '}
          {one.facts.family.name}, at {one.lies}.{' '}
        </>
      ))}
    </p>
  );
}

/** A measured cover is put on the shelf in one line. */
export function PutOnShelf({ frame, job, stands }: JobShelfProps) {
  const measured = job.steps.measure === 'done' || job.steps.measure === 'partly';
  const lies = stands !== null && stands.what !== 'off';
  if (!measured || lies || job.stage === 'closed' || job.outcome === 'replace' || !may(frame, 'recorder'))
    return null;
  return (
    <details class="change no-print" id="to-shelf">
      <summary>Put this cover on the shelf</summary>
      <InForm.Provider value="put">
        <form method="post" action={shelfAddress(job.number)} id="put-form" class="job-form">
          <Hidden fields={{ what: 'put', from: String(stands?.place ?? 0) }} />
          <div class="fields">
            <Field label="Where it lies" name="lies" hint="As “rack B, third board”" />
            <WhoField known={frame.initials} typed={undefined} error={null} />
          </div>
          <div class="actions">
            <button class="button" type="submit" id="put-send">
              Put it on the shelf
            </button>
          </div>
        </form>
      </InForm.Provider>
    </details>
  );
}

export function shelfAddress(number: string): string {
  return `/shelf/${encodeURIComponent(number)}`;
}

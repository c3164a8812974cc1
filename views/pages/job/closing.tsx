import type { Job } from '../../../shared/words/job.ts';
import { When } from '../../parts/when.tsx';
import { JobForm, type Refused } from './section.tsx';

/** Over a job that is closed: who closed it, when and why. */
export function ClosedNote({ job }: { job: Job }) {
  const { closed } = job.sections;
  if (closed === null) return null;
  return (
    <p class="note" id="closed">
      Closed by {closed.who}, <When at={closed.at} />: “{closed.why}” Nothing can be measured, decided or
      signed until it is opened again.
    </p>
  );
}

/** A job received by mistake is closed with a reason, and opened again with one. It is never deleted. */
export function CloseJob(props: { job: Job; initials: string; refused: Refused | null }) {
  const { job, initials, refused } = props;
  if (job.stage === 'signed') return null;
  const closed = job.stage === 'closed';
  return (
    <details class="change no-print" id="close" open={refused !== null}>
      <summary>{closed ? 'Open this job again' : 'Received by mistake? Close this job'}</summary>
      {!closed && (
        <p>
          A closed job leaves the lists and keeps everything recorded. It can be found by number and opened
          again.
        </p>
      )}
      <JobForm
        id="closed-form"
        action={`/jobs/${encodeURIComponent(job.number)}/closed`}
        revision={job.revision}
        initials={initials}
        signed={false}
        why={closed ? 'Why it is opened again' : 'Why it is closed'}
        refused={refused}
        submit={closed ? 'Open it again' : 'Close the job'}
        first={false}
      >
        <input type="hidden" name="closed" value={closed ? '0' : '1'} />
      </JobForm>
    </details>
  );
}

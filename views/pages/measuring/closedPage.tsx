import type { Job } from '../../../shared/words/job.ts';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { ClosedNote } from '../job/closing.tsx';

/** Nothing is measured on a closed job: it says so before anything is typed, and leads to where it is opened again. */
export function ClosedPage({ frame, job }: { frame: Frame; job: Job }) {
  return (
    <Layout title={`Measure, job ${job.number}`} here="jobs" {...frame}>
      <h1>Job {job.number} is closed</h1>
      <ClosedNote job={job} />
      <div class="actions">
        <a class="button first" href={`/jobs/${encodeURIComponent(job.number)}#close`} id="to-reopen">
          Open this job again
        </a>
      </div>
    </Layout>
  );
}

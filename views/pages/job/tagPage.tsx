import type { Job } from '../../../shared/words/job.ts';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { Qr, type QrModules } from '../../parts/qr.tsx';
import { day } from '../../parts/when.tsx';

/** A small tag to tie to the cover: its number, what it is, and a code that leads back to the job. */
export function TagPage({ frame, job, qr }: { frame: Frame; job: Job; qr: QrModules }) {
  const received = job.sections.received?.body;
  return (
    <Layout title={`Job ${job.number}, tag`} here="jobs" {...frame}>
      <div class="actions no-print">
        <button class="button first" type="button" id="print" data-print>
          Print
        </button>
        <a class="button" href={`/jobs/${encodeURIComponent(job.number)}`}>
          Back to the job
        </a>
      </div>
      <h1 class="no-print">Tag of job {job.number}</h1>
      <article class="tag">
        <Qr modules={qr} label={job.number} />
        <div>
          <p class="tag-number">{job.number}</p>
          <p>{received?.family.name}</p>
          <p>{received && day(received.receivedOn)}</p>
          {received && received.customerReference !== '' && <p>{received.customerReference}</p>}
        </div>
      </article>
      {qr === null && (
        <p class="hint no-print">
          Set PUBLIC_URL to the address tablets reach this program at, and the tag gets a QR code that opens
          the job.
        </p>
      )}
    </Layout>
  );
}

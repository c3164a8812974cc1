import type { Job } from '../../../../shared/words/job.ts';
import { Qr, type QrModules } from '../../../parts/qr.tsx';
import { day } from '../../../parts/when.tsx';
import { PaperDocument, type Printing } from './paperDocument.tsx';

/** As many as Letter and A4 both take, two beside one another. */
const TAGS_ON_A_PAGE = 10;

export interface TagProps {
  readonly printing: Printing;
  readonly job: Job;
  readonly qr: QrModules;
  /** One on a label printer, or a page of them, one for each part of the converter. */
  readonly on: 'label' | 'page';
}

/** Tags to tie to the cover and what belongs to it: the job, what it is, and a code that leads back to the job. */
export function TagPage({ printing, job, qr, on }: TagProps) {
  const tag = `/jobs/${encodeURIComponent(job.number)}/tag`;
  const otherWay =
    on === 'label' ? (
      <a href={`${tag}?on=page`} id="tag-page">
        {TAGS_ON_A_PAGE} on a page
      </a>
    ) : (
      <a href={tag} id="tag-label">
        One on a label
      </a>
    );
  return (
    <PaperDocument
      printing={printing}
      number={job.number}
      paper="tag"
      title={`Job ${job.number}, tag`}
      more={printing.asSigned ? null : otherWay}
    >
      <h1 class="unseen">Tag of job {job.number}</h1>
      {qr === null && !printing.asSigned && (
        <p class="bar-note">
          No QR code: set PUBLIC_URL to the address tablets use, and the tag's code opens the job.
        </p>
      )}
      <div class={`tags tags-${on}`}>
        {Array.from({ length: on === 'label' ? 1 : TAGS_ON_A_PAGE }, () => (
          <Tag job={job} qr={qr} />
        ))}
      </div>
    </PaperDocument>
  );
}

function Tag({ job, qr }: Pick<TagProps, 'job' | 'qr'>) {
  const received = job.sections.received;
  const long = job.number.length > 6 ? (job.number.length > 14 ? ' tag-longest' : ' tag-long') : '';
  return (
    <article class="tag">
      <div class="tag-head">
        <div>
          <small>Job</small>
          <p class={`tag-number${long}`}>{job.number}</p>
          <p class="tag-cover">{received?.body.family.name}</p>
        </div>
        {qr && <Qr modules={qr} label={`Job ${job.number}`} />}
      </div>
      <dl>
        <div>
          <dt>Customer</dt>
          <dd>{received?.body.customerReference || '—'}</dd>
        </div>
        {received?.body.coverNumber && (
          <div>
            <dt>Cover number</dt>
            <dd>{received.body.coverNumber}</dd>
          </div>
        )}
        <div>
          <dt>Received</dt>
          <dd>
            {received && day(received.body.receivedOn)} · {received?.who}
          </dd>
        </div>
      </dl>
    </article>
  );
}

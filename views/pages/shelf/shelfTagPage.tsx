import { dayIn } from '../../../shared/words/day.ts';
import type { Job } from '../../../shared/words/job.ts';
import { printLength } from '../../../shared/words/print.ts';
import { type ShelfChange, WALLS_WORD } from '../../../shared/words/shelf.ts';
import { Qr, type QrModules } from '../../parts/qr.tsx';
import { day } from '../../parts/when.tsx';
import { PaperDocument, type Printing } from '../job/paper/paperDocument.tsx';

export interface ShelfTagProps {
  readonly printing: Printing;
  readonly job: Job;
  readonly stands: ShelfChange;
  readonly qr: QrModules;
}

/** A tag for a cover on the shelf: what it is, the wall left that day, and a code that opens its place on the shelf. */
export function ShelfTagPage({ printing, job, stands, qr }: ShelfTagProps) {
  const { family, wallsMm, wallsAre } = stands.facts;
  const { frame } = printing;
  return (
    <PaperDocument
      printing={printing}
      number={job.number}
      paper="tag"
      title={`Job ${job.number}, shelf tag`}
      more={
        <a href={`/shelf/${encodeURIComponent(job.number)}`} id="to-shelf">
          Shelf
        </a>
      }
    >
      <h1 class="unseen">Shelf tag of the cover of job {job.number}</h1>
      {qr === null && (
        <p class="bar-note">
          No QR code: set PUBLIC_URL to the address tablets use, and the tag's code opens the shelf.
        </p>
      )}
      <div class="tags tags-label">
        <article class="tag">
          <div class="tag-head">
            <div>
              <small>Shelf, job</small>
              <p class={`tag-number${job.number.length > 6 ? ' tag-long' : ''}`}>{job.number}</p>
              <p class="tag-cover">{family.name}</p>
            </div>
            {qr && <Qr modules={qr} label={`Shelf, job ${job.number}`} />}
          </div>
          <dl>
            <div>
              <dt>Wall left</dt>
              <dd>
                {wallsMm.length === 0
                  ? '—'
                  : `${printLength(Math.min(...wallsMm), frame.lengthUnit)}, ${WALLS_WORD[wallsAre]}`}
              </dd>
            </div>
            <div>
              <dt>Lies at</dt>
              <dd>
                {stands.lies} · {stands.who}, {day(dayIn(frame.timeZone, stands.at))}
              </dd>
            </div>
          </dl>
        </article>
      </div>
    </PaperDocument>
  );
}

import type { ComparedWall } from '../../../shared/words/afterCut.ts';
import { type CoverCheck, isMeasured } from '../../../shared/words/cover.ts';
import { printCut } from '../../../shared/words/cut.ts';
import { printDay } from '../../../shared/words/day.ts';
import { cutTold } from '../../../shared/words/findingsShown.ts';
import type { Job } from '../../../shared/words/job.ts';
import { type SignedPrint, THINNEST_WORD } from '../../../shared/words/paper.ts';
import { type LengthUnit, printAgainst, printLength } from '../../../shared/words/print.ts';
import { DECISION_WORD } from '../../../shared/words/verdicts.ts';
import type { Frame } from '../../frame.ts';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { ClosedNote } from './closing.tsx';
import type { Refused } from './section.tsx';
import { STAGE_WORD } from './stepWords.ts';

export interface JobHeadProps {
  readonly frame: Frame;
  readonly job: Job;
  /** An earlier revision is being read. */
  readonly asItWas: number | null;
  /** Of the answer as it is now; null while there is none. */
  readonly now: CoverCheck | null;
  /** Each wall measured after the cut. */
  readonly compared: readonly ComparedWall[];
  /** Signatures whose sheet and tag were kept, newest first. */
  readonly signedPrints: readonly SignedPrint[];
  readonly refused: Refused | null;
  /** Jobs that name this one as the earlier job of the same cover. */
  readonly cameBack: readonly { readonly number: string; readonly receivedOn: string }[];
}

/** What is asked first of a job, what can be printed, and what stands over all: changed since signed, an earlier revision. */
export function JobHead(props: JobHeadProps) {
  const { job, asItWas, frame } = props;
  const href = `/jobs/${encodeURIComponent(job.number)}`;
  return (
    <>
      <div class="job-head">
        <h1>
          Job {job.number}: {STAGE_WORD[job.stage]}
        </h1>
        <dl id="job-about">
          {aboutJob(props).map(({ label, value }) => (
            <div>
              <dt>{label}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
        <JobPapers {...props} />
      </div>
      {amendedSince(job) !== null && (
        <p class="note" id="amended">
          {amendedSince(job)} <a href={`${href}/history#revision-${job.revision}`}>What changed</a>
        </p>
      )}
      {props.cameBack.length > 0 && (
        <p class="note" id="came-back">
          This cover came back:{' '}
          {props.cameBack.map(({ number, receivedOn }, i) => (
            <>
              {i > 0 && ', '}
              <a href={`/jobs/${encodeURIComponent(number)}`}>job {number}</a>, received{' '}
              {printDay(receivedOn)}
            </>
          ))}
          .
        </p>
      )}
      {job.stage === 'closed' && <ClosedNote job={job} />}
      {hasNoForm(props) && <ErrorSummary faults={props.refused?.faults ?? []} goTo />}
      {asItWas !== null && (
        <p class="note">
          This is the job as it was at revision {asItWas}. Nothing can be changed here.{' '}
          <a href={href}>Go to the job as it is now</a>
        </p>
      )}
      {job.demo && !frame.demo && <p class="hint">An invented job of the demo shop.</p>}
      {!job.demo && frame.demo && <MadeUpCover {...props} />}
    </>
  );
}

/** A job of the shop's own, worked out with figures that the demo made up. */
function MadeUpCover({ job, frame }: JobHeadProps) {
  const familyId = job.sections.received?.body.familyId ?? '';
  return (
    <p class="hint" id="made-up-cover">
      The figures of this cover type are the demo's, made up.
      {frame.demoKept && ' It was kept because you use it.'}{' '}
      <a href={`/catalogue/family/${encodeURIComponent(familyId)}`}>Replace them with yours</a>
      {job.stage !== 'signed' && job.stage !== 'closed' && ', then save Receive again'}.
    </p>
  );
}

/** What was refused has no form on this page: nothing is asked of a closed job, and a signed one is not closed. */
function hasNoForm({ job, refused }: JobHeadProps): boolean {
  if (job.stage === 'closed') return refused !== null && refused.section !== 'closed';
  return job.stage === 'signed' && refused?.section === 'closed';
}

/** Whose cover, what kind, what was decided, and the wall against its limit: all that a caller asks first. */
function aboutJob({ job, now, compared, frame }: JobHeadProps) {
  const unit = frame.lengthUnit;
  const { received, decision } = job.sections;
  const check = (job.outcome === null ? now : decision?.body.check) ?? null;
  const minimum = check?.minimumWall ?? null;
  const { word, mm } = thinnest(job, check, compared);
  return [
    { label: 'Customer', value: received?.body.customerReference ?? '' },
    { label: 'Cover type', value: received?.body.family.name ?? '' },
    { label: 'Decision', value: decidedInWords(job, unit) },
    {
      label: word,
      value: mm === null ? '' : minimum ? printAgainst(mm, minimum.mm, unit) : printLength(mm, unit),
    },
    { label: 'Minimum wall', value: minimum === null ? 'none set' : printLength(minimum.mm, unit) },
  ].filter(({ value }) => value !== '');
}

/** The figure that the minimum is held against. */
function thinnest(job: Job, check: CoverCheck | null, compared: JobHeadProps['compared']) {
  if (compared.length > 0) {
    return {
      word: THINNEST_WORD.measured,
      mm: Math.min(...compared.map(({ measuredMm }) => measuredMm)),
    };
  }
  if (check === null || !isMeasured(check)) return { word: '', mm: null };
  return job.outcome !== 'replace' && cutTold(check.verdict, job.outcome === 'face')
    ? { word: THINNEST_WORD.predicted, mm: check.leastWall.afterMm }
    : { word: THINNEST_WORD.none, mm: check.leastWall.beforeMm };
}

/** "Face it: 0.0099 in": a decision that stands, with its cut. */
export function decidedInWords({ outcome, sections }: Job, unit: LengthUnit): string {
  if (outcome === null) return 'Not decided';
  const check = sections.decision?.body.check;
  return outcome === 'face' && check && isMeasured(check)
    ? `${DECISION_WORD.face}: ${printCut(check.cut.dialledMm, unit)}`
    : DECISION_WORD[outcome];
}

function JobPapers({ job, asItWas, signedPrints }: JobHeadProps) {
  const href = `/jobs/${encodeURIComponent(job.number)}`;
  return (
    <div class="actions no-print">
      <a class="button" href={`${href}/sheet${asItWas === null ? '' : `?revision=${asItWas}`}`} id="to-sheet">
        Print the sheet
      </a>
      <a class="button" href={`${href}/tag`} id="to-tag">
        Print the tag
      </a>
      <AsSigned job={job} prints={signedPrints} />
    </div>
  );
}

/** Sheet and tag as they were printed at signing, of the newest signature. */
function AsSigned({ job, prints }: { job: Job; prints: JobHeadProps['signedPrints'] }) {
  const href = `/jobs/${encodeURIComponent(job.number)}`;
  if (prints.length > 0) {
    return (
      <>
        <a class="button" href={`${href}/sheet/signed`} id="to-sheet-signed">
          Sheet as signed
        </a>
        <a class="button" href={`${href}/tag/signed`} id="to-tag-signed">
          Tag as signed
        </a>
      </>
    );
  }
  if (job.sections.signature === null) return null;
  return <p class="hint">Signed before sheets were kept: no sheet as signed.</p>;
}

/** What the head of a job says while it was signed and has changed since; null otherwise. */
export function amendedSince(job: Job): string | null {
  const { signature } = job.sections;
  if (signature === null || job.stage === 'signed') return null;
  return `Amended after ${signature.who} signed it at revision ${signature.body.signedRevision}: it does not count as signed until it is signed again.`;
}

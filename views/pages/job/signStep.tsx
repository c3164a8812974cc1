import { lowerFirst } from '../../../shared/words/fields/field.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import type { HistoryLine, Job } from '../../../shared/words/job.ts';
import { sittingsOf } from '../../../shared/words/sittings.ts';
import { Caution } from '../../parts/caution.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { TextArea } from '../../parts/form/fieldBox.tsx';
import { FoldedBoxes } from '../../parts/form/foldedBoxes.tsx';
import { When } from '../../parts/when.tsx';
import { JobForm, type Refused, Who } from './section.tsx';
import { SECTION_WORD } from './stepWords.ts';

export interface SignProps {
  readonly job: Job;
  readonly missing: readonly string[];
  /** What was found after the cut and speaks against it, so that the statement says why it is signed. */
  readonly toAnswer: readonly Finding[];
  readonly initials: string;
  readonly refused: Refused | null;
  readonly readOnly: boolean;
}

export function signSummary(job: Job, missing: readonly string[], toAnswer: readonly Finding[]): string {
  if (job.stage === 'signed' && job.sections.signature) return `signed by ${job.sections.signature.who}`;
  const open = [
    ...missing,
    ...(toAnswer.length > 0 ? ['a statement'] : []),
    ...(job.sections.studs === null && job.outcome !== 'replace' ? ['studs are not chosen'] : []),
  ];
  return open.length > 0 ? `missing: ${open.join(', ')}` : 'ready to sign';
}

/** What the statement has to answer, by name. */
function whyAsked(toAnswer: readonly Finding[]): string {
  const names = [...new Set(toAnswer.map(({ title }) => lowerFirst(title)))];
  return `Needed. Not OK or not checked: ${names.join(', ')}. Say why it is signed.`;
}

/** What somebody typed, ended as a sentence. */
function withPeriod(text: string): string {
  return /[.!?]$/.test(text.trim()) ? text.trim() : `${text.trim()}.`;
}

/** Record and release. */
export function SignOff({ job, missing, toAnswer, initials, refused, readOnly }: SignProps) {
  const kept = job.sections.signature;
  const statement = {
    name: 'statement',
    value: refused?.fields.statement,
    error: errorsOf(refused?.faults ?? [])('statement'),
    rows: 2,
  } as const;
  return (
    <>
      {kept && (
        <>
          <p>
            Signed at revision {kept.body.signedRevision}
            {kept.body.statement === '' ? '.' : `: ${withPeriod(kept.body.statement)}`}
            {job.stage !== 'signed' && ' Changed since: sign it again. The history keeps that signature.'}
          </p>
          <Who kept={kept} />
        </>
      )}
      {missing.length > 0 && <p class="note">Missing before it can be signed: {missing.join(', ')}.</p>}
      <Caution kind="crack" />
      {!readOnly && job.stage !== 'signed' && (
        <JobForm
          id="signature-form"
          action={`/jobs/${encodeURIComponent(job.number)}/signature`}
          revision={job.revision}
          initials={initials}
          signed={false}
          refused={refused}
          submit="Sign"
          first={job.stage === 'to-sign'}
        >
          {toAnswer.length > 0 ? (
            <TextArea label="Statement" {...statement} hint={whyAsked(toAnswer)} />
          ) : (
            <FoldedBoxes
              head="Statement"
              says="Needed only where there is something to say on the sheet."
              names={['statement']}
              fields={refused?.fields ?? {}}
              faults={refused?.faults ?? []}
            >
              <TextArea label={<span class="unseen">Statement</span>} {...statement} />
            </FoldedBoxes>
          )}
        </JobForm>
      )}
    </>
  );
}

/** Every change, newest first, the readings of one sitting as one entry; each opens the job as it then was. */
export function History({
  job,
  lines,
  shown,
}: {
  job: Job;
  lines: readonly HistoryLine[];
  shown: number | null;
}) {
  return (
    <ol class="history">
      {[...sittingsOf(lines)].reverse().map(([first, ...more]) =>
        more.length === 0 ? (
          <HistoryEntry job={job} line={first} shown={shown} />
        ) : (
          <li>
            <details open={[first, ...more].some(({ revision }) => revision === shown)}>
              <summary>
                revisions {first.revision} to {more.at(-1)!.revision} {SECTION_WORD.reading}, {first.who},{' '}
                <When at={first.at} />
              </summary>
              <ol class="history">
                {[first, ...more].reverse().map((line) => (
                  <HistoryEntry job={job} line={line} shown={shown} />
                ))}
              </ol>
            </details>
          </li>
        ),
      )}
    </ol>
  );
}

function HistoryEntry({ job, line, shown }: { job: Job; line: HistoryLine; shown: number | null }) {
  const href = `/jobs/${encodeURIComponent(job.number)}`;
  return (
    <li aria-current={line.revision === shown ? 'true' : undefined}>
      <a href={`${href}?revision=${line.revision}`}>revision {line.revision}</a> {SECTION_WORD[line.what]},{' '}
      {line.who}, <When at={line.at} />
      {line.why !== '' && <>: {line.why}</>}{' '}
      <a href={`${href}/history/${line.revision}`}>what revision {line.revision} changed</a>
    </li>
  );
}

import type { ComponentChildren } from 'preact';
import type { Job } from '../../../shared/words/job.ts';
import type { SignedPrint } from '../../../shared/words/paper.ts';
import { sittingsOf } from '../../../shared/words/sittings.ts';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { SideBySide } from '../../parts/sideBySide.tsx';
import { When } from '../../parts/when.tsx';
import { JobStory } from './jobStory.tsx';
import type { RevisionTold } from './section.tsx';
import { jobTitleBlock } from './wholeJobPage.tsx';

export interface HistoryPageProps {
  readonly frame: Frame;
  readonly job: Job;
  /** Those to show, newest first. */
  readonly revisions: readonly RevisionTold[];
  /** The one that is shown alone; null for all of them. */
  readonly alone: number | null;
  /** Signatures whose sheet and tag were kept. */
  readonly signedPrints: readonly SignedPrint[];
}

/** Who changed what, field by field, and the way to the job as it was. */
export function HistoryPage({ frame, job, revisions, alone, signedPrints }: HistoryPageProps) {
  const href = `/jobs/${encodeURIComponent(job.number)}`;
  const changes = [...sittingsOf([...revisions].reverse())].reverse().map((sitting) => {
    const each = [...sitting]
      .reverse()
      .map((one) => (
        <RevisionChanges
          one={one}
          href={href}
          earlier={one.revision !== job.revision}
          whole={alone !== null}
        />
      ));
    return sitting.length === 1 ? each : <Sitting of={sitting}>{each}</Sitting>;
  });
  return (
    <Layout
      title={`Job ${job.number}, ${alone === null ? 'history' : `revision ${alone}`}`}
      here="jobs"
      {...frame}
      titleBlock={jobTitleBlock(job, '1 of 1', frame.timeZone)}
    >
      <h1>
        Job {job.number}: {alone === null ? 'its history' : `what revision ${alone} changed`}
      </h1>
      <div class="actions no-print">
        <a class="button" href={href}>
          Back to the job
        </a>
        {alone !== null && (
          <a class="button" href={`${href}/history`}>
            Every change
          </a>
        )}
        <a class="button" href={`${href}/readings.csv`} id="readings-csv">
          Every reading as CSV
        </a>
      </div>
      {alone === null ? (
        <>
          <JobStory revisions={[...revisions].reverse()} prints={signedPrints} href={href} />
          <details id="every-change">
            <summary>
              <h2>Every change, newest first: {revisions.length}</h2>
            </summary>
            {changes}
          </details>
        </>
      ) : (
        changes
      )}
    </Layout>
  );
}

/** Readings of one sitting, folded: who took them, and from when to when. */
function Sitting(props: { of: readonly RevisionTold[]; children: ComponentChildren }) {
  const [first, last] = [props.of[0]!, props.of.at(-1)!];
  return (
    <details class="twin">
      <summary>
        Revisions {first.revision} to {last.revision}: readings, {first.who}, <When at={first.at} /> to{' '}
        <When at={last.at} />
      </summary>
      {props.children}
    </details>
  );
}

/** So many fields of a change are told at once; the rest of a longer one is folded. */
const AT_ONCE = 8;
const OF_LONGER = 4;

function RevisionChanges(props: { one: RevisionTold; href: string; earlier: boolean; whole: boolean }) {
  const { one, href, earlier, whole } = props;
  const folds = !whole && one.changes.length > AT_ONCE;
  const [told, folded] = folds
    ? [one.changes.slice(0, OF_LONGER), one.changes.slice(OF_LONGER)]
    : [one.changes, []];
  return (
    <section class="revision" id={`revision-${one.revision}`}>
      <h2>
        Revision {one.revision}: {one.summary}
      </h2>
      <p class="who">
        {one.who}, <When at={one.at} />
        {one.why !== '' && <>: {one.why}</>}
      </p>
      {one.changes.length === 0 ? (
        <p>No change from the previous revision, confirmed by {one.who}.</p>
      ) : (
        <Changes revision={one.revision} lines={told} />
      )}
      {folded.length > 0 && (
        <details class="twin">
          <summary>{folded.length} more</summary>
          <Changes revision={one.revision} lines={folded} />
        </details>
      )}
      <p class="no-print">
        <a href={`${href}/history/${one.revision}`}>This change alone</a>
        {earlier && (
          <>
            {' · '}
            <a href={`${href}?revision=${one.revision}`}>The job as it was then</a>
            {' · '}
            <a href={`${href}/sheet?revision=${one.revision}`}>Its sheet as it was then</a>
          </>
        )}
      </p>
    </section>
  );
}

function Changes({ revision, lines }: { revision: number; lines: RevisionTold['changes'] }) {
  return lines.every((line) => line.before === '') ? (
    <dl class="facts">
      {lines.map((line) => (
        <>
          <dt>{line.label}</dt>
          <dd>{line.after}</dd>
        </>
      ))}
    </dl>
  ) : (
    <SideBySide caption={`What revision ${revision} changed`} heads={['before', 'after']} lines={lines} />
  );
}

import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { EmptyState } from '../../parts/emptyState.tsx';
import { ListTable } from '../../parts/listTable.tsx';
import { When } from '../../parts/when.tsx';

export interface JudgedProps {
  readonly frame: Frame;
  readonly revision: number;
  /** How many there are in all. */
  readonly count: number;
  /** This page of them, newest first. */
  readonly jobs: readonly { readonly number: string; readonly coverType: string; readonly at: string }[];
  /** The address of the next page; null on the last. */
  readonly next: string | null;
}

/** The jobs whose decisions were made under one revision of the shop limits. */
export function JudgedPage({ frame, revision, count, jobs, next }: JudgedProps) {
  const title = `Jobs decided under revision ${revision} of the limits`;
  return (
    <Layout title={title} here="criteria" {...frame}>
      <link rel="stylesheet" href="/assets/lists.css" />
      <h1>{title}</h1>
      <p class="why">
        {count === 1 ? '1 job' : `${count} jobs`}, by the decision as it stands now; newest job first.{' '}
        <a href={revision === 0 ? '/criteria' : `/criteria#revision-${revision}`}>Shop limits</a>
      </p>
      {jobs.length === 0 ? (
        <EmptyState title="No job was decided under it" />
      ) : (
        <ListTable
          caption={title}
          columns={[{ label: 'Job' }, { label: 'Cover type' }, { label: 'Decided' }]}
          rows={jobs.map(({ number, coverType, at }) => ({
            href: `/jobs/${encodeURIComponent(number)}`,
            name: number,
            cells: [coverType, <When at={at} />],
          }))}
        />
      )}
      {next !== null && (
        <p>
          <a class="button" href={next} id="older">
            Older jobs
          </a>
        </p>
      )}
    </Layout>
  );
}

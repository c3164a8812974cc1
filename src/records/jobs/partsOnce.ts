import type { Selectable } from 'kysely';
import type { Kept, Looked, Reading } from '../../../shared/words/job.ts';
import type { StageParts } from '../../calc/job/jobStage.ts';
import type { Db } from '../database/database.ts';
import type { Tables } from '../database/tables.ts';

export interface JobParts extends StageParts {
  readonly changedAt: string;
  readonly looks: readonly Kept<Looked>[];
}

export type SectionRow = Pick<
  Selectable<Tables['job_revision']>,
  'revision' | 'at' | 'who' | 'why' | 'what' | 'body'
>;

/** What the records hold of a job at a revision. */
export interface PartsRead {
  readonly revision: number;
  readonly at: string;
  readonly rows: readonly SectionRow[];
  readonly readings: readonly Reading[];
}

interface Known {
  readonly read: PartsRead;
  readonly parts: JobParts;
}

const MOST_KEPT = 100;

/** By the one thing a database and its transactions share: of each job what it was read to last. */
const keptBy = new WeakMap<object, Map<number, Known>>();

/**
 * The parts of a job as they were read last while the records hold the very same, row for row; so whoever changed what
 * meanwhile, and whatever was restored, they are right. What they are read to is the same object as before.
 */
export function partsOnce(db: Db, jobId: number, read: PartsRead, make: () => JobParts): JobParts {
  const { adapter } = db.getExecutor();
  const kept = keptBy.get(adapter) ?? new Map<number, Known>();
  keptBy.set(adapter, kept);
  const known = kept.get(jobId);
  const parts = known !== undefined && sameRead(known.read, read) ? known.parts : make();
  kept.delete(jobId);
  kept.set(jobId, { read, parts });
  const [oldest] = kept.keys();
  if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
  return parts;
}

/** The parts of a job with readings that are being added: what it is read to, once the records hold them. */
export function partsGrown(
  db: Db,
  jobId: number,
  before: JobParts,
  by: Pick<JobParts, 'revision' | 'changedAt' | 'readings'>,
): JobParts {
  const parts = { ...before, ...by };
  const kept = keptBy.get(db.getExecutor().adapter);
  const known = kept?.get(jobId);
  const { revision, changedAt: at, readings } = by;
  if (known?.parts === before) kept?.set(jobId, { read: { ...known.read, revision, at, readings }, parts });
  return parts;
}

function sameRead(a: PartsRead, b: PartsRead): boolean {
  return (
    a.revision === b.revision &&
    a.at === b.at &&
    a.readings === b.readings &&
    a.rows.length === b.rows.length &&
    a.rows.every((row, i) => sameRow(row, b.rows[i]!))
  );
}

function sameRow(a: SectionRow, b: SectionRow): boolean {
  return (
    a.revision === b.revision &&
    a.at === b.at &&
    a.who === b.who &&
    a.why === b.why &&
    a.what === b.what &&
    a.body === b.body
  );
}

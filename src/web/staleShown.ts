import type { Job, JobSections, SectionName } from '../../shared/words/job.ts';
import type { StaleShown } from '../../views/pages/job/section.tsx';
import type { Db } from '../records/database.ts';
import type { StaleEdit } from '../records/errors.ts';
import { revisionsOf } from '../records/history.ts';
import { sideBySide } from './fieldLines.ts';
import type { Edit } from './jobEdits.ts';
import { revisionsInWords } from './revisionWords.ts';
import { sectionFields } from './sectionFields.ts';
import type { Writing } from './typed.ts';

/** A stale edit with both versions: what stands, what was sent, and everything that changed in between. */
export async function staleShown(
  db: Db,
  job: Pick<Job, 'id'>,
  edit: Edit,
  error: StaleEdit,
  fromRevision: number,
  writing: Writing,
): Promise<StaleShown> {
  const theirs = error.theirs !== null && error.theirs.revision > fromRevision ? error.theirs : null;
  const since = new Set(error.since.map((line) => line.revision));
  const told = revisionsInWords(await revisionsOf(db, job.id), writing);
  const body = theirs?.body as JobSections[SectionName] | undefined;
  return {
    theirs,
    compared:
      body === undefined
        ? []
        : sideBySide(sectionFields(edit.what, body, writing), sectionFields(edit.what, edit.body, writing)),
    // The change of the section itself stands in the comparison already.
    since: told.filter((one) => since.has(one.revision) && one.revision !== theirs?.revision),
  };
}

import type { Writing } from '../../../shared/quantity/fieldText.ts';
import type { EntryBodies } from '../../../shared/words/catalogue.ts';
import type { Job, JobSections, SectionName } from '../../../shared/words/job.ts';
import type { StaleShown } from '../../../views/pages/job/section.tsx';
import { getEntry } from '../../records/catalogue.ts';
import type { Db } from '../../records/database/database.ts';
import type { StaleEdit } from '../../records/database/errors.ts';
import { revisionsOf } from '../../records/jobs/history.ts';
import { criteriaOf } from '../../records/shopCriteria.ts';
import type { Edit } from '../../shop/jobEdits.ts';
import { entryFields } from '../catalogue/entryFields.ts';
import { differences, sideBySide } from '../request/fieldLines.ts';
import { revisionsInWords } from './revisionWords.ts';
import { sectionFields } from './sectionFields.ts';

/** A stale edit with both versions: what stands, what was sent, and everything that changed in between. */
export async function staleShown(
  db: Db,
  job: Pick<Job, 'id'>,
  edit: Edit,
  error: StaleEdit,
  fromRevision: number,
  writing: Writing,
): Promise<StaleShown> {
  if (error.section !== edit.what) return entryShown(db, edit, error, writing);
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

const ENTRY = {
  criteria: 'the shop limits',
  stack: 'the stack',
  stud: 'the stud',
  gauge: 'the gauge',
} as const;

/** Something of the catalog that it was worked out from: as it was seen, and as it is now. */
async function entryShown(db: Db, edit: Edit, error: StaleEdit, writing: Writing): Promise<StaleShown> {
  const kind = error.section as keyof typeof ENTRY;
  const seen = await seenOf(db, edit, kind, error);
  const now = error.theirs?.body as EntryBodies[typeof kind] | undefined;
  const compared =
    seen && now ? differences(entryFields(kind, seen, writing), entryFields(kind, now, writing)) : [];
  return { theirs: error.theirs, entry: ENTRY[kind], compared, since: [] };
}

async function seenOf(db: Db, edit: Edit, kind: keyof typeof ENTRY, { currentRevision }: StaleEdit) {
  if (kind === 'gauge') return gaugeSeen(db, edit, currentRevision);
  if (edit.what === 'decision') return edit.body.criteria;
  if (edit.what !== 'studs') return null;
  if (kind !== 'criteria') return edit.body[kind];
  return (await criteriaOf(db, edit.body.revisions?.criteria ?? 0))?.body ?? null;
}

/** The gauge as the form showed it: the one whose newest revision was not the one seen. */
async function gaugeSeen(db: Db, { seen = [] }: Edit, newest: number) {
  for (const { id, revision } of seen) {
    const now = await getEntry(db, 'gauge', id);
    if (now?.revision !== newest || newest === revision) continue;
    return (await getEntry(db, 'gauge', id, revision))?.body ?? null;
  }
  return null;
}

import { ofDemo } from '../../../shared/words/demo.ts';
import { slipNumber } from '../../../shared/words/stud/slip.ts';
import { isCatalogueKind } from '../../../shared/words/terms.ts';
import { hasBegun } from '../../records/begun.ts';
import type { Db } from '../../records/database/database.ts';
import { holdsDemo } from '../../records/jobs/findJobs.ts';
import { familyRevisionOf, jobRow } from '../../records/jobs/readJob.ts';
import { currentCriteria } from '../../records/shopCriteria.ts';
import { getSlip } from '../../records/slips/slips.ts';
import { demoFigures } from '../../shop/demoFigures.ts';

const LISTS: ReadonlySet<string> = new Set(['/', '/jobs', '/shelf', '/catalogue']);
/** What a page of the counter or the quick check was asked about. */
const ASKED = [
  ['family', 'family'],
  ['stack', 'stack'],
  ['stud', 'stud'],
] as const;

/** Whether what stands on a page is the demo's: on a job or an entry of its own, and on lists while any is in them. */
export async function isInvented(db: Db, address: string): Promise<boolean> {
  const { pathname, searchParams } = new URL(address, 'http://shop.invalid');
  const job = /^\/(?:jobs|shelf)\/([^/]+)/.exec(pathname)?.[1];
  if (job !== undefined && job !== 'new') return isDemoJob(db, decoded(job));
  const slip = slipNumber(/^\/slips\/([^/]+)/.exec(pathname)?.[1] ?? '');
  if (slip !== null) return isDemoSlip(db, slip);
  if (LISTS.has(pathname)) return holdsDemo(db);
  const [, kind, id = ''] = /^\/catalogue\/(\w+)\/([^/]+)/.exec(pathname) ?? [];
  if (isCatalogueKind(kind)) return demoFigures(db, kind, decoded(id));
  if (pathname === '/criteria') return ofDemo((await currentCriteria(db)).at) && !(await hasBegun(db));
  for (const [name, kind] of ASKED) {
    const id = searchParams.get(name);
    if (id !== null && (await demoFigures(db, kind, id))) return true;
  }
  return false;
}

/** The demo's own, or a job of the shop that took its figures from a cover type while they were the demo's. */
async function isDemoJob(db: Db, number: string): Promise<boolean> {
  const row = await jobRow(db, number);
  if (row === undefined || row.demo === 1) return row !== undefined;
  const taken = await familyRevisionOf(db, row.id);
  return demoFigures(db, 'family', row.family_id, ({ revision }) => revision <= taken);
}

/** Its stack or its stud was the demo's when it was answered. */
async function isDemoSlip(db: Db, number: number): Promise<boolean> {
  const slip = await getSlip(db, number);
  if (slip === null) return false;
  const { asked, at: answered } = slip;
  const before = ({ at }: { readonly at: string }) => at <= answered;
  return (
    (await demoFigures(db, 'stack', asked.stackId, before)) ||
    (await demoFigures(db, 'stud', asked.studId, before))
  );
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

import { ofDemo } from '../../../shared/words/demo.ts';
import { slipNumber } from '../../../shared/words/stud/slip.ts';
import { type CatalogueKind, isCatalogueKind } from '../../../shared/words/terms.ts';
import { hasBegun } from '../../records/begun.ts';
import { entryHistory } from '../../records/catalogue.ts';
import type { Db } from '../../records/database/database.ts';
import { holdsDemo } from '../../records/jobs/findJobs.ts';
import { jobRow } from '../../records/jobs/readJob.ts';
import { currentCriteria } from '../../records/shopCriteria.ts';
import { getSlip } from '../../records/slips/slips.ts';

const LISTS: ReadonlySet<string> = new Set(['/', '/jobs', '/catalogue']);
/** What a page of the counter or the quick check was asked about. */
const ASKED = [
  ['family', 'family'],
  ['stack', 'stack'],
  ['stud', 'stud'],
] as const;

/** Whether what stands on a page is the demo's: on a job or an entry of its own, and on lists while any is in them. */
export async function isInvented(db: Db, address: string): Promise<boolean> {
  const { pathname, searchParams } = new URL(address, 'http://shop.invalid');
  const job = /^\/jobs\/([^/]+)/.exec(pathname)?.[1];
  if (job !== undefined && job !== 'new') return isDemoJob(db, decoded(job));
  const slip = slipNumber(/^\/slips\/([^/]+)/.exec(pathname)?.[1] ?? '');
  if (slip !== null) return isDemoSlip(db, slip);
  if (LISTS.has(pathname)) return holdsDemo(db);
  const [, kind, id = ''] = /^\/catalogue\/(\w+)\/([^/]+)/.exec(pathname) ?? [];
  if (isCatalogueKind(kind)) return isDemoEntry(db, kind, decoded(id));
  if (pathname === '/criteria') return ofDemo((await currentCriteria(db)).at) && !(await hasBegun(db));
  for (const [name, kind] of ASKED) {
    const id = searchParams.get(name);
    if (id !== null && (await isDemoEntry(db, kind, id))) return true;
  }
  return false;
}

/** The demo's own, or a job of the shop on a cover type whose figures the demo made up. */
async function isDemoJob(db: Db, number: string): Promise<boolean> {
  const row = await jobRow(db, number);
  return row !== undefined && (row.demo === 1 || (await isDemoEntry(db, 'family', row.family_id)));
}

/** Its stack or its stud is the demo's. */
async function isDemoSlip(db: Db, number: number): Promise<boolean> {
  const asked = (await getSlip(db, number))?.asked;
  return (
    asked !== undefined &&
    ((await isDemoEntry(db, 'stack', asked.stackId)) || (await isDemoEntry(db, 'stud', asked.studId)))
  );
}

async function isDemoEntry(db: Db, kind: CatalogueKind, id: string): Promise<boolean> {
  const [first] = await entryHistory(db, kind, id);
  return ofDemo(first?.at ?? null);
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

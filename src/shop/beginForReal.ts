import { isDeepStrictEqual } from 'node:util';
import type { Entry, ShopCriteria } from '../../shared/words/catalogue.ts';
import { ofDemo, PUT_AWAY } from '../../shared/words/demo.ts';
import { CRITERIA } from '../../shared/words/fields/criteria.ts';
import type { Job } from '../../shared/words/job.ts';
import { CATALOGUE_KINDS, type CatalogueKind } from '../../shared/words/terms.ts';
import { hasBegun, markBegun } from '../records/begun.ts';
import { entryHistory, listEntries, retireEntry } from '../records/catalogue.ts';
import { type Db, write } from '../records/database/database.ts';
import { refuse } from '../records/database/errors.ts';
import type { Ctx } from '../records/database/writing.ts';
import { findJobs, MOST_LISTED } from '../records/jobs/findJobs.ts';
import { getJob } from '../records/jobs/readJob.ts';
import { CRITERIA_ID, currentCriteria, STARTING_LIMITS, saveCriteria } from '../records/shopCriteria.ts';
import { demoFigures } from './demoFigures.ts';

interface Named {
  readonly kind: CatalogueKind;
  readonly name: string;
}

interface Kept extends Named {
  readonly id: string;
  readonly why: string;
  /** Its figures still are those the demo made up. */
  readonly madeUp: boolean;
}

/** What beginning for real puts away, and what it keeps. */
export interface Beginning {
  /** Numbers of the demo's jobs. */
  readonly demoJobs: readonly string[];
  readonly ownJobs: number;
  readonly away: readonly Named[];
  /** Entries of the demo that stay, and why. */
  readonly kept: readonly Kept[];
  /** Labels of the limits that were the demo's. */
  readonly limits: readonly string[];
}

interface Plan extends Beginning {
  readonly entries: readonly Entry<CatalogueKind>[];
  readonly newLimits: ShopCriteria;
}

/** What is there to put away; null where there is no demo, or it was put away already. */
export async function beginning(db: Db): Promise<Beginning | null> {
  return (await hasBegun(db)) ? null : planOf(db);
}

/**
 * Puts the demo away. Whatever the shop typed stays: its jobs, entries of its own, demo entries it changed or uses, and
 * every limit that differs from the demo's. All of it, or nothing.
 */
export async function beginForReal(db: Db, ctx: Ctx): Promise<Beginning> {
  return write(db, async (trx) => {
    const plan = (await hasBegun(trx)) ? null : await planOf(trx);
    if (plan === null) throw refuse('no-demo', '', 'The demo is put away already. There is nothing to do.');
    const because = { ...ctx, why: PUT_AWAY };
    for (const { kind, id, revision } of plan.entries)
      await retireEntry(trx, because, { kind, id, fromRevision: revision });
    const { revision } = await currentCriteria(trx);
    if (plan.limits.length > 0)
      await saveCriteria(trx, because, { fromRevision: revision, body: plan.newLimits, why: PUT_AWAY });
    await markBegun(trx, because, plan.newLimits);
    return plan;
  });
}

async function planOf(db: Db): Promise<Plan | null> {
  const { jobs: demo } = await findJobs(db, { demo: true, limit: MOST_LISTED });
  const own = await ownJobs(db);
  const sorted = await Promise.all(CATALOGUE_KINDS.map((kind) => sortEntries(db, kind, own)));
  const entries = sorted.flatMap(({ away }) => away);
  const { limits, newLimits } = await limitsWithoutDemo(db);
  if (demo.length === 0 && entries.length === 0 && limits.length === 0) return null;
  return {
    demoJobs: demo.map(({ number }) => number).reverse(),
    ownJobs: own.length,
    entries,
    away: entries.map(({ kind, name }) => ({ kind, name })),
    kept: sorted.flatMap(({ kept }) => kept),
    limits,
    newLimits,
  };
}

async function ownJobs(db: Db): Promise<Job[]> {
  const found: Job[] = [];
  let after: string | null = null;
  do {
    const page = await findJobs(db, { demo: false, limit: MOST_LISTED, ...(after !== null && { after }) });
    for (const { id } of page.jobs) found.push((await getJob(db, id))!);
    after = page.next;
  } while (after !== null);
  return found;
}

/** The demo's entries of a kind: those that go, and those the shop has made its own. */
async function sortEntries(db: Db, kind: CatalogueKind, own: readonly Job[]) {
  const away: Entry<CatalogueKind>[] = [];
  const kept: Kept[] = [];
  for (const entry of await listEntries(db, kind)) {
    const history = await entryHistory(db, kind, entry.id);
    if (!ofDemo(history[0]?.at ?? null)) continue;
    const { id, name } = entry;
    const user = own.find(({ sections }) => JSON.stringify(sections).includes(JSON.stringify(id)));
    const madeUp = await demoFigures(db, kind, id);
    if (history.some(({ at }) => !ofDemo(at))) kept.push({ kind, id, name, why: 'you changed it', madeUp });
    else if (user !== undefined) kept.push({ kind, id, name, why: `job ${user.number} uses it`, madeUp });
    else away.push(entry);
  }
  return { away, kept };
}

/** Limits that still are as the demo set them go back to what the program starts with; units and decimal sign stay. */
async function limitsWithoutDemo(db: Db): Promise<{ limits: string[]; newLimits: ShopCriteria }> {
  const now = (await currentCriteria(db)).body;
  const demos = (await entryHistory(db, 'criteria', CRITERIA_ID)).filter(({ at }) => ofDemo(at));
  const invented = (key: keyof ShopCriteria) =>
    key !== 'lengthUnit' &&
    key !== 'decimalSign' &&
    demos.some(({ body }) => isDeepStrictEqual(body[key], now[key])) &&
    !isDeepStrictEqual(now[key] ?? null, STARTING_LIMITS[key] ?? null);
  const keys = (Object.keys(CRITERIA) as (keyof ShopCriteria)[]).filter(invented);
  const reset = Object.fromEntries(keys.map((key) => [key, STARTING_LIMITS[key]]));
  return { limits: keys.map((key) => CRITERIA[key].label), newLimits: { ...now, ...reset } };
}

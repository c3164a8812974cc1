import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { entryHistory, listEntries, typedIn } from '../../../src/records/catalogue.ts';
import { FILE_NAME, openShop, type Shop } from '../../../src/records/database/database.ts';
import { masterChecksOf } from '../../../src/records/gauges/masterChecks.ts';
import { countByStage, findJobs } from '../../../src/records/jobs/findJobs.ts';
import { allReadings, historyOf, revisionsOf } from '../../../src/records/jobs/history.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { ringDoubts } from '../../../src/records/jobs/ringDoubts.ts';
import { signedPrints } from '../../../src/records/jobs/signedPrints.ts';
import { listPeople, peopleHistory } from '../../../src/records/people/people.ts';
import { photosOf } from '../../../src/records/photos/photos.ts';
import { findSlips } from '../../../src/records/slips/slips.ts';
import { demoFile } from '../../web/demoShop.ts';

/**
 * A question that does not say in which order it wants its rows gets them as they were written, by good luck. SQLite
 * answers such a question backward where it is asked to (PRAGMA reverse_unordered_selects, made for tests like this).
 */
let folder: string;
let asWritten: Shop;
let backward: Shop;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'coverwright-order-'));
  const open = async (name: string) => {
    const dataDir = join(folder, name);
    const shop = await openFile(dataDir);
    return shop;
  };
  [asWritten, backward] = [await open('one'), await open('two')];
  await sql`PRAGMA reverse_unordered_selects = ON`.execute(backward.db);
});
afterAll(async () => {
  await asWritten.close();
  await backward.close();
  rmSync(folder, { recursive: true });
});

async function openFile(dataDir: string): Promise<Shop> {
  await openShop({ dataDir }).close();
  writeFileSync(join(dataDir, FILE_NAME), await demoFile('mm'));
  return openShop({ dataDir });
}

const QUESTIONS: Record<string, (shop: Shop) => Promise<unknown>> = {
  'the list of jobs': ({ db }) => findJobs(db, { limit: 100 }),
  'the list of jobs, searched': ({ db }) => findJobs(db, { limit: 100, text: 'plain' }),
  'how many jobs stand where': ({ db }) => countByStage(db),
  'every job': async (shop) => each(shop, (id) => getJob(shop.db, id)),
  'every job’s history': async (shop) => each(shop, (id) => historyOf(shop.db, id)),
  'every job’s revisions': async (shop) => each(shop, (id) => revisionsOf(shop.db, id)),
  'every job’s readings': async (shop) => each(shop, (id) => allReadings(shop.db, id)),
  'every job’s photos': async (shop) => each(shop, (id) => photosOf(shop.db, id, 1_000)),
  'every job’s papers': async (shop) =>
    each(shop, async (id) =>
      (await signedPrints(shop.db, id)).map((print) => JSON.stringify(print).slice(0, 80)),
    ),
  'the ring doubts': ({ db }) => ringDoubts(db),
  people: ({ db }) => listPeople(db),
  'what was done about people': ({ db }) => peopleHistory(db, 100),
  slips: ({ db }) => findSlips(db, { limit: 100 }),
  'the catalog': ({ db }) => Promise.all(KINDS.map((kind) => listEntries(db, kind))),
  'the history of every entry': async ({ db }) => {
    const entries = (await Promise.all(KINDS.map((kind) => listEntries(db, kind)))).flat();
    return Promise.all(
      entries.map(async ({ kind, id }) => [await entryHistory(db, kind, id), await typedIn(db, kind, id)]),
    );
  },
  'checks on masters': async ({ db }) =>
    masterChecksOf(
      db,
      (await listEntries(db, 'gauge')).map(({ id }) => id),
    ),
};
const KINDS = [
  'family',
  'stud',
  'stack',
  'nut',
  'washer',
  'gauge',
  'steel',
  'lining',
  'lathe',
  'criteria',
] as const;

async function each<T>(shop: Shop, ask: (id: number) => Promise<T>): Promise<T[]> {
  const { jobs } = await findJobs(shop.db, { limit: 100 });
  expect(jobs.length).toBeGreaterThan(15);
  return Promise.all(jobs.toSorted((a, b) => a.id - b.id).map(({ id }) => ask(id)));
}

it.each(Object.entries(QUESTIONS))('%s are answered in one order, however the rows lie', async (_, ask) => {
  expect(await ask(backward)).toEqual(await ask(asWritten));
});

it('and a question without an order is answered backward here, so that this would be seen', async () => {
  const numbers = ({ db }: Shop) => sql<{ id: number }>`select id from job`.execute(db);
  const [one, two] = [await numbers(asWritten), await numbers(backward)];
  expect(two.rows).toEqual(one.rows.toReversed());
});

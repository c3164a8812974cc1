import Database from 'better-sqlite3';
import fc from 'fast-check';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { STAGES, type Stage } from '../../../shared/words/job.ts';
import { openShopInMemory, type Shop, write } from '../../../src/records/database/database.ts';
import { MIGRATIONS, migrate } from '../../../src/records/database/migrate.ts';
import { migratePostgres } from '../../../src/records/database/migratePostgres.ts';
import { openPostgres } from '../../../src/records/database/postgres.ts';
import { key } from '../../../src/records/database/writing.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { countByStage, findJobs } from '../../../src/records/jobs/findJobs.ts';
import { reviseJob } from '../../../src/records/jobs/reviseJob.ts';
import { as, looked, received } from '../samples.ts';
import { onEachDatabase, onPostgres, placeOnPostgres } from '../shops.ts';

/** More than the index is asked to name: what stands in all of them is read off the list instead. */
const MANY = 620;
const NASTY = [
  '"',
  "'",
  '50%',
  'k_7',
  'a\\b',
  'a\\_',
  '*',
  '-',
  '(',
  'NEAR',
  'or',
  'ästig',
  '😀',
  'éa😀b',
  'ﬁne',
];
const SYLLABLES = ['ab', 'ba', 'aba', 'q', 'zeb', 'ra', ...NASTY];

/** The same in every run. */
const references = fc.sample(
  fc.array(fc.array(fc.constantFrom(...SYLLABLES), { minLength: 1, maxLength: 4 }), { maxLength: 4 }),
  { numRuns: MANY, seed: 7 },
);

const joined = (one: readonly string[]) => one.join('');

onEachDatabase((engine) => {
  let shop: Shop;
  beforeAll(async () => {
    shop = await engine.openEmpty();
    await write(shop.db, async (trx) => {
      for (const [i, words] of references.entries()) {
        const customerReference = words.map(joined).join(' ').slice(0, 60);
        const receivedOn = `2026-0${1 + (i % 3)}-${String(1 + ((i * 7) % 28)).padStart(2, '0')}`;
        const job = await createJob(trx, as('TO'), { received: received({ customerReference, receivedOn }) });
        if (i % 3 !== 0) continue;
        await reviseJob(trx, as('TO'), { jobId: job.id, fromRevision: 1, what: 'looked', body: looked() });
      }
    });
  });
  afterAll(() => shop.close());

  /** What reading every row would find. */
  async function plainly(text: string, stages: readonly Stage[]): Promise<readonly number[]> {
    const rows = await shop.db.selectFrom('job').select(['id', 'received_on', 'search', 'stage']).execute();
    const words = key(text).split(' ');
    return rows
      .filter((row) => stages.includes(row.stage) && words.every((word) => row.search.includes(word)))
      .sort((a, b) => b.received_on.localeCompare(a.received_on) || b.id - a.id)
      .map(({ id }) => id);
  }

  test('the index finds what reading every job finds, also inside words, and in the same order', async () => {
    const anyWord = fc.oneof(
      fc.constantFrom(...references.flat().map(joined)),
      fc.constantFrom('alder', 'job number', '10'),
    );
    const part = fc
      .tuple(anyWord, fc.nat(3), fc.nat(12))
      .map(([word, from, length]) => [...word].slice(from, from + 1 + length).join(''));
    const text = fc.array(part, { minLength: 1, maxLength: 3 }).map((words) => words.join(' '));
    const asked = fc.record({
      text: text.filter((one) => key(one) !== '' && !/^\W*\d+\W*$/u.test(one)),
      stage: fc.constantFrom(STAGES, ['to-look'] as const, ['to-measure', 'to-look'] as const),
    });
    let few = 0;
    let most = 0;
    for (const question of fc.sample(asked, 250)) {
      const wanted = await plainly(question.text, question.stage);
      const { jobs } = await findJobs(shop.db, { ...question, limit: 200 });
      expect([question, jobs.map(({ id }) => id)]).toEqual([question, wanted.slice(0, 200)]);
      if (wanted.length > 0 && wanted.length < 20) few++;
      if (wanted.length > 500) most++;
    }
    expect([few > 10, most > 5]).toEqual([true, true]);
  });

  test('the pages of what is found by a word in every job have no gap and no repeat', async () => {
    const seen: number[] = [];
    let after: string | null = null;
    do {
      const question = { text: 'alder', stage: STAGES, limit: 190 };
      const page = await findJobs(shop.db, { ...question, ...(after !== null && { after }) });
      seen.push(...page.jobs.map(({ id }) => id));
      after = page.next;
    } while (after !== null);
    expect(seen).toEqual(await plainly('alder', STAGES));
  });

  test('jobs at each stage are counted, whichever stage most of them are at', async () => {
    const looks = Math.ceil(MANY / 3);
    const counts = await countByStage(shop.db);
    expect(counts).toMatchObject({ 'to-look': MANY - looks, 'to-measure': looks, signed: 0, closed: 0 });
  });

  test('words that are changed are found at once, and those before them no more', async () => {
    const one = await createJob(shop.db, as('TO'), { received: received({ note: 'came by xylophone' }) });
    const found = async (text: string) =>
      (await findJobs(shop.db, { text, limit: 5 })).jobs.map(({ id }) => id);
    expect(await found('xylophone')).toEqual([one.id]);
    const body = received({ note: 'came by yacht' });
    await reviseJob(shop.db, as('WQ'), { jobId: one.id, fromRevision: 1, what: 'received', body });
    expect([await found('xylophone'), await found('yacht'), await found('wq')]).toEqual([
      [],
      [one.id],
      [one.id],
    ]);
    await expect(
      write(shop.db, async (trx) => {
        const again = received({ note: 'came by zeppelin' });
        await reviseJob(trx, as('WQ'), { jobId: one.id, fromRevision: 2, what: 'received', body: again });
        throw new Error('and not kept');
      }),
    ).rejects.toThrow('and not kept');
    expect([await found('zeppelin'), await found('yacht')]).toEqual([[], [one.id]]);
  });
});

/** A job as an earlier version kept it. */
const BEFORE = `
  insert into job (id, number, number_key, plain_number, demo, created_at, revision, changed_at, stage, outcome,
    family_id, family_name, customer_reference, received_on, search) values (1, '7', '7', 7, 0,
    '2026-01-01T00:00:00.000Z', 1, '2026-01-01T00:00:00.000Z', 'to-look', null, 'alder', 'Alder', '', '2026-01-01',
    'job number 7' || chr(10) || 'old gramophone');
  insert into job_revision (job_id, revision, at, who, why, what, body)
    values (1, 1, '2026-01-01T00:00:00.000Z', 'AB', '', 'received', '{}');`;
const earlier = MIGRATIONS.slice(
  0,
  MIGRATIONS.findIndex(({ name }) => name === 'words'),
);
const now = () => new Date(0);

async function expectFound(shop: Shop): Promise<void> {
  for (const text of ['gramophone', 'mopho', 'ne', 'job']) {
    const { jobs } = await findJobs(shop.db, { text, limit: 5 });
    expect([text, jobs.map(({ number }) => number)]).toEqual([text, ['7']]);
  }
  await shop.close();
}

describe('a shop from before there was an index of words', () => {
  test('its jobs are found on SQLite', async () => {
    const raw = new Database(':memory:');
    migrate(raw, now, earlier);
    raw.exec(`begin; ${BEFORE.replace('chr', 'char')} commit;`);
    const file = raw.serialize();
    raw.close();
    await expectFound(openShopInMemory({ file }));
  });

  onPostgres('where there is PostgreSQL', () => {
    test('its jobs are found there', async () => {
      const place = await placeOnPostgres();
      const client = new pg.Client({ connectionString: place.url });
      await client.connect();
      await migratePostgres(client, now, 1000, earlier);
      await client.query(`begin; ${BEFORE} commit;`);
      await client.end();
      await expectFound(await openPostgres({ url: place.url, dataDir: ':memory:' }));
      await place.remove();
    });
  });
});

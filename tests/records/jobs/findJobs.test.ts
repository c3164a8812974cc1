import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { NewPhoto } from '../../../shared/words/photo.ts';
import type { Shop } from '../../../src/records/database/database.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { countByStage, findJobs, holdsDemo, type JobQuestion } from '../../../src/records/jobs/findJobs.ts';
import { reviseJob } from '../../../src/records/jobs/reviseJob.ts';
import { renewSearch } from '../../../src/records/jobs/searchWords.ts';
import { addPhoto } from '../../../src/records/photos/photos.ts';
import { refusalOf } from '../refusals.ts';
import { alder, as, decision, looked, measuredJob, received, setup, signedJob } from '../samples.ts';
import { onEachDatabase } from '../shops.ts';

const PHOTO: NewPhoto = {
  id: 'photo-1',
  place: { spot: 'job' },
  hash: 'a'.repeat(64),
  kind: 'jpeg',
  bytes: 1,
  width: 1,
  height: 1,
  note: 'a blue smear',
};

onEachDatabase((engine) => {
  let shop: Shop;
  beforeAll(async () => {
    shop = await engine.openEmpty();
    // 1 and 2 are received on 2026-03-02.
    await signedJob(shop.db);
    const { id } = await measuredJob(shop.db);
    await reviseJob(shop.db, as('AB'), {
      jobId: id,
      fromRevision: 4,
      what: 'decision',
      body: decision(4, { decision: 'replace', verdict: 'replace' }),
    });
    const birch = { familyId: 'birch-9', family: { ...alder, name: 'Birch 9 ÄSTIG' } };
    await createJob(shop.db, as('AB'), {
      number: 'K_7',
      received: received({ ...birch, receivedOn: '2026-02-01', customerReference: '50% paid' }),
    });
    await createJob(shop.db, as('AB'), {
      number: 'KX7',
      received: received({ receivedOn: '2026-04-01', customerReference: 'a\\b' }),
    });
    await createJob(shop.db, as('AB'), {
      number: '88',
      received: received({ ...birch, receivedOn: '2026-03-02', customerReference: '' }),
    });
  });
  afterAll(() => shop.close());

  const numbers = async (question: Omit<JobQuestion, 'limit'>) =>
    (await findJobs(shop.db, { limit: 50, ...question })).jobs.map((job) => job.number);

  describe('finding jobs', () => {
    test('jobs come newest first, by the day of receipt and then as they came', async () => {
      expect(await numbers({})).toEqual(['KX7', '88', '1002', '1001', 'K_7']);
    });

    test('a search takes as many words as it needs, and refuses more with a sentence', async () => {
      expect(await numbers({ text: Array.from({ length: 40 }, () => '10').join(' ') })).toEqual([
        '1002',
        '1001',
      ]);
      const refused = (text: string) => refusalOf(findJobs(shop.db, { limit: 50, text }));
      expect(await refused(Array.from({ length: 1100 }, () => 'a').join(' '))).toEqual({
        code: 'text-long',
        path: 'text',
        sentence: 'The search has 1100 words; at most 40 are allowed. Use fewer.',
      });
      expect(await refused('a'.repeat(401))).toMatchObject({ code: 'text-long', path: 'text' });
    });

    test.each<[string, Omit<JobQuestion, 'limit'>, string[]]>([
      ['a number', { text: '1001' }, ['1001']],
      ['part of a number, in any letter case', { text: 'kx' }, ['KX7']],
      ['an underscore, which stands for itself', { text: 'k_7' }, ['K_7']],
      ['a percent sign, which stands for itself', { text: '50%' }, ['K_7']],
      ['a backslash, which stands for itself', { text: 'a\\b' }, ['KX7']],
      ['a family in any letter case, beyond ASCII too', { text: 'ästig' }, ['88', 'K_7']],
      ['a customer reference', { text: 'VAN, BLUE' }, ['1002', '1001']],
      ['words that must all be there', { text: ' birch  paid ' }, ['K_7']],
      ['nothing but blanks', { text: '  ' }, ['KX7', '88', '1002', '1001', 'K_7']],
      ['what nobody wrote', { text: 'zebra' }, []],
      ['a quote, harmless', { text: "' or 1=1 --" }, []],
      ['a family', { familyId: 'birch-9' }, ['88', 'K_7']],
      ['a stage', { stage: 'to-look' }, ['KX7', '88', 'K_7']],
      ['two stages', { stage: ['signed', 'to-sign'] }, ['1002', '1001']],
      ['an outcome', { outcome: 'replace' }, ['1002']],
      ['from a day, included', { from: '2026-03-02' }, ['KX7', '88', '1002', '1001']],
      ['to a day, included', { to: '2026-03-02' }, ['88', '1002', '1001', 'K_7']],
      [
        'all at once',
        { text: 'alder', stage: 'signed', from: '2026-03-01', to: '2026-03-31', outcome: 'face' },
        ['1001'],
      ],
      ['none that is a demonstration', { demo: true }, []],
    ])('jobs are found by %s', async (_, question, found) => {
      expect(await numbers(question)).toEqual(found);
    });

    test('the pages of the list have no gap and no repeat, also when a job comes in between', async () => {
      const seen: string[] = [];
      let after: string | null = null;
      do {
        const page = await findJobs(shop.db, { limit: 2, ...(after === null ? {} : { after }) });
        seen.push(...page.jobs.map((job) => job.number));
        after = page.next;
      } while (after !== null);
      expect(seen).toEqual(['KX7', '88', '1002', '1001', 'K_7']);
      expect((await findJobs(shop.db, { limit: 5 })).next).toBeNull();
      expect((await findJobs(shop.db, { limit: 4 })).next).toBe('2026-03-02_1');
    });

    test.each<[string, NonNullable<JobQuestion['sort']>, string[]]>([
      [
        'the day of receipt, oldest first',
        { by: 'received', down: false },
        ['K_7', '1001', '1002', '88', 'KX7'],
      ],
      ['number, names after numbers', { by: 'number', down: false }, ['88', '1001', '1002', 'K_7', 'KX7']],
      ['number from the other end', { by: 'number', down: true }, ['1002', '1001', '88', 'KX7', 'K_7']],
      ['cover type', { by: 'type', down: false }, ['1001', '1002', 'KX7', 'K_7', '88']],
      ['customer, without one last', { by: 'customer', down: false }, ['K_7', 'KX7', '1001', '1002', '88']],
      ['customer from Z', { by: 'customer', down: true }, ['1002', '1001', 'KX7', 'K_7', '88']],
      ['state', { by: 'state', down: false }, ['KX7', '88', 'K_7', '1002', '1001']],
      ['state from the end', { by: 'state', down: true }, ['1001', '1002', 'KX7', '88', 'K_7']],
      ['decision, undecided last', { by: 'decision', down: false }, ['1001', '1002', 'KX7', '88', 'K_7']],
    ])('jobs are sorted by %s, page after page without gap or repeat', async (_, sort, found) => {
      expect(await numbers({ sort })).toEqual(found);
      for (const limit of [1, 2, 3]) {
        const seen: string[] = [];
        let after: string | null = null;
        do {
          const page = await findJobs(shop.db, { limit, sort, ...(after === null ? {} : { after }) });
          seen.push(...page.jobs.map((job) => job.number));
          after = page.next;
        } while (after !== null);
        expect(seen, `${limit} at a time`).toEqual(found);
      }
    });

    test('a sorted list is narrowed like any', async () => {
      const sort = { by: 'customer', down: false } as const;
      expect(await numbers({ sort, stage: 'to-look' })).toEqual(['K_7', 'KX7', '88']);
      expect(await numbers({ sort, stage: ['signed', 'to-look'] })).toEqual(['K_7', 'KX7', '1001', '88']);
      expect(await numbers({ sort, text: 'alder' })).toEqual(['KX7', '1001', '1002']);
      expect(await numbers({ sort, text: '88' })).toEqual(['88']);
    });

    test('the list shows what each job is', async () => {
      expect((await findJobs(shop.db, { text: '1001', limit: 1 })).jobs[0]).toMatchObject({
        id: 1,
        number: '1001',
        revision: 8,
        stage: 'signed',
        outcome: 'face',
        familyId: 'alder-11-plain',
        familyName: 'Alder 11 plain',
        customerReference: 'van, blue',
        receivedOn: '2026-03-02',
        demo: false,
      });
    });

    test.each([0, -1, 201, 1.5, Number.NaN])('a page of %d is refused', async (limit) => {
      expect((await refusalOf(findJobs(shop.db, { limit }))).code).toBe('bad-limit');
    });
    test('a place in the list that does not exist is refused', async () => {
      expect((await refusalOf(findJobs(shop.db, { limit: 5, after: 'x' }))).code).toBe('bad-cursor');
    });
  });

  test('every stage is counted, empty ones too', async () => {
    expect(await countByStage(shop.db)).toEqual({
      'to-look': 3,
      'to-measure': 0,
      'to-decide': 0,
      'to-cut': 0,
      'to-verify': 0,
      'to-sign': 1,
      signed: 1,
      closed: 0,
    });
  });

  test('a demo shop is known by its jobs', async () => {
    const other = await engine.openEmpty();
    await createJob(other.db, as('AB'), { received: received() });
    expect(await holdsDemo(other.db)).toBe(false);
    const demo = await createJob(other.db, as('AB'), { received: received(), demo: true });
    expect(await holdsDemo(other.db)).toBe(true);
    const looks = await reviseJob(other.db, as('AB'), {
      jobId: demo.id,
      fromRevision: 1,
      what: 'looked',
      body: looked(),
    });
    expect(looks.demo).toBe(true);
    await other.close();
  });

  test('one box finds a job by its number however it is written, and that job comes first', async () => {
    const shop = await engine.openEmpty();
    for (const number of ['1001', '11001', 'A-7']) {
      const note = number === 'A-7' ? 'came with job 1001' : '';
      await createJob(shop.db, as('AB'), { number, received: received({ note }) });
    }
    const found = async (text: string) =>
      (await findJobs(shop.db, { text, limit: 10 })).jobs.map(({ number }) => number);
    const written = ['1001', ' 1001 ', 'Job 1001', 'job:1001', '#1001', 'JOB  #1001', 'no. 1001'];
    const other = ['JOB-1001', 'job1001', 'Job no. 1001', 'job number 1001,', 'tag 1001', '1001.'];
    const scanned = ['http://shop.example:4180/jobs/1001', 'https://shop.example/jobs/1001#decide'];
    for (const text of [...written, ...other, ...scanned]) {
      expect([text, (await found(text))[0]]).toEqual([text, '1001']);
    }
    expect(await found('1001')).toEqual(['1001', 'A-7', '11001']);
    expect(await found('a-7')).toEqual(['A-7']);
    const page = await findJobs(shop.db, { text: '1001', limit: 1 });
    expect(page.jobs.map(({ number }) => number)).toEqual(['1001']);
    const behind = await findJobs(shop.db, { text: '1001', limit: 5, after: page.next! });
    expect(behind.jobs.map(({ number }) => number)).toEqual(['A-7', '11001']);
    await shop.close();
  });

  test('one box finds a job by initials, decision, and the words of notes and statements', async () => {
    const shop = await engine.openEmpty();
    const { id } = await signedJob(shop.db);
    const other = await createJob(shop.db, as('XY'), { received: received({ note: 'dropped once' }) });
    const ringWelded = { on: '2026-03-02', note: 'cooled in sand', joinedToPads: null };
    const edit = { jobId: other.id, fromRevision: 1, what: 'setup', body: { ...setup, ringWelded } } as const;
    await reviseJob(shop.db, as('XY'), edit);
    const found = async (question: object) =>
      (await findJobs(shop.db, { ...question, limit: 10 })).jobs.map(({ number }) => number);
    expect(await found({ text: 'measured, cut and' })).toEqual(['1001']);
    expect(await found({ text: 'face it' })).toEqual(['1001']);
    expect(await found({ text: 'dropped' })).toEqual(['1002']);
    expect(await found({ text: 'sand' })).toEqual(['1002']);
    const photo = { jobId: other.id, photo: PHOTO, keepFile: async () => {} };
    await addPhoto(shop.db, as('XY'), photo);
    expect(await found({ text: 'blue smear' })).toEqual(['1002']);
    expect(await found({ text: 'xy' })).toEqual(['1002']);
    expect([await found({ who: 'ab' }), await found({ who: 'XY' })]).toEqual([['1001'], ['1002']]);
    // A row from before all words could be found is made anew; the records stay as they are.
    await shop.db.updateTable('job').set({ search: '1001\nalder' }).where('id', '=', id).execute();
    expect(await found({ text: 'measured, cut and' })).toEqual([]);
    await renewSearch(shop.db);
    expect(await found({ text: 'measured, cut and' })).toEqual(['1001']);
    await shop.close();
  });
});

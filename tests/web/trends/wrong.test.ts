import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { getEntry, reviseEntry } from '../../../src/records/catalogue.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

const MARKED = { thing: 'family 1125-4-plain', since: '2026-09-01', reason: 'Wall mistyped.', who: 'AK' };

describe('something that was wrong', () => {
  it('is marked with a day and a reason', async () => {
    for (const missing of ['thing', 'since', 'reason', 'who']) {
      const refused = await program.post('/wrong', { ...MARKED, [missing]: '' });
      expect(refused.status, missing).toBe(422);
    }
    expect(await program.post('/wrong', MARKED)).toMatchObject({ status: 303, location: '/wrong/1' });
    expect((await program.get('/wrong')).text).toContain('Wall mistyped.');
  });

  it('lists every job that rested on it since, judged again with what is right, the worst first', async () => {
    const { db } = program.shop;
    const entry = (await getEntry(db, 'family', '1125-4-plain'))!;
    await reviseEntry(
      db,
      { who: 'AK', why: 'put right', now: () => new Date() },
      {
        kind: 'family',
        id: entry.id,
        fromRevision: entry.revision,
        body: { ...entry.body, makerMinimumWallMm: 4.95, makerMinimumWallSource: 'invented' },
      },
    );
    const page = await program.get('/wrong/1');
    expect(page.text).toContain('5 of 5 jobs to go through');
    const first = page.html.slice(page.html.indexOf('class="rested"')).slice(0, 2500);
    expect(first).toContain('Job 1001');
    expect(first).toContain('Judged again today: Replace it; then: Face it');
    expect((await program.get('/wrong/9')).status).toBe(404);
  });

  it('is closed job by job with a word, once', async () => {
    const closed = { job: '1', word: 'Called back.', who: 'AK' };
    expect((await program.post('/wrong/1/closed', { ...closed, word: '' })).status).toBe(422);
    expect((await program.post('/wrong/1/closed', closed)).status).toBe(303);
    expect((await program.post('/wrong/1/closed', closed)).status).toBe(409);
    expect((await program.post('/wrong/1/closed', { ...closed, job: '4' })).status).toBe(422);
    const page = await program.get('/wrong/1');
    expect(page.text).toContain('4 of 5 jobs to go through');
    expect(page.text).toContain('Called back.');
  });

  it('of a gauge can only be measured again, and none before the day is listed', async () => {
    const gauge = /value="(gauge [^"]+)"/.exec((await program.get('/wrong')).html)![1]!;
    await program.post('/wrong', { ...MARKED, thing: gauge, since: '2099-01-01' });
    expect((await program.get('/wrong/2')).text).toContain('No job names it from that day on.');
  });
});

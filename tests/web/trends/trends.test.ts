import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { type Served, serve } from '../program.ts';

describe('trends of the demo shop', () => {
  let program: Served;
  beforeAll(async () => {
    program = await serve({ demo: true });
  });
  afterAll(() => program.close());

  it('draw what came in, why covers went, their walls, cuts and times, each with its table and CSV', async () => {
    const page = await program.get('/trends');
    expect(page.status).toBe(200);
    for (const id of [
      'intake',
      'scrapped',
      'walls',
      'cuts',
      'times',
      'comebacks',
      'trend-bending',
      'patterns',
    ]) {
      expect(page.html, id).toContain(`<section id="${id}"`);
    }
    expect(page.text).toContain('19 jobs, without those closed');
    expect(page.text).toContain('too few');
    const links = [...page.html.matchAll(/href="(\/trends\/[^"]+\.csv)"/g)].map(([, href]) => href!);
    expect(new Set(links).size).toBe(9);
    for (const href of links) {
      const csv = await program.get(href);
      expect(csv.status, href).toBe(200);
      expect(csv.html.split('\r\n').length, href).toBeGreaterThan(2);
    }
    expect((await program.get('/trends/none.csv')).status).toBe(404);
  });

  it('compare the bending of covers that came back with the others', async () => {
    const { db } = program.shop;
    expect((await program.get('/trends')).text).toContain(
      'Bending was not worked out for any cover released yet',
    );
    await db.updateTable('job_trend').set({ peak_over_new: 1.25 }).where('outcome', '=', 'face').execute();
    const page = await program.get('/trends');
    expect(page.text).toMatch(/Did not come back 1 25 % more than new 25 % more than new/);
    expect(page.text).toMatch(/Came back 0 — —/);
    expect(page.text).toContain('it shows what went together, not what caused what');
    const csv = (await program.get('/trends/bending.csv')).html;
    expect(csv.split('\r\n').slice(1, 3)).toEqual(['came back,0,,', 'did not,1,1.25,1.25']);
    const other = await program.get('/trends?family=1150-6-billet');
    expect(other.text).toMatch(/Did not come back 0 — —/);
    await db.updateTable('job_trend').set({ peak_over_new: null }).execute();
  });

  it('are those of one cover type, and of some days', async () => {
    const one = await program.get('/trends?family=1050-4-ribbed');
    expect(one.text).toContain('4 jobs, without those closed');
    expect(one.text).toContain('1050-4 stamped, ribbed wall: 2 covers');
    expect(one.text).not.toContain('1125-4 stamped, plain wall:');
    expect((await program.get('/trends?from=2030-01-01')).text).toContain('No jobs found');
    const wrong = await program.get('/trends?from=soon');
    expect(wrong.status).toBe(422);
    expect(wrong.text).toContain('"soon" is not a date');
    const turned = await program.get('/trends?from=2026-11-02&to=2026-11-01');
    expect(turned.text).toContain('The last day is before the first.');
  });

  it('count a cover that came back, named when it is received and linked both ways', async () => {
    const form = { family: '1125-4-plain', receivedOn: '2026-11-24', customer: 'Demo customer 1', who: 'AK' };
    const refused = await program.post('/jobs', { ...form, comebackOf: '9999' });
    expect(refused.status).toBe(422);
    expect(refused.text).toContain('There is no job "9999" here.');
    expect(refused.html).toContain('value="9999"');
    const type = (await getJob(program.shop.db, '1001'))!.sections.received!.body.familyId;
    const made = await program.post('/jobs', {
      ...form,
      family: type,
      comebackOf: '1001',
      'ok.receivedOn': '2026-11-24',
    });
    expect(made.status).toBe(303);
    const later = await program.get(made.location!);
    expect(later.html).toContain('<a href="/jobs/1001">1001</a>');
    expect((await program.get('/jobs/1001')).html).toContain(`<a href="${made.location}">job`);
    const csv = (await program.get('/trends/comebacks.csv')).html;
    expect(csv).toContain('Face it,,,1,1,1,');
  });
});

describe('trends of a shop without a job', () => {
  it('say so, and lead to the first', async () => {
    const program = await serve({ demo: false });
    const page = await program.get('/trends');
    expect(page.text).toContain('No jobs yet');
    expect(page.html).toContain('href="/jobs/new"');
    await program.close();
  });
});

import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

const receive = (more: Readonly<Record<string, string>>) =>
  program.post('/jobs', { family: '1125-4-billet', receivedOn: '2026-11-24', who: 'AA', ...more });

describe('a cover’s own number', () => {
  it('ties its jobs together, however it is typed, and is found by search', async () => {
    expect((await receive({ number: 'first', coverNumber: 'KX 7' })).status).toBe(303);
    const alone = await program.get('/jobs/first');
    expect(alone.text).toContain('Cover’s own number KX 7');
    expect(alone.html).not.toContain('id="same-cover-jobs"');
    expect((await receive({ number: 'second', coverNumber: ' kx  7 ' })).status).toBe(303);
    expect((await receive({ number: 'third', coverNumber: 'KX-7' })).status).toBe(303);
    expect((await program.get('/jobs/third')).text).toContain('2 other jobs');
    const { text } = await program.get('/jobs/second');
    expect(text).toContain('2 other jobs');
    expect(text).toContain('Job first , Nov 24, 2026: 1125-4 billet.');
    const found = await program.get('/jobs?text=kx+7');
    expect(found.text).toContain('first');
    expect(found.text).toContain('second');
  });

  it('lists its earlier jobs at receipt, with what was typed kept', async () => {
    const shown = await receive({ coverNumber: 'KX 7', note: 'back again', lookUp: '1' });
    expect(shown.status).toBe(200);
    expect(shown.text).toContain('3 other jobs');
    expect(shown.html).toContain('back again');
    expect((await receive({ coverNumber: 'unknown', lookUp: '1' })).html).not.toContain(
      'id="same-cover-jobs"',
    );
  });

  it('stands on sheet and tag, and heat marks of its jobs stand side by side', async () => {
    const heads = { 'content-type': 'application/json' };
    for (const number of ['1001', '1008']) {
      const { job } = await (await fetch(`${program.url}/api/jobs/${number}`)).json();
      const { familyId, receivedOn } = job.sections.received.body;
      const received = { familyId, receivedOn, coverNumber: 'QR-12' };
      const body = { fromRevision: job.revision, who: 'AA', why: 'its number was found', received };
      const put = { method: 'PUT', headers: heads, body: JSON.stringify(body) };
      expect((await fetch(`${program.url}/api/jobs/${number}/received`, put)).status).toBe(200);
    }
    expect((await program.get('/jobs/1001/tag')).text).toMatch(/Cover number\s+QR-12/);
    const sheet = await program.get('/jobs/1001/sheet');
    expect(sheet.text).toContain('Cover type, cover number');
    expect(sheet.text).toContain(', QR-12');
    const { html, text } = await program.get('/jobs/1008');
    expect(text).toContain('Heat marks of this cover, job by job');
    const table = html.slice(html.indexOf('Heat marks of this cover, job by job. Advice'));
    expect(table.slice(0, table.indexOf('</table>'))).toMatch(/This job[\s\S]*1001|1001[\s\S]*This job/);
  });

  it('too long is refused at its box', async () => {
    expect((await receive({ coverNumber: 'x'.repeat(41) })).status).toBe(422);
  });
});

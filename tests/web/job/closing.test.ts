import { afterAll, beforeAll, expect, it } from 'vitest';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

const NUMBER = '1016';
const job = async () => (await getJob(program.shop.db, NUMBER))!;
const from = async () => String((await job()).revision);
const close = async (closed: '0' | '1', why: string) =>
  program.post(`/jobs/${NUMBER}/closed`, { closed, why, who: 'AK', from: await from() });
const listed = async (query: string) =>
  (
    (await (await fetch(`${program.url}/api/jobs?${query}`)).json()) as { jobs: { number: string }[] }
  ).jobs.map(({ number }) => number);

it('is refused without a reason, beside its box', async () => {
  const refused = await close('1', ' ');
  expect(refused.status).toBe(422);
  expect(refused.html).toContain('closed-form-why-error');
  expect(refused.text).toContain('Enter why the job is closed.');
  expect((await job()).stage).toBe('to-measure');
});

it('a job received by mistake is closed with a reason and leaves the lists, unless they are asked for it', async () => {
  const readingsBefore = (await job()).readings.length;
  expect(await listed('')).toContain(NUMBER);
  expect((await close('1', 'came in twice')).status).toBe(303);
  expect((await job()).stage).toBe('closed');
  expect((await job()).readings).toHaveLength(readingsBefore);
  for (const query of ['', 'stage=open', 'text=demo'])
    expect(await listed(query), query).not.toContain(NUMBER);
  for (const query of ['stage=closed', 'stage=all', `text=${NUMBER}`, `text=job%20${NUMBER}`]) {
    expect(await listed(query), query).toContain(NUMBER);
  }
  expect((await program.get('/jobs')).html).not.toContain(`href="/jobs/${NUMBER}"`);
  expect((await program.get('/jobs?stage=closed')).html).toContain(`href="/jobs/${NUMBER}"`);
  const page = await program.get(`/jobs/${NUMBER}`);
  expect(page.text).toContain('came in twice');
  expect(page.html).not.toContain('id="before-form"');
  expect((await program.get(`/jobs/${NUMBER}/history`)).text).toMatch(/Closed by AK.*came in twice/);
});

it('nothing is measured, decided or added while it is closed, by page or JSON', async () => {
  const revision = await from();
  const who = 'AK';
  for (const [path, fields] of [
    ['looked', { crackTest: 'none-found' }],
    ['received', { family: '1125-4-plain', receivedOn: '2026-11-20', customer: 'other' }],
    ['readings', { pass: 'before', token: 'token-before-1', 'at.0': '0/115', 'w.0': '4.9', unit: 'mm' }],
  ] as const) {
    const refused = await program.post(`/jobs/${NUMBER}/${path}`, { ...fields, who, from: revision });
    expect(refused.status, path).toBe(422);
    expect(refused.text, path).toContain('was closed by AK');
  }
  const sent = await fetch(`${program.url}/api/jobs/${NUMBER}/plan`, {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ fromRevision: Number(revision), who, plan: { plannedCutMm: 0.2, typed: '0.2' } }),
  });
  expect(sent.status).toBe(422);
  expect(await from()).toBe(revision);
});

it('its measuring page does not open for measuring, and leads to where it is opened again', async () => {
  for (const path of ['measure', 'measure/paste']) {
    const page = await program.get(`/jobs/${NUMBER}/${path}`);
    expect(page.text, path).toContain(`Job ${NUMBER} is closed`);
    expect(page.text).toContain('came in twice');
    expect(page.html).not.toMatch(/id="reading"|<textarea/);
    expect(page.html).toContain(`href="/jobs/${NUMBER}#close"`);
  }
});

it('is opened again with a reason, where it was', async () => {
  expect((await close('0', '')).text).toContain('Enter why the job is opened again.');
  const sent = await fetch(`${program.url}/api/jobs/${NUMBER}/closed`, {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({
      fromRevision: Number(await from()),
      who: 'BB',
      why: 'it is the other one',
      closed: { closed: false },
    }),
  });
  expect(sent.status).toBe(200);
  expect((await job()).stage).toBe('to-measure');
  expect(await listed('')).toContain(NUMBER);
  expect((await program.get(`/jobs/${NUMBER}/history`)).text).toMatch(
    /Closed by AK.*came in twice.*Opened again by BB.*it is the other one/,
  );
});

it('a job that changed meanwhile is not closed unseen, and one that is signed is not closed', async () => {
  const late = await program.post(`/jobs/${NUMBER}/closed`, { closed: '1', why: 'x', who: 'AK', from: '1' });
  expect(late.status).toBe(409);
  const signed = (await getJob(program.shop.db, '1001'))!;
  const refused = await program.post('/jobs/1001/closed', {
    closed: '1',
    why: 'x',
    who: 'AK',
    from: String(signed.revision),
  });
  expect(refused.status).toBe(422);
  expect(refused.text).toContain('so it can’t be closed');
});

import { afterAll, beforeAll, expect, it, vi } from 'vitest';
import { getEntry } from '../../../src/records/catalogue.ts';
import { findJobs } from '../../../src/records/jobs/findJobs.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { goMetric } from '../metric.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
  await goMetric(program.shop.db);
});
afterAll(() => program.close());

const FIELDS = {
  name: 'Bench lathe',
  leastRpm: '50',
  mostRpm: '450',
  cuttingSpeedMPerMin: '100',
  noseRadiusMm: '0.8',
  roughingLimitMm: '0.2',
  finishingCutMm: '0.1',
  roughingFeedMm: '0.2',
  finishingFeedMm: '0.1',
  source: 'its manual',
  sourceOn: '2026-05-04',
  unit: 'mm',
  who: 'AK',
};
const lathe = (revision?: number) => getEntry(program.shop.db, 'lathe', 'bench-lathe', revision);

async function jobToCut() {
  const { jobs } = await findJobs(program.shop.db, { stage: 'to-cut', limit: 1 });
  return (await getJob(program.shop.db, jobs[0]!.id))!;
}
const plan = async (number: string, fields: Record<string, string>) => {
  const { revision } = (await getJob(program.shop.db, number))!;
  return program.post(`/jobs/${number}/plan`, {
    from: String(revision),
    who: 'AK',
    cut: '',
    ...fields,
  });
};

it('a lathe is added by form, refused with its range crossed, asked about, copied, changed and retired', async () => {
  const crossed = await program.post('/catalogue/lathe', { ...FIELDS, leastRpm: '290', mostRpm: '280' });
  expect([crossed.status, crossed.text]).toEqual([
    422,
    expect.stringContaining('The minimum rpm is 290 rpm; it must be no more than the maximum, 280 rpm.'),
  ]);
  const slip = await program.post('/catalogue/lathe', { ...FIELDS, roughingLimitMm: '2' });
  expect([slip.status, slip.text]).toEqual([422, expect.stringContaining('0.2')]);
  expect((await program.post('/catalogue/lathe', FIELDS)).location).toBe('/catalogue?shelf=lathe');
  expect((await program.get('/catalogue?shelf=lathe')).text).toMatch(/Bench lathe 50 450 100 m\/min 0\.20/);
  const like = await program.get('/catalogue/lathe/new?like=bench-lathe');
  expect(like.html).toMatch(/name="mostRpm"[^>]*value="450"/);
  const change = { ...FIELDS, mostRpm: '400', from: '1', why: 'a new belt' };
  expect((await program.post('/catalogue/lathe/bench-lathe', change)).status).toBe(303);
  const use = { from: '2', who: 'AK', why: 'sold', unit: 'mm' };
  await program.post('/catalogue/lathe/bench-lathe/retire', use);
  expect((await lathe())?.retired).toBe(true);
  await program.post('/catalogue/lathe/bench-lathe/reinstate', { ...use, from: '3', why: 'kept' });
  expect((await program.get('/catalogue/lathe/bench-lathe')).text).toContain('No job names this lathe.');
});

it('goes out as CSV and JSON, and a file that changes it is shown first', async () => {
  const csv = await (await fetch(`${program.url}/catalogue/lathe.csv`)).text();
  expect(csv).toMatch(
    /^bench-lathe,Bench lathe,4,no,50,400,100,0\.8,0\.2,0\.1,0\.2,0\.1,its manual,2026-05-04/m,
  );
  const answer = await fetch(`${program.url}/api/catalogue/lathe`);
  const { entries } = (await answer.json()) as { entries: readonly { id: string }[] };
  expect(entries.find(({ id }) => id === 'bench-lathe')).toMatchObject({
    revision: 4,
    body: { mostRpm: 400 },
  });
  const form = new FormData();
  form.set('file', new Blob([csv.replace(',50,400,', ',50,380,')], { type: 'text/csv' }), 'lathes.csv');
  const sent = await fetch(`${program.url}/import/lathe`, {
    ...{ method: 'POST', body: form, redirect: 'manual', headers: { origin: program.url } },
  });
  const preview = () => program.get(sent.headers.get('location')!);
  await vi.waitUntil(async () => /400.*380/.test((await preview()).text), { timeout: 60_000 });
  expect((await lathe())?.revision).toBe(4);
});

it('plans the passes of the job that chooses it, which stays decided and keeps its revision', async () => {
  const { number, stage } = await jobToCut();
  const before = (await program.get(`/jobs/${number}`)).text;
  expect(before).toMatch(/Cut plan \(advice\)/);
  expect(before).not.toContain('Lathe: ');
  const tried = (await getJob(program.shop.db, number))!.sections.plan?.body.typed ?? '';

  const other = await plan(number, { cut: tried, lathe: 'No such lathe' });
  expect([other.status, other.text]).toEqual([
    422,
    expect.stringContaining('has no lathe named "No such lathe"'),
  ]);
  expect((await plan(number, { cut: tried, lathe: 'bench lathe' })).status).toBe(303);
  const now = (await getJob(program.shop.db, number))!;
  expect(now.stage).toBe(stage);
  expect(now.sections.plan!.body.lathe).toEqual({
    id: 'bench-lathe',
    revision: 4,
    lathe: (await lathe())!.body,
  });
  const after = (await program.get(`/jobs/${number}`)).text;
  expect(after).toContain('Lathe: Bench lathe, the catalog’s revision 4.');
  const rpm = (text: string) => Number(/Cut plan \(advice\) (\d+) rpm/.exec(text)?.[1]);
  expect(rpm(after)).toBeLessThan(rpm(before));
  expect((await program.get(`/jobs/${number}/sheet`)).text).toContain('Bench lathe, revision 4:');
  const used = (await program.get('/catalogue/lathe/bench-lathe')).text;
  expect(used.slice(used.indexOf('Where it is used'))).toContain(`1 job: Job ${number}`);

  await program.post('/catalogue/lathe/bench-lathe', { ...FIELDS, mostRpm: '350', from: '4', why: 'worn' });
  expect((await program.get(`/jobs/${number}`)).text).toContain('Bench lathe, the catalog’s revision 4.');
  // Another cut is another matter: it has to be decided.
  expect((await plan(number, { cut: '0.31', lathe: 'Bench lathe, revision 4' })).status).toBe(303);
  const replanned = (await getJob(program.shop.db, number))!;
  expect([replanned.stage, replanned.sections.plan!.body.lathe?.revision]).toEqual(['to-decide', 4]);
});

it('a script sends a lathe as the catalog has it, and no other', async () => {
  const { jobs } = await findJobs(program.shop.db, { stage: 'to-decide', limit: 1 });
  const { number } = jobs[0]!;
  const { id, revision, body } = (await lathe())!;
  const send = async (mostRpm: number) => {
    const job = (await getJob(program.shop.db, number))!;
    const chosen = { id, revision, lathe: { ...body, mostRpm } };
    return fetch(`${program.url}/api/jobs/${number}/plan`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({
        ...{ fromRevision: job.revision, who: 'AK' },
        plan: { plannedCutMm: null, typed: '', lathe: chosen },
      }),
    });
  };
  const refused = await send(999);
  expect([refused.status, await refused.text()]).toEqual([
    422,
    expect.stringContaining('This is not revision 5'),
  ]);
  expect((await send(350)).status).toBe(200);
});

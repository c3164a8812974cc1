import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findJobs } from '../../../src/records/jobs/findJobs.ts';
import { goMetric } from '../metric.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
  await goMetric(program.shop.db);
});
afterAll(() => program.close());

/** Design page 6, 10.2, first set: computed by an independent second implementation, not published. */
const SET = [
  ['4.92', '0.06', '0.20'],
  ['4.90', '0.05', ''],
  ['4.86', '0.01', '0.12'],
  ['4.83', '-0.02', ''],
  ['4.80', '-0.05', '0.25'],
  ['4.81', '-0.04', ''],
  ['4.85', '0', '0.10'],
  ['4.90', '0.04', ''],
  ['4.93', '0.07', '0.10'],
  ['4.86', '0.01', '0.05'],
  ['4.79', '-0.06', '0.15'],
  ['4.85', '0', '0.05'],
] as const;
const typed = Object.fromEntries(
  SET.flatMap(([wall, face, mark], i) => [
    [`w.${i}`, wall],
    [`f.${i}`, face],
    [`d.${i}`, mark],
  ]),
);
const quick = (more: Record<string, string>, path = '/cover') =>
  program.get(
    `${path}?${new URLSearchParams({ family: 'metric-4', crack: 'none-found', ...typed, ...more })}`,
  );

describe('the answer to what if another cut were taken', () => {
  it('says on the quick page what each cut would leave, and agrees with the page that is asked for it', async () => {
    const deeper = await quick({ try: '0.52' }, '/cover/what-if');
    expect(deeper.text).toContain('0.52 mm: Face it: 0.52 mm.');
    expect(deeper.text).toContain('leaves 4.400 mm');
    expect((await quick({ cut: '0.52' })).text).toContain('leaves 4.400 mm');
    expect((await quick({ try: '0.7' }, '/cover/what-if')).text).toContain('Change the cut');
    expect((await quick({ try: '0.30' }, '/cover/what-if')).text).toMatch(/Cleans up no/);
    expect((await quick({ try: 'deep' }, '/cover/what-if')).text).toContain('Measure the wall first');
  });

  it('says it of a job, and keeps nothing', async () => {
    const { jobs } = await findJobs(program.shop.db, { stage: 'to-decide', limit: 1 });
    const job = jobs[0]!;
    const page = await program.get(`/jobs/${job.number}/what-if?try=0.1`);
    expect(page.status).toBe(200);
    expect(page.text).toContain('0.10 mm:');
    const again = (await findJobs(program.shop.db, { text: job.number, limit: 5 })).jobs.find(
      (one) => one.id === job.id,
    );
    expect(again?.revision).toBe(job.revision);
  });
});

describe('the cut plan', () => {
  it('tells passes, speed, time and finish of the shop’s lathe on quick page and job; the sheet has passes and speed', async () => {
    const page = await quick({});
    // 0.42: two of 0.16 and the finishing 0.10; 140 m/min at Ø 264 is 169 rpm; Rt 0.1²/(8·0.8) = 1.6 µm.
    expect(page.text).toMatch(/1 roughing 0\.16 0\.16 0\.200/);
    expect(page.text).toMatch(/3 finishing, last 0\.10 0\.42 0\.100/);
    expect(page.text).toContain('169 rpm');
    expect(page.text).toContain('Rt 1.6 µm');
    const { jobs } = await findJobs(program.shop.db, { stage: 'to-cut', limit: 1 });
    const job = await program.get(`/jobs/${jobs[0]!.number}`);
    expect(job.text).toContain('Cut plan (advice)');
    const rpm = /\d+ rpm/.exec(job.text)?.[0];
    expect(rpm).toBeDefined();
    const { text } = await program.get(`/jobs/${jobs[0]!.number}/sheet`);
    const plan = text.slice(text.indexOf('Cut plan, advice: '));
    expect(plan).toMatch(/^Cut plan, advice: \d\.\d{2,3} mm from the highest point/);
    expect(plan).toContain('1 roughing');
    expect(plan).toContain(`${rpm}, `);
  });

  it('is not made for a lathe nobody has described, and a half described one is refused', async () => {
    const bare = await serve({ demo: false });
    const page = await bare.get(
      `/cover?${new URLSearchParams({ family: 'own', studs: '4', circle: '286', trackInner: '214', trackOuter: '264', nominal: '5', 'w.0': '4.9' })}`,
    );
    expect(page.text).toContain('No passes are planned: the lathe is not described yet.');
    const half = await bare.post('/criteria', {
      from: '0',
      who: 'AK',
      why: 'first',
      shopName: 'Bench',
      allowance: '0.05',
      confidence: '95',
      protrusion: '1',
      start: '2',
      leastRpm: '900',
      mostRpm: '100',
    });
    expect(half.status).toBe(422);
    expect(half.text).toContain('Cutting speed is empty');
    await bare.close();
  });
});

describe('unbalance', () => {
  it('is judged at the shop’s grade and speed, and says where to correct it', async () => {
    // Against G 6.3, 3 kg, 3000 rpm: 60.2 g·mm. The face was flat and the wall uneven, so facing leaves it so.
    const page = await quick(Object.fromEntries(SET.map((_, i) => [`f.${i}`, '0'])));
    expect(page.text).toMatch(/The limit is 60\.2 g·mm\./);
    expect(page.text).toMatch(/To correct it, take [\d.]+ g off at the bolt circle, at \d+°/);
    expect((await quick({})).text).toMatch(/That is within the limit of 60\.2 g·mm/);
  });
});

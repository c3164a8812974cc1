import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoGauges } from '../../../data/demo/gauges.ts';
import type { ChosenGauge } from '../../../shared/words/job.ts';
import { addEntry, getEntry, reviseEntry } from '../../../src/records/catalogue.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { reviseJob } from '../../../src/records/jobs/reviseJob.ts';
import { currentCriteria, saveCriteria } from '../../../src/records/shopCriteria.ts';
import { setup } from '../../records/samples.ts';
import { type Served, serve } from '../program.ts';
import { PLACES, readingsForm, shopWith, step } from '../steps.ts';

const later = { who: 'AK', why: 'put right', now: () => new Date('2026-11-24T18:00:00Z') };
const { id, gauge } = demoGauges[0]!;

describe('a gauge that was wrong', () => {
  let program: Served;
  beforeAll(async () => {
    program = await shopWith({ minimumWallMm: 4.3, confidence: 0.95 });
    const { db } = program.shop;
    await addEntry(db, later, { kind: 'gauge', id, body: gauge });
    await program.post('/jobs', { family: 'alder', receivedOn: '2026-11-24', who: 'AK' });
    await step(program, 'looked', { crackTest: 'none-found', crackMethod: 'dye', who: 'AK' });
    const chosen: ChosenGauge = { use: 'wall', id, revision: 1, gauge };
    const job = (await getJob(db, '1001'))!;
    const figures = {
      standardUncertaintyMm: gauge.calibrationUMm! / 2,
      resolutionMm: gauge.resolutionMm,
      repeatabilityMm: gauge.repeatabilityMm,
      faceStandardUncertaintyMm: null,
      cutSettingStandardUncertaintyMm: null,
    };
    await reviseJob(db, later, {
      jobId: job.id,
      fromRevision: job.revision,
      what: 'setup',
      body: { ...setup, gauge: gauge.name, gaugeFigures: figures, gauges: [chosen] },
    });
    await step(
      program,
      'readings',
      readingsForm(
        'before',
        PLACES.map(() => '4.45'),
      ),
    );
    const decided = await step(program, 'decision', {
      decision: 'face',
      criteria: String((await currentCriteria(db)).revision),
      who: 'AK',
    });
    expect(decided.status).toBe(303);
    const from = (await getJob(db, '1001'))!.revision;
    const on = await program.post('/shelf/1001', {
      what: 'put',
      from: '0',
      lies: 'rack B',
      who: 'AK',
      job: String(from),
    });
    expect(on.status).toBe(303);
  });
  afterAll(() => program.close());

  const MARK = { thing: `gauge ${id}`, since: '2026-11-24', reason: 'It read high.', who: 'AK', unit: 'mm' };

  it('is asked what is right; a slip and what is right of no gauge are said at their box', async () => {
    const slip = await program.post('/wrong', { ...MARK, bias: '3' });
    expect(slip.status).toBe(422);
    expect(slip.text).toContain('Did you mean');
    const none = await program.post('/wrong', { ...MARK, thing: 'criteria shop', bias: '0.01' });
    expect(none.status).toBe(422);
    expect(none.text).toContain('What is right of a gauge is entered');
    expect((await program.post('/wrong', { ...MARK, bias: 'zz' })).status).toBe(422);
    expect((await program.get('/wrong')).text).not.toContain('It read high.');
  });

  it('without what is right, the job can only be measured again', async () => {
    expect((await program.post('/wrong', MARK)).location).toBe('/wrong/1');
    const page = await program.get('/wrong/1');
    expect(page.text).toContain('What is right is not entered, so nothing is worked out again.');
    expect(page.text).toContain('measure it again with a sound gauge');
  });

  it('with its bias, walls are put right and the verdict then and now stand side by side; the shelf says so first', async () => {
    expect((await program.post('/wrong', { ...MARK, bias: '0.2' })).location).toBe('/wrong/2');
    const page = await program.get('/wrong/2');
    expect(page.text).toContain(
      'It read 0.2 mm too much. Walls it read from that day on are worked out again',
    );
    expect(page.text).toContain('Judged again today: Replace it; then: Face it');
    expect(page.text).toContain('On the shelf now');
    expect(page.text).toContain('rack B');
    // 4.45 mm less 0.05 mm of clean-up allowance stays above 4.3 mm where the gauge was off by little.
    await program.post('/wrong', { ...MARK, bias: '0.002' });
    expect((await program.get('/wrong/3')).text).toContain('Judged again today it says the same: Face it');
  });

  it('with its right uncertainty, how sure it is is worked out again', async () => {
    await program.post('/wrong', { ...MARK, rightU: '0.15', 'ok.rightU': '0.15' });
    const page = await program.get('/wrong/4');
    expect(page.text).toContain('Its right calibration uncertainty is 0.15 mm');
    expect(page.text).toContain('Judged again today: Measure again; then: Face it');
    expect((await getJob(program.shop.db, '1001'))!.readings[0]!.valueMm).toBe(4.45);
  });

  it('readings of before that day are left as they were', async () => {
    const job = (await getJob(program.shop.db, '1001'))!;
    const { readAgain } = await import('../../../src/shop/trends/readAgain.ts');
    const right = { id, biasMm: 0.2, calibrationUMm: null };
    const walls = (from: string) =>
      readAgain(job, { ...right, from }).readings.filter(({ kind }) => kind === 'wall');
    expect(walls('2026-11-24T00:00:00.000Z').every(({ valueMm }) => valueMm === 4.25)).toBe(true);
    expect(walls('2026-12-24T00:00:00.000Z')).toEqual(job.readings.filter(({ kind }) => kind === 'wall'));
    expect(readAgain(job, { ...right, id: 'other', from: '' })).toBe(job);
  });
});

describe('what a counter slip rested on', () => {
  let program: Served;
  beforeAll(async () => {
    program = await serve({ demo: true, unit: 'in' });
  });
  afterAll(() => program.close());
  const QUESTION = { stack: 'two-piece-four-3-8-24', stud: 'long-3-8-24', pull: '0.16', unit: 'in' };
  const hidden = (html: string, name: string) => new RegExp(`name="${name}" value="([^"]*)"`).exec(html)![1]!;

  it('is listed with it, answered again with what is right, and closed with a word, once', async () => {
    const { db } = program.shop;
    const { html } = await program.get(`/stud/slip?${new URLSearchParams(QUESTION)}`);
    const form = { ...QUESTION, sentId: hidden(html, 'sentId'), seen: hidden(html, 'seen') };
    expect((await program.post('/slips', { ...form, who: 'BB', customer: 'Demo 12' })).status).toBe(303);
    const stack = (await getEntry(db, 'stack', QUESTION.stack))!;
    const layers = stack.body.stack.layers.map((one) => ({ ...one, thicknessMm: one.thicknessMm + 6 }));
    await reviseEntry(db, later, {
      kind: 'stack',
      id: stack.id,
      fromRevision: stack.revision,
      body: { ...stack.body, stack: { ...stack.body.stack, layers } },
    });
    const mark = { since: '2026-11-24', reason: 'Mistyped.', who: 'AA' };
    await program.post('/wrong', { ...mark, thing: `stack ${stack.id}` });
    const page = await program.get('/wrong/1');
    expect(page.text).toContain('1 of 1 counter slips to go through.');
    expect(page.text).toMatch(/Slip S-1\s*, Nov 24, 2026/);
    expect(page.text).toMatch(/Answered again today: \S.*; then: /);
    await program.post('/wrong', { ...mark, thing: 'stud long-7-16-20' });
    const stud = await program.post('/wrong', { ...mark, thing: 'stud long-3-8-24', since: '2026-11-25' });
    expect((await program.get(stud.location!)).text).not.toContain('counter slips');
    const gone = { slip: '1', word: 'Called; sent the right one.', who: 'AA' };
    expect((await program.post('/wrong/1/closed', { ...gone, word: ' ' })).status).toBe(422);
    expect((await program.post('/wrong/1/closed', { ...gone, slip: '7' })).status).toBe(422);
    expect((await program.post('/wrong/1/closed', gone)).status).toBe(303);
    expect((await program.post('/wrong/1/closed', gone)).status).toBe(409);
    const closed = await program.get('/wrong/1');
    expect(closed.text).toContain('0 of 1 counter slips to go through.');
    expect(closed.text).toContain('Called; sent the right one.');
  });

  it('one revision of the limits is chosen by itself', async () => {
    const { db } = program.shop;
    const { body, revision } = await currentCriteria(db);
    await saveCriteria(db, later, { fromRevision: revision, body: { ...body, typicalCutMm: 0.3 } });
    const list = await program.get('/wrong');
    expect(list.text).toContain('Shop limits (every revision)');
    expect(list.text).toContain(`Shop limits, revision ${revision + 1} (AK, Nov 24, 2026)`);
    const mark = { since: '2026-01-01', reason: 'Wrong.', who: 'AA' };
    const every = (await program.post('/wrong', { ...mark, thing: 'criteria shop' })).location!;
    const one = (await program.post('/wrong', { ...mark, thing: `criteria shop ${revision + 1}` })).location!;
    expect((await program.get(every)).text).toMatch(/\d+ of \d+ jobs to go through/);
    expect((await program.get(one)).text).toContain('No job names it from that day on.');
    expect((await program.post('/wrong', { ...mark, thing: 'criteria shop 99' })).status).toBe(422);
  });
});

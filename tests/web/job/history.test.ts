import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import type { Served } from '../program.ts';
import { measured, PLACES, readingsForm, revisionNow, rowsOf, saveLimits, shopWith, step } from '../steps.ts';

let program: Served;
beforeEach(async () => {
  program = await shopWith();
});
afterEach(() => program.close());

describe('the history of a job', () => {
  test('tells cracks, a reading corrected, one withdrawn and the cut to try in plain words side by side', async () => {
    await measured(program);
    const looked = await program.get('/jobs/1001/history/2');
    expect(rowsOf(looked.html)).toEqual([
      ['Crack test', 'not done yet', 'no cracks found'],
      ['Crack test method', 'not given', 'dye penetrant'],
    ]);

    const { readings } = (await getJob(program.shop.db, '1001'))!;
    const wallAt = (angleDeg: number) =>
      readings.find((one) => one.kind === 'wall' && one.angleDeg === angleDeg && one.radiusMm === 110)!;
    const change = {
      ...readingsForm(
        'before',
        PLACES.map(() => '4.90'),
        { token: 'token-second' },
      ),
      'w.2': '4.87',
      'was.w.2': wallAt(90).id,
      'w.3': '',
      'was.w.3': wallAt(135).id,
    };
    expect((await program.post('/jobs/1001/readings', change)).status).toBe(303);
    const corrected = await program.get('/jobs/1001/history/4');
    expect(corrected.text).toContain('1 reading corrected, 1 withdrawn');
    expect(rowsOf(corrected.html)).toEqual([
      ['Wall behind stud 2, r 110 mm', '4.9 mm', '4.87 mm'],
      ['Wall between studs 2 and 3, r 110 mm', '4.9 mm', 'withdrawn'],
    ]);

    await step(program, 'plan', { cut: '0.012 in' });
    const plan = await program.get('/jobs/1001/history/5');
    expect(rowsOf(plan.html)).toEqual([['Planned cut', 'the least that cleans up', '0.3048 mm']]);
    const inInches = await fetch(`${program.url}/jobs/1001/history/5`, { headers: { cookie: 'unit=in' } });
    expect(rowsOf((await inInches.text()).replaceAll('\u00a0', ' '))).toEqual([
      ['Planned cut', 'the least that cleans up', '0.012 in'],
    ]);
  });

  test('tells all of it, newest first, with who, when and why, and a decision with its verdict', async () => {
    await measured(program);
    await step(program, 'decision', {
      decision: 'replace',
      reason: 'the customer wants a new one',
      who: 'BL',
    });
    const page = await program.get('/jobs/1001/history');
    expect(page.status).toBe(200);
    const heads = [...page.html.matchAll(/<h2>Revision (\d+): (.*?)<\/h2>/g)].map(([, n]) => Number(n));
    expect(heads).toEqual([4, 3, 2, 1]);
    expect(page.text).toContain(
      'Revision 4: decision: Replace it; the verdict was: Face it, because: the customer wants a new one BL,',
    );
    expect(page.text).toContain('Shop limits: clean-up allowance 0.05 mm');
    expect(page.html).toMatch(
      /BL, <time datetime="2026-11-24T08:\d\d:00\.000Z">Nov 24, 2026, 8:\d\d AM<\/time>/,
    );
    expect((await program.get('/jobs/1001/history/9')).status).toBe(404);
    expect((await program.get('/jobs/1001/history/first')).status).toBe(404);
    expect((await program.get('/jobs/77/history')).status).toBe(404);
  });

  test('of criteria and catalog entries tells their differences field by field with units', async () => {
    const { html } = await program.get('/criteria');
    const field = (name: string) =>
      new RegExp(`name="${name}"[^>]*value="([^"]*)"|value="([^"]*)"[^>]*name="${name}"`).exec(html);
    const names = [
      'shopName',
      'minimum',
      'allowance',
      'runout',
      'confidence',
      'typical',
      'protrusion',
      'start',
    ];
    const fields = Object.fromEntries(
      names.map((name) => [name, field(name)?.[1] ?? field(name)?.[2] ?? '']),
    );
    expect(fields.minimum).toBe('4.3');
    const saved = await saveLimits(program, {
      ...fields,
      lengthUnit: 'mm',
      decimalSign: 'point',
      minimum: '4.2',
      from: '1',
      who: 'BL',
      why: 'two seasons without one back',
    });
    expect(saved.status).toBe(303);
    const after = await program.get('/criteria');
    expect(rowsOf(after.html)).toContainEqual(['Minimum wall', '4.3 mm', '4.2 mm']);
    expect(after.text).toContain('two seasons without one back');
  });
});

describe('a signed job a year later', () => {
  const sign = async () => {
    await measured(program);
    await step(program, 'decision', { decision: 'face', who: 'BL' });
    await step(program, 'cuts', { depth: '0.05' });
    await program.post(
      '/jobs/1001/readings',
      readingsForm(
        'after',
        PLACES.map(() => '4.85'),
      ),
    );
    const signed = await step(program, 'signature', { who: 'BL', statement: 'Face runout not read.' });
    expect(signed.status).toBe(303);
  };
  const changeCriteria = (minimum: string, from: string) =>
    saveLimits(program, {
      shopName: 'Heron Lane Rebuilds',
      minimum,
      allowance: '0.40',
      runout: '0.13',
      confidence: '95',
      typical: '0.25',
      protrusion: '1',
      start: '2',
      lengthUnit: 'mm',
      decimalSign: 'point',
      from,
      who: 'BL',
      why: 'a year of experience',
    });

  test('shows on its sheet the decision, criteria, answers and findings as they were kept, not today’s', async () => {
    await sign();
    const then = await program.get('/jobs/1001/sheet');
    expect(then.text).toContain('minimum wall 4.3 mm');
    expect((await changeCriteria('4.88', '1')).status).toBe(303);
    const now = await program.get('/jobs/1001/sheet');
    expect(now.text).toBe(then.text);
    const page = await program.get('/jobs/1001');
    expect(rowsOf(page.html)).toContainEqual(['Minimum wall', '4.3 mm', '4.88 mm']);
  });

  test('shows a state before any decision under the criteria of that day', async () => {
    await measured(program);
    const then = await program.get('/jobs/1001/sheet?revision=3');
    expect(then.text).toContain('clean-up allowance 0.05 mm');
    await changeCriteria('4.2', '1');
    expect((await program.get('/jobs/1001/sheet?revision=3')).text).toBe(then.text);
    expect((await program.get('/jobs/1001/sheet')).text).toContain('clean-up allowance 0.4 mm');
  });

  test('is amended with a why, says so at its head until it is signed again, and its signed state stays', async () => {
    await sign();
    const signedAt = await revisionNow(program);
    const signed = await program.get(`/jobs/1001/sheet?revision=${signedAt}`);
    const bare = await step(program, 'received', { family: 'alder', receivedOn: '2026-11-23', who: 'MH' });
    expect(bare.status).toBe(422);
    expect(bare.text).toContain('was signed by BL. Enter the reason for the change');
    const amended = await step(program, 'received', {
      family: 'alder',
      receivedOn: '2026-11-23',
      who: 'MH',
      why: 'the day was wrong',
    });
    expect(amended.status).toBe(303);
    const sentence = `Amended after BL signed it at revision ${signedAt - 1}`;
    expect((await program.get('/jobs/1001')).text).toContain(sentence);
    expect((await program.get('/jobs/1001/sheet')).text).toContain(sentence);
    expect((await program.get(`/jobs/1001/sheet?revision=${signedAt}`)).text).toBe(signed.text);
    await step(program, 'signature', { who: 'BL', statement: 'Face runout not read.' });
    expect((await program.get('/jobs/1001')).text).not.toContain('Amended after');
  });
});

describe('overruling', () => {
  test('takes a reason for advice, and a changed criterion for a wall below the minimum', async () => {
    await measured(program, '4.32');
    const refused = await step(program, 'decision', { decision: 'face', reason: 'it will do', who: 'BL' });
    expect(refused.status).toBe(422);
    expect(refused.text).toContain('No reason overrules that.');
    const lowered = {
      shopName: 'Heron Lane Rebuilds',
      minimum: '4.2',
      allowance: '0.05',
      runout: '0.13',
      confidence: '95',
      typical: '0.25',
      protrusion: '1',
      start: '2',
      lengthUnit: 'mm',
      decimalSign: 'point',
      from: '1',
      who: 'BL',
    };
    expect((await saveLimits(program, lowered)).status).toBe(422);
    expect((await saveLimits(program, { ...lowered, why: 'tried on the bench' })).status).toBe(303);
    const allowed = await step(program, 'decision', { decision: 'face', who: 'BL' });
    expect(allowed.status).toBe(303);
    const decision = await program.get('/jobs/1001/history/4');
    expect(decision.text).toContain('the verdict was: Face it');
    expect(decision.text).toContain('Minimum wall 4.200 mm');
    expect(rowsOf((await program.get('/criteria')).html)).toContainEqual([
      'Minimum wall',
      '4.3 mm',
      '4.2 mm',
    ]);
    expect((await program.get('/criteria')).text).toContain('BL, Nov 24, 2026');
  });

  test('needs a reason for a decision that is not the verdict, and never passes over a crack', async () => {
    await measured(program);
    const bare = await step(program, 'decision', { decision: 'replace', who: 'BL' });
    expect(bare.status).toBe(422);
    expect(bare.text).toContain('The verdict is "Face it" and the decision "Replace it". Enter the reason.');
    await step(program, 'looked', { crackTest: 'found', crackMethod: 'dye', crackNote: 'at stud 2' });
    const cracked = await step(program, 'decision', { decision: 'face', reason: 'it is small', who: 'BL' });
    expect(cracked.status).toBe(422);
    expect(cracked.text).toContain('no figure overrules a crack');
  });

  test('does not let a cover be signed that was measured too thin after the cut', async () => {
    await measured(program);
    await step(program, 'decision', { decision: 'face', who: 'BL' });
    await step(program, 'cuts', { depth: '0.05' });
    const walls = PLACES.map((_, i) => (i === 4 ? '4.29' : '4.85'));
    await program.post('/jobs/1001/readings', readingsForm('after', walls, { 'ok.w.4': '4.29' }));
    const refused = await step(program, 'signature', { who: 'BL', statement: 'Face runout not read.' });
    expect(refused.status).toBe(422);
    expect(refused.text).toContain('After the cut 4.290 mm of wall is left at the thinnest station');
    const again = await step(program, 'decision', { decision: 'replace', reason: 'cut too deep', who: 'BL' });
    expect(again.status).toBe(303);
    expect((await step(program, 'signature', { who: 'BL', statement: 'Face runout not read.' })).status).toBe(
      303,
    );
  });

  test('a wall too thin after the cut is named in the reader’s unit, whatever the decision’s was', async () => {
    await measured(program);
    const inInches = {
      shopName: 'Heron Lane Rebuilds',
      minimum: '4.3 mm',
      allowance: '0.05 mm',
      confidence: '95',
      protrusion: '1',
      start: '2',
      lengthUnit: 'in',
      decimalSign: 'point',
      from: '1',
      who: 'BL',
      why: 'inches from today',
    };
    expect((await saveLimits(program, inInches)).status).toBe(303);
    await step(program, 'decision', { decision: 'face', who: 'BL', unit: 'mm' });
    await step(program, 'cuts', { depth: '0.05', unit: 'mm' });
    const walls = PLACES.map((_, i) => (i === 4 ? '4.29' : '4.85'));
    await program.post('/jobs/1001/readings', readingsForm('after', walls));
    const signing = { who: 'BL', statement: 'Face runout not read.' };
    const inMm = await step(program, 'signature', { ...signing, unit: 'mm' });
    expect(inMm.text).toContain('After the cut 4.290 mm of wall is left at the thinnest station');
    expect(inMm.text).toContain('the minimum is 4.3 mm');
    const read = await step(program, 'signature', { ...signing, unit: 'in' });
    expect(read.text).toContain('After the cut 0.1689 in of wall is left at the thinnest station');
  });
});

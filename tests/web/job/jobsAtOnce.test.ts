import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { demoStacks } from '../../../data/demo/stacks.ts';
import { demoStuds } from '../../../data/demo/studs.ts';
import { addEntry, getEntry, reviseEntry } from '../../../src/records/catalogue.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { saveCriteria } from '../../../src/records/shopCriteria.ts';
import { criteria } from '../../records/samples.ts';
import type { Served } from '../program.ts';
import { measured, PLACES, readingsForm, revisionNow, rowsOf, saveLimits, shopWith, step } from '../steps.ts';

/** Two tablets: A has the job open since an earlier revision, B was quicker. */
let program: Served;
beforeEach(async () => {
  program = await shopWith();
});
afterEach(() => program.close());

const received = { family: 'alder', receivedOn: '2026-11-24', customer: 'shelf', who: 'MH' };

/** The value a box of the page shows. */
function boxOf(html: string, form: string, name: string): string | undefined {
  const start = html.indexOf(`id="${form}"`);
  const inside = html.slice(start, html.indexOf('</form>', start));
  const tag = new RegExp(`<(?:input|textarea)[^>]*name="${name}"[^>]*>(?:([^<]*)</textarea>)?`).exec(inside);
  return tag?.[1] ?? /value="([^"]*)"/.exec(tag?.[0] ?? '')?.[1];
}

describe('a stale edit', () => {
  test.each<
    [string, Record<string, string>, Record<string, string>, [string, string, string], string, string]
  >([
    [
      'received',
      { ...received, customer: 'counter 3' },
      { ...received, customer: 'counter 4' },
      ['Customer reference', 'counter 3', 'counter 4'],
      'customer',
      'counter 4',
    ],
    [
      'looked',
      { crackTest: 'none-found', crackMethod: 'dye', 'result.welds': 'sound' },
      { crackTest: 'found', crackMethod: 'by-eye', crackNote: 'a line at stud 2' },
      ['Crack test method', 'dye penetrant', 'by eye'],
      'crackNote',
      'a line at stud 2',
    ],
    [
      'setup',
      { gauge: 'micrometer 2', chucking: 'pads-and-pilot-trued' },
      { gauge: 'caliper 1', chucking: 'pads-and-pilot-trued' },
      ['Gauge', 'micrometer 2', 'caliper 1'],
      'gauge',
      'caliper 1',
    ],
    ['plan', { cut: '0.30' }, { cut: '0.25' }, ['Planned cut', '0.3 mm', '0.25 mm'], 'cut', '0.25'],
    ['cuts', { depth: '0.10' }, { depth: '0.15' }, ['Pass 2', '—', '0.15 mm'], 'depth', '0.15'],
  ])(
    'of the section %s is answered 409 with both versions in two columns, and what was typed is kept',
    async (section, theirs, mine, row, box, typed) => {
      await measured(program);
      const from = String(await revisionNow(program));
      expect((await program.post(`/jobs/1001/${section}`, { who: 'AK', ...theirs, from })).status).toBe(303);
      const before = await revisionNow(program);
      const late = await program.post(`/jobs/1001/${section}`, { who: 'BL', ...mine, from });
      expect(late.status).toBe(409);
      expect(rowsOf(late.html)).toContainEqual(row);
      expect(late.text).toContain(`saved, by ${theirs.who ?? 'AK'}`);
      expect(boxOf(late.html, `${section}-form`, box)).toBe(typed);
      expect(await revisionNow(program)).toBe(before);
      // The form now starts from the present revision, so that saving again adds it knowingly.
      const again = boxOf(late.html, `${section}-form`, 'from')!;
      expect(again).toBe(String(before));
      const saved = await program.post(`/jobs/1001/${section}`, { who: 'BL', ...mine, from: again });
      expect(saved.status).toBe(303);
      expect(await revisionNow(program)).toBe(before + 1);
    },
  );

  test('of a decision or a signature is told what changed underneath, field by field', async () => {
    await measured(program);
    const from = String(await revisionNow(program));
    await step(program, 'looked', { crackTest: 'not-done', 'result.pads': 'fault', 'note.pads': 'bent' });
    const decided = await program.post('/jobs/1001/decision', {
      decision: 'face',
      who: 'BL',
      from,
      criteria: '1',
    });
    expect(decided.status).toBe(409);
    expect(rowsOf(decided.html)).toEqual(
      expect.arrayContaining([
        ['Crack test', 'no cracks found', 'not done yet'],
        ['Pads', 'not inspected', 'fault; bent'],
      ]),
    );
    expect((await getJob(program.shop.db, '1001'))!.sections.decision).toBeNull();
  });

  test('of a decision under criteria nobody saw is answered 409 with both, and the answer worked out anew', async () => {
    await measured(program);
    const opened = (await program.get('/jobs/1001')).html;
    const form = {
      decision: 'face',
      reason: 'seen with the old limit',
      who: 'BL',
      from: boxOf(opened, 'decision-form', 'from')!,
      criteria: boxOf(opened, 'decision-form', 'criteria')!,
    };
    expect(form.criteria).toBe('1');
    await saveCriteria(
      program.shop.db,
      { who: 'OW', why: 'a comeback', now: () => new Date() },
      { fromRevision: 1, body: { ...criteria, minimumWallMm: 4.4 } },
    );
    const before = await revisionNow(program);
    const late = await program.post('/jobs/1001/decision', form);
    expect(late.status).toBe(409);
    expect(late.text).toContain('OW changed the shop limits');
    expect(rowsOf(late.html)).toContainEqual(['Minimum wall', '4.3 mm', '4.4 mm']);
    expect(late.text).toContain('4.400 mm');
    expect(boxOf(late.html, 'decision-form', 'reason')).toBe(form.reason);
    expect(await revisionNow(program)).toBe(before);

    const shown = boxOf(late.html, 'decision-form', 'criteria')!;
    expect(shown).toBe('2');
    expect((await program.post('/jobs/1001/decision', { ...form, criteria: shown })).status).toBe(303);
    const { decision } = (await getJob(program.shop.db, '1001'))!.sections;
    expect([decision?.body.criteriaRevision, decision?.body.criteria.minimumWallMm]).toEqual([2, 4.4]);
    // One that does not say what it saw is taken neither.
    const unsaid = await program.post('/jobs/1001/decision', { ...form, criteria: '', reason: 'again' });
    expect([unsaid.status, unsaid.text.includes('did not say which shop limits')]).toEqual([422, true]);
  });

  test('of studs against a stack, a stud or criteria nobody saw is not kept', async () => {
    await measured(program);
    const { db } = program.shop;
    const now = () => new Date('2026-11-25T08:00:00Z');
    const ctx = { who: 'OW', why: 'measured anew', now };
    const [stack, stud] = [demoStacks[0]!.entry, demoStuds[0]!.entry];
    await addEntry(db, ctx, { kind: 'stack', id: 'thick', body: stack });
    await addEntry(db, ctx, { kind: 'stud', id: 'long', body: stud });
    const opened = (await program.get('/jobs/1001?stack=thick')).html;
    const box = (html: string, name: string) => boxOf(html, 'studs-form', name)!;
    const form = (html: string) => ({
      stack: 'thick',
      stud: 'long',
      note: 'as it is',
      who: 'BL',
      ...Object.fromEntries(
        ['from', 'criteria', 'stackRevision', 'studRevision.long'].map((name) => [name, box(html, name)]),
      ),
    });
    const send = (html: string) => program.post('/jobs/1001/studs', form(html));
    const change = { who: 'OW', why: 'measured anew', now };
    const thicker = { ...stack, note: 'a second plate' };
    await reviseEntry(db, change, { kind: 'stack', id: 'thick', fromRevision: 1, body: thicker });
    const first = await send(opened);
    expect(first.status).toBe(409);
    expect(rowsOf(first.html)).toContainEqual(['Note', stack.note, 'a second plate']);
    const other = { ...stud, note: 'another batch' };
    await reviseEntry(db, change, { kind: 'stud', id: 'long', fromRevision: 1, body: other });
    const second = await send(first.html);
    expect([second.status, second.text.includes('OW changed the stud')]).toEqual([409, true]);
    await saveCriteria(db, change, { fromRevision: 1, body: { ...criteria, protrusionThreads: 2 } });
    const third = await send(second.html);
    expect(third.status).toBe(409);
    expect(rowsOf(third.html)).toContainEqual(['Threads past the nut', '1 thread', '2 threads']);
    expect((await getJob(db, '1001'))!.sections.studs).toBeNull();
    expect((await send(third.html)).status).toBe(303);
    expect((await getJob(db, '1001'))!.sections.studs?.body).toMatchObject({
      revisions: { stack: 2, stud: 2, criteria: 2 },
      stack: { note: 'a second plate' },
    });
  });

  test('of a section that was pressed twice is kept once', async () => {
    await measured(program);
    const from = String(await revisionNow(program));
    const form = { cut: '0.30', who: 'AK', from };
    expect((await program.post('/jobs/1001/plan', form)).status).toBe(303);
    expect((await program.post('/jobs/1001/plan', form)).status).toBe(303);
    expect(await revisionNow(program)).toBe(Number(from) + 1);
  });
});

describe('readings from two tablets', () => {
  test('in a form sent twice add nothing the second time', async () => {
    await measured(program);
    await step(program, 'cuts', { depth: '0.05' });
    const before = await getJob(program.shop.db, '1001');
    const form = readingsForm(
      'after',
      PLACES.map(() => '4.85'),
    );
    await Promise.all([1, 2, 3].map(() => program.post('/jobs/1001/readings', form)));
    const after = await getJob(program.shop.db, '1001');
    expect(after!.revision).toBe(before!.revision + 1);
    expect(after!.readings.filter((one) => one.pass === 'after')).toHaveLength(PLACES.length);
  });

  test('that correct the same place show the second both, and lose no other place of his', async () => {
    await measured(program);
    const walls = (await getJob(program.shop.db, '1001'))!.readings.filter((one) => one.kind === 'wall');
    const was = Object.fromEntries(walls.map((one, i) => [`was.w.${i}`, one.id]));
    const page = (token: string, who: string, changes: Record<string, string>) => ({
      ...readingsForm(
        'before',
        PLACES.map(() => '4.90'),
        { token, who },
      ),
      ...was,
      ...changes,
    });
    const first = await program.post('/jobs/1001/readings', page('tablet-aa', 'AK', { 'w.2': '4.87' }));
    expect(first.status).toBe(303);
    const late = await program.post(
      '/jobs/1001/readings',
      page('tablet-bb', 'BL', { 'w.2': '4.85', 'w.5': '4.86' }),
    );
    expect(late.status).toBe(409);
    expect(rowsOf(late.html)).toEqual([['Wall at station 3 (behind stud 2)', '4.87 by AK', '4.85']]);
    expect(boxOf(late.html, 'before-form', 'w.2')).toBe('4.85');
    expect(boxOf(late.html, 'before-form', 'w.5')).toBe('4.86');
  });
});

describe('a cover received by a form', () => {
  test('carries an id of its own, and pressed twice it is one job', async () => {
    const page = await program.get('/jobs/new');
    const sentId = boxOf(page.html, 'main', 'sentId')!;
    expect(sentId).toMatch(/^[0-9a-f-]{36}$/);
    const answers = await Promise.all([1, 2, 3].map(() => program.post('/jobs', { ...received, sentId })));
    expect(answers.map((one) => [one.status, one.location])).toEqual([
      [303, '/jobs/1001'],
      [303, '/jobs/1001'],
      [303, '/jobs/1001'],
    ]);
    const next = boxOf((await program.get('/jobs/new')).html, 'main', 'sentId');
    expect(next).not.toBe(sentId);
    expect((await program.post('/jobs', { ...received, sentId: next! })).location).toBe('/jobs/1002');
  });

  test('keeps its id when the form was refused', async () => {
    const sentId = 'a-form-that-is-refused-1';
    const refused = await program.post('/jobs', { ...received, receivedOn: 'today', sentId });
    expect(refused.status).toBe(422);
    expect(boxOf(refused.html, 'main', 'sentId')).toBe(sentId);
  });
});

describe('the catalog and the criteria', () => {
  test('answer a stale change of a family with both versions, keep what was typed and write nothing', async () => {
    const family = {
      name: 'Alder 11 plain',
      make: 'stamped',
      sideWall: 'plain',
      studCount: '4',
      circle: '286',
      trackInner: '214',
      trackOuter: '264',
      nominal: '5',
      unit: 'mm',
      from: '1',
    };
    const save = (who: string, nominal: string) =>
      program.post('/catalogue/family/alder', { ...family, nominal, who, why: 'measured a new one' });
    expect((await save('AK', '5.1')).status).toBe(303);
    const late = await save('BL', '5.2');
    expect(late.status).toBe(409);
    expect(rowsOf(late.html)[0]).toEqual(['New wall', '5.1 mm', '5.2 mm']);
    expect(boxOf(late.html, 'main', 'nominal')).toBe('5.2');
    expect((await getEntry(program.shop.db, 'family', 'alder'))?.body.nominalWallMm).toBe(5.1);
  });

  test('answer a stale change of the criteria with both versions, and write nothing', async () => {
    const save = (who: string, minimum: string) =>
      saveLimits(program, {
        shopName: 'Heron Lane Rebuilds',
        minimum,
        allowance: '0.05',
        runout: '0.13',
        confidence: '95',
        typical: '0.25',
        protrusion: '1',
        start: '2',
        lengthUnit: 'mm',
        decimalSign: 'point',
        from: '1',
        who,
        why: 'seen enough',
      });
    expect((await save('AK', '4.2')).status).toBe(303);
    const late = await save('BL', '4.1');
    expect(late.status).toBe(409);
    expect(rowsOf(late.html)[0]).toEqual(['Minimum wall', '4.2 mm', '4.1 mm']);
    expect(boxOf(late.html, 'main', 'minimum')).toBe('4.1');
  });
});

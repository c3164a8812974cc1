import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { addEntry } from '../../../src/records/catalogue.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { currentCriteria } from '../../../src/records/shopCriteria.ts';
import { apiExamples } from '../../../src/web/api/examples.ts';
import { alder } from '../../records/samples.ts';
import type { Served } from '../program.ts';
import { measured, rowsOf, saveLimits, shopWith, step } from '../steps.ts';

/** A shop with one cover type of 5 mm new wall, and no minimum yet. */
let program: Served;
beforeEach(async () => {
  program = await shopWith({ minimumWallMm: null });
});
afterEach(() => program.close());

const FORMULA = 'max(4.2 mm, 85 % of new wall)';
const LIMITS = {
  from: '1',
  unit: 'mm',
  shopName: 'Heron Lane Rebuilds',
  minimum: '',
  allowance: '0.05',
  runout: '0.13',
  confidence: '95',
  typical: '0.25',
  protrusion: '1',
  start: '2',
  lengthUnit: 'mm',
  decimalSign: 'point',
  why: 'one rule for all',
  who: 'BL',
};

const save = (minimumFormula: string, more: Record<string, string> = {}) =>
  saveLimits(program, { ...LIMITS, minimumFormula, ...more });

const now = async () => (await currentCriteria(program.shop.db)).body;

async function addType(name: string, changes: Partial<typeof alder>): Promise<void> {
  const body = { ...alder, shopMinimumWallMm: null, shopMinimumWallSource: null, name, ...changes };
  await addEntry(program.shop.db, { who: 'BL', now: () => new Date() }, { kind: 'family', id: name, body });
}

const live = async (fields: Record<string, string>) =>
  program.get(`/criteria/minimum?${new URLSearchParams({ unit: 'mm', ...fields })}`);

describe('the minimum wall as a formula', () => {
  it('shows what it gives for every cover type while it is typed, beside what stands', async () => {
    await addType('birch', { nominalWallMm: 4, shopMinimumWallMm: 3.5, shopMinimumWallSource: 'the owner' });
    expect(rowsOf((await live({ minimumFormula: FORMULA })).html)).toEqual([
      ['Alder 11 plain', 'none', 'max(4.2 mm, 0.85 × 5.00 mm) = 4.25 mm'],
      ['birch', '3.500 mm, its own', 'the same'],
    ]);
    expect((await live({ minimumFormula: 'max(4.2 mm' })).text).toContain('The formula ends where');
    expect((await live({ minimumFormula: FORMULA, minimum: '4.2' })).text).toContain('Keep one');
    expect((await live({})).text).toContain('No formula is entered');
    expect((await now()).minimumWallFormula).toBeNull();
    const page = await program.get('/criteria');
    expect(page.html).toContain('id="minimum-given"');
  });

  it('is saved, shown in the box, told in the history, and judges the open jobs', async () => {
    await measured(program);
    const seen = await program.post('/criteria', { ...LIMITS, minimumFormula: FORMULA });
    expect(seen.status).toBe(200);
    expect(seen.text).toContain('Not saved yet: what this changes');
    expect(rowsOf(seen.html)).toContainEqual(['Minimum wall as a formula', 'none', FORMULA]);
    expect((await save(FORMULA)).status).toBe(303);
    expect((await now()).minimumWallFormula).toBe(FORMULA);
    const page = await program.get('/criteria');
    expect(page.html).toContain(`value="${FORMULA}"`);
    expect(rowsOf(page.html)).toContainEqual([
      'Alder 11 plain',
      'max(4.2 mm, 0.85 × 5.00 mm) = 4.25 mm',
      'the same',
    ]);
    expect(page.text).toContain('Minimum wall as a formula');
    const job = await program.get('/jobs/1001');
    expect(job.text).toContain(
      'The shop’s minimum of 4.250 mm applies: max(4.2 mm, 0.85 × 5.00 mm) = 4.25 mm.',
    );
    const sheet = await program.get('/jobs/1001/sheet');
    expect(sheet.text).toContain(
      'formula max(4.2 mm, 85 % of new wall), here max(4.2 mm, 0.85 × 5.00 mm) = 4.25 mm;',
    );
    expect((await program.get('/catalogue')).text).toContain('4.25');
    expect((await program.get('/cover?family=alder')).text).toContain(
      'Blank: 4.250 mm, max(4.2 mm, 0.85 × 5.00 mm) = 4.25 mm',
    );
  });

  it('stays with a decision, formula and figures, whatever the shop chooses later', async () => {
    await save(FORMULA);
    await measured(program);
    const decided = await step(program, 'decision', { decision: 'face' });
    expect(decided.status).toBe(303);
    await saveLimits(program, { ...LIMITS, from: '2', minimum: '4.4', minimumFormula: '' });
    const kept = (await getJob(program.shop.db, '1001'))!.sections.decision!.body;
    expect(kept.criteria).toMatchObject({ minimumWallMm: null, minimumWallFormula: FORMULA });
    expect(kept.input.criteria).toMatchObject({
      minimumWallMm: 4.25,
      minimumWallFormula: FORMULA,
      minimumWallWorking: 'max(4.2 mm, 0.85 × 5.00 mm) = 4.25 mm',
    });
    expect(kept.check.findings.find(({ id }) => id === 'minimum-wall')).toMatchObject({
      status: 'pass',
      value: 4.25,
      limit: 4.25,
    });
    const page = await program.get('/jobs/1001');
    expect(page.text).toContain('max(4.2 mm, 0.85 × 5.00 mm) = 4.25 mm');
    expect(page.text).not.toContain('would answer otherwise');
  });

  it('is typed and shown with the shop’s decimal comma, and kept with a point', async () => {
    const metric = { allowance: '0,05', runout: '0,13', typical: '0,25', decimalSign: 'comma' };
    await saveLimits(program, { ...LIMITS, decimalSign: 'comma' });
    const typed = 'max(4,2 mm;  85,5 % of new wall)';
    expect((await save(typed, { ...metric, from: '2' })).status).toBe(303);
    expect((await now()).minimumWallFormula).toBe('max(4.2 mm, 85.5 % of new wall)');
    const page = await program.get('/criteria');
    expect(page.html).toContain('value="max(4,2 mm; 85,5 % of new wall)"');
    expect(page.text).not.toContain('(typed');
    await save(typed, { ...metric, from: '3', decimalSign: 'point' });
    expect((await program.get('/criteria')).text).toContain(
      'max(4.2 mm, 85.5 % of new wall) (typed max(4,2 mm; 85,5 % of new wall))',
    );
    await save('', { from: '4', decimalSign: 'comma' });
    const point = await save('max(4.2 mm; 4 mm)', { ...metric, from: '5' });
    expect(point.status).toBe(422);
    expect(point.text).toContain('4,2 mm');
  });

  it.each([
    ['max(4.2 mm, 85 % of old wall)', 'Minimum wall as a formula: "old" is no word of a formula'],
    ['1 in * 1 in', '"1 in * 1 in" gives an area'],
    [
      'new wall - 5 mm',
      'It gives no minimum for Alder 11 plain: 5.00 mm − 5 mm = 0.00 mm is no length above zero.',
    ],
    ['1 mm / (stud count - 4)', 'for Alder 11 plain: 1 mm ÷ (4 − 4) is no length above zero'],
  ])('%s is refused at its box', async (formula, says) => {
    const refused = await save(formula);
    expect(refused.status).toBe(422);
    expect(refused.text).toContain(says);
    expect(refused.html).toMatch(/name="minimumFormula"[^>]*aria-invalid="true"/);
    expect(refused.html).toContain(`value="${formula}"`);
    expect((await now()).minimumWallFormula).toBeNull();
  });

  it('stands instead of a figure, not beside it', async () => {
    const both = await save(FORMULA, { minimum: '4.2' });
    expect(both.status).toBe(422);
    expect(both.text).toContain('The minimum wall is given as a figure, 4.2 mm, and as a formula. Keep one');
  });

  it.each([
    ['40 % of new wall', '0.4 × 5.00 mm = 2.00 mm? The new wall of Alder 11 plain is 5 mm.'],
    ['new wall + 0.1 mm', '5.00 mm + 0.1 mm = 5.10 mm? The new wall of Alder 11 plain is 5 mm.'],
  ])('%s is asked about, and kept once it is confirmed', async (formula, asks) => {
    const asked = await save(formula);
    expect(asked.status).toBe(422);
    expect(asked.text).toContain(asks);
    expect((await save(formula, { 'ok.minimumFormula': formula })).status).toBe(303);
  });

  it('a cover type added later that it gives none for has no minimum, and says why', async () => {
    await save('new wall - 4.2 mm + 3.5 mm', { 'ok.minimumFormula': 'new wall - 4.2 mm + 3.5 mm' });
    await addType('alder2', { nominalWallMm: 0.6 });
    const page = await program.get('/cover?family=alder2&w.0=0.55&unit=mm');
    expect(page.text).toContain(
      'The shop’s formula gives no minimum for this cover: 0.60 mm − 4.2 mm + 3.5 mm = −0.10 mm',
    );
    expect(page.text).toContain('advice only');
  });

  it('is asked about when a cover type is saved that it gives nothing, or less than is entered', async () => {
    await save('new wall - 4.2 mm', { 'ok.minimumFormula': 'new wall - 4.2 mm' });
    const type = {
      make: 'stamped',
      sideWall: 'plain',
      studCount: '4',
      circle: '286',
      trackInner: '214',
      trackOuter: '264',
      nominal: '5',
      who: 'BL',
      unit: 'mm',
    };
    const add = (name: string, more: Record<string, string>) =>
      program.post('/catalogue/family', { ...type, name, ...more });
    const none = await add('Plover', { nominal: '4' });
    expect(none.status).toBe(422);
    expect(none.text).toContain('The shop’s formula gives this cover type no minimum: 4.00 mm − 4.2 mm');
    expect((await add('Plover', { nominal: '4', 'ok.nominal': '4' })).status).toBe(303);
    const maker = { makerMinimum: '4.6', makerSource: 'a bulletin' };
    const less = await add('Plover 2', maker);
    expect(less.status).toBe(422);
    expect(less.text).toContain('gives 0.800 mm for this cover type, less than the 4.600 mm entered here');
    expect((await add('Plover 2', { ...maker, 'ok.makerMinimum': '4.6' })).status).toBe(303);
    expect((await add('Plover 3', {})).status).toBe(303);
  });

  it('works for dimensions typed instead of a cover type', async () => {
    await save(FORMULA);
    const page = await program.get(
      '/cover?family=own&unit=mm&studs=4&circle=286&trackInner=214&trackOuter=264&nominal=5.2&w.0=5.1',
    );
    expect(page.text).toContain('max(4.2 mm, 0.85 × 5.20 mm) = 4.42 mm');
  });
});

describe('criteria.minimumWallFormula in JSON', () => {
  const COVER = apiExamples['/cover/check']!.request as { criteria: object; cover: object };
  const check = async (criteria: object, more: object = {}) => {
    const answer = await fetch(`${program.url}/api/cover/check`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({
        ...COVER,
        criteria: { ...COVER.criteria, minimumWallMm: null, ...criteria },
        ...more,
      }),
    });
    // biome-ignore lint/suspicious/noExplicitAny: what comes back is what is looked at.
    return { status: answer.status, body: (await answer.json()) as any };
  };

  it('stands instead of minimumWallMm; the finding has the figure as its limit and the working', async () => {
    const { status, body } = await check({ minimumWallFormula: 'max(4.2 mm, 85 % of new wall)' });
    expect(status).toBe(200);
    expect(body.minimumWall.mm).toBeCloseTo(4.25, 12);
    const finding = body.findings.find(({ id }: { id: string }) => id === 'minimum-wall');
    expect(finding.limit).toBeCloseTo(4.25, 12);
    expect(finding.sentence).toContain('max(4.2 mm, 0.85 × 5.00 mm) = 4.25 mm');
    expect(body.doubts).toEqual([]);
  });

  it.each([
    [{ minimumWallFormula: '1 in * 1 in' }, '"1 in * 1 in" gives an area'],
    [{ minimumWallFormula: 'import("fs")' }, '"import" is no word of a formula'],
    [{ minimumWallFormula: 'new wall - 9 mm' }, 'is no length above zero'],
    [{ minimumWallFormula: `1 mm${' '.repeat(200)}+ 1 mm` }, 'characters'],
    [{ minimumWallFormula: 'new wall', minimumWallMm: 4 }, 'Keep one'],
    [{ minimumWallFormula: 4 }, 'send text'],
  ])('%j is 422 there', async (criteria, says) => {
    const { status, body } = await check(criteria);
    expect(status).toBe(422);
    expect(JSON.stringify(body)).toContain('criteria.minimumWallFormula');
    expect(JSON.stringify(body).replaceAll('\\"', '"')).toContain(says);
  });

  it('a figure that looks like a slip is told at its path, until that is confirmed', async () => {
    const slipped = { minimumWallFormula: '8.5 % of new wall' };
    const { body } = await check(slipped);
    expect(body.doubts.map(({ path }: { path: string }) => path)).toEqual(['criteria.minimumWallFormula']);
    const again = await check(slipped, { confirmed: ['criteria.minimumWallFormula'] });
    expect(again.body.doubts).toEqual([]);
  });

  it('nobody sends the working', async () => {
    expect((await check({ minimumWallMm: 4.3, minimumWallWorking: 'so it is' })).status).toBe(422);
  });
});

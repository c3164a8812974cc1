import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addEntry } from '../../src/records/catalogue.ts';
import { currentCriteria } from '../../src/records/shopCriteria.ts';
import { gauge } from '../records/gauges/gaugeSamples.ts';
import { studs } from '../records/samples.ts';
import { formsIn, sentAsShown } from './boxes.ts';
import { type Served, serve } from './program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: false, timeZone: 'America/Chicago' });
});
afterAll(() => program.close());

const now = () => new Date('2026-11-24T12:00:00Z');
const limitsNow = async () => (await currentCriteria(program.shop.db)).body;
const limits = {
  minimum: '0.165',
  minimumFormula: '',
  allowance: '0.003',
  runout: '0.005',
  confidence: '95',
  from: '1',
  unit: 'in',
  who: 'TO',
};

describe('an empty shop', () => {
  it('is led from its front page to the first step, in which nothing is filled in', async () => {
    expect((await program.get('/')).html).toContain('href="/setup"');
    const { html, text } = await program.get('/setup');
    const form = formsIn(html).find(({ id }) => id === 'shop-form')!;
    const typed = form.boxes.filter(({ kind, ticked }) => kind === 'text' || (kind === 'radio' && ticked));
    expect(typed.map(({ name, value }) => [name, value])).toEqual([
      ['shopName', ''],
      ['timeZone', 'America/Chicago'],
      ['who', ''],
    ]);
    expect(text).toContain('Here it is Nov 24, 2026, 6:00 AM.');
    expect(text).toContain('Days and times go by America/Chicago. That is this computer’s');
    expect(html).not.toContain('id="limits-form"');
  });

  it('asks for name, units and initials, each at its box, and keeps what was typed', async () => {
    const refused = await program.post('/setup/shop', { shopName: 'Heron Lane', from: '0', unit: 'mm' });
    expect(refused.status).toBe(422);
    for (const said of ['Units when none are typed: choose one', 'Decimals are written with a: choose one'])
      expect(refused.text).toContain(said);
    expect(refused.text).toContain('Enter your initials');
    expect(refused.html).toContain('value="Heron Lane"');
    expect((await currentCriteria(program.shop.db)).revision).toBe(0);
  });

  it('saves each step by itself and goes on with the next; stale it is 409', async () => {
    const shop = {
      shopName: 'Heron Lane',
      lengthUnit: 'in',
      decimalSign: 'point',
      from: '0',
      unit: 'mm',
      who: 'TO',
    };
    expect(await program.post('/setup/shop', shop)).toMatchObject({ status: 303, location: '/setup' });
    expect(await limitsNow()).toMatchObject({
      shopName: 'Heron Lane',
      lengthUnit: 'in',
      minimumWallMm: null,
    });
    expect((await program.post('/setup/shop', { ...shop, shopName: 'Other' })).status).toBe(409);
    const { html } = await program.get('/setup');
    const form = formsIn(html).find(({ id }) => id === 'limits-form')!;
    const { allowance, confidence, minimum } = sentAsShown(form);
    expect([allowance, confidence, minimum]).toEqual(['', '', '']);
  });

  it('asks for the limits; none is filled in, a slip is asked about', async () => {
    const blank = await program.post('/setup/limits', { ...limits, allowance: '', confidence: '' });
    expect(blank.status).toBe(422);
    expect(blank.text).toContain('Clean-up allowance is empty');
    expect(blank.text).toContain('Confidence required is empty');
    const slip = await program.post('/setup/limits', { ...limits, minimum: '1.65' });
    expect(slip.status).toBe(422);
    expect(slip.text).toContain('Did you mean 0.165');
    expect((await program.post('/setup/limits', limits)).status).toBe(303);
    const kept = await limitsNow();
    expect(kept.minimumWallMm).toBeCloseTo(0.165 * 25.4, 9);
    expect(kept).toMatchObject({ shopName: 'Heron Lane', lengthUnit: 'in', confidence: 0.95 });
  });

  it('leads to each entry and back, and at the end to the first cover with them', async () => {
    const type = {
      name: 'First type',
      make: 'stamped',
      sideWall: 'plain',
      studCount: '4',
      circle: '11 1/4 in',
      trackInner: '214 mm',
      trackOuter: '264 mm',
      nominal: '0.197',
      unit: 'in',
      who: 'TO',
      back: '/setup',
    };
    expect((await program.get('/setup')).html).toContain('href="/catalogue/family/new?back=%2Fsetup"');
    const added = await program.post('/catalogue/family', type);
    expect(added.location).toMatch(/^\/setup/);
    const after = await program.get(added.location!);
    expect(after.text).toContain('First type');
    expect(after.html).toContain('href="/catalogue/gauge/new?back=%2Fsetup"');
    await addEntry(program.shop.db, { who: 'TO', now }, { kind: 'gauge', id: 'm1', body: gauge });
    expect((await program.get('/setup')).html).toContain('id="add-stud"');
    expect((await program.get('/setup')).html).not.toContain('id="check-first"');
    expect((await program.get('/')).html).toContain('id="set-up"');
    const { stud, stack } = studs;
    await addEntry(program.shop.db, { who: 'TO', now }, { kind: 'stud', id: 's1', body: stud });
    await addEntry(program.shop.db, { who: 'TO', now }, { kind: 'stack', id: 'k1', body: stack });
    const page = await program.get('/setup');
    const [, first] = /href="([^"]*)" id="check-first"/.exec(page.html)!;
    const cover = await program.get(first!.replaceAll('&amp;', '&'));
    expect([cover.status, cover.text.includes('First type')]).toEqual([200, true]);
    const [, fits] = /href="([^"]*)" id="check-stud"/.exec(page.html)!;
    expect(fits).toBe('/stud?stack=k1&amp;stud=s1');
    expect((await program.get('/stud?stack=k1&stud=s1')).status).toBe(200);
    expect((await program.get('/')).html).not.toContain('id="set-up"');
  });
});

it('a shop with the demo is not told to set itself up', async () => {
  const demo = await serve({ demo: true });
  expect((await demo.get('/')).html).not.toContain('id="set-up"');
  await demo.close();
});

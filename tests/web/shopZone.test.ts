import { afterEach, describe, expect, it } from 'vitest';
import { currentCriteria, saveCriteria } from '../../src/records/shopCriteria.ts';
import { readSettings } from '../../src/settings.ts';
import { shopZone } from '../../src/shop/shopZone.ts';
import { onEachDatabase } from '../records/shops.ts';
import { type Served, serve } from './program.ts';

let program: Served;
afterEach(() => program?.close());
const SHOP = {
  shopName: 'Heron Lane',
  lengthUnit: 'in',
  decimalSign: 'point',
  from: '0',
  unit: 'in',
  who: 'TO',
};
const start = async (timeZoneSet: boolean) => {
  program = await serve({
    demo: false,
    timeZone: 'UTC',
    timeZoneSet,
    now: () => new Date('2026-11-24T03:00:00Z'),
  });
};
/** The day that is today, and the time of the first revision of the limits. */
const days = async () => {
  const { html } = await program.get('/wrong');
  const said = (await program.get('/criteria')).text;
  return {
    today: /name="since"[^>]*value="([^"]*)"/.exec(html)?.[1],
    at: /Nov \d+, 2026, \d+:\d+ [AP]M/.exec(said)?.[0],
  };
};

describe('the time zone of the shop', () => {
  it('is asked when the shop is set up, and holds from then on, for days and times', async () => {
    await start(false);
    const page = await program.get('/setup');
    expect(page.html).toContain('<option value="America/Denver">');
    const refused = await program.post('/setup/shop', { ...SHOP, timeZone: 'Denver' });
    expect(refused.status).toBe(422);
    expect(refused.text).toContain('The time zone "Denver" is not known.');
    expect((await program.post('/setup/shop', { ...SHOP, timeZone: 'America/Denver' })).status).toBe(303);
    expect(await days()).toEqual({ today: '2026-11-23', at: 'Nov 23, 2026, 8:00 PM' });
    expect((await program.get('/setup')).text).toContain('America/Denver). The shop chose it.');
  });

  it('left blank is the computer’s', async () => {
    await start(false);
    await program.post('/setup/shop', { ...SHOP, timeZone: '' });
    expect((await currentCriteria(program.shop.db)).body.timeZone).toBeNull();
    expect(await days()).toEqual({ today: '2026-11-24', at: 'Nov 24, 2026, 3:00 AM' });
  });

  it('is that of TIME_ZONE where it is set, and the pages say so', async () => {
    await start(true);
    await program.post('/setup/shop', { ...SHOP, timeZone: 'America/Denver' });
    expect(await days()).toEqual({ today: '2026-11-24', at: 'Nov 24, 2026, 3:00 AM' });
    for (const path of ['/setup', '/criteria'])
      expect((await program.get(path)).text).toContain('TIME_ZONE in the program’s settings says so');
  });

  it('set by an empty TIME_ZONE is not set', () => {
    expect(readSettings({ TIME_ZONE: 'Europe/Berlin' })).toMatchObject({
      timeZone: 'Europe/Berlin',
      timeZoneSet: true,
    });
    expect(readSettings({ TIME_ZONE: '' }).timeZoneSet).toBe(false);
  });
});

onEachDatabase((engine) => {
  it('the zone the shop chose comes before the computer’s, and after that of the settings', async () => {
    const shop = await engine.openEmpty();
    try {
      const computer = { timeZone: 'UTC', timeZoneSet: false };
      expect(await shopZone(shop.db, computer)).toBe('UTC');
      const { body } = await currentCriteria(shop.db);
      const ctx = { who: 'TO', why: 'moved', now: () => new Date('2026-11-24T03:00:00Z') };
      await saveCriteria(shop.db, ctx, { fromRevision: 0, body: { ...body, timeZone: 'Asia/Tokyo' } });
      expect(await shopZone(shop.db, computer)).toBe('Asia/Tokyo');
      expect(await shopZone(shop.db, { ...computer, timeZoneSet: true })).toBe('UTC');
    } finally {
      await shop.close();
    }
  });
});

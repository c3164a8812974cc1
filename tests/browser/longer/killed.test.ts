import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openShop } from '../../../src/records/database/database.ts';
import { post } from '../../faults/kit/http.ts';
import { newFolder, start } from '../../faults/kit/program.ts';
import { faultsIn, jobForm, look } from '../../faults/kit/shop.ts';
import { DESK, openBrowser } from '../browser.ts';
import { expectTwelve, gauge, nothingWaits, opened, readingsOf, WALLS } from '../gauge.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser?.close());

it('twelve readings typed by a gauge are there once each when the server was killed twice between saving and answering', async () => {
  const dataDir = newFolder();
  const inside = ['unanswered'];
  const first = await start({ dataDir, inside, env: { KILL_AT: '2' } });
  const port = String(first.port);
  expect((await post(first.url, '/jobs', { ...jobForm('K-1'), family: '1125-4-plain' })).status).toBe(303);
  const context = await browser.newContext({ viewport: DESK });
  // This shop, of a process of its own, is in inches.
  await context.addCookies([{ name: 'unit', value: 'mm', url: first.url }]);
  const page = await opened(context, first.url, 'K-1');
  const OF_THE_JOB = `SELECT typed FROM reading WHERE job_id = (SELECT id FROM job WHERE number = 'K-1')`;
  const kept = () =>
    look(dataDir, (raw) => raw.prepare(`${OF_THE_JOB} ORDER BY revision, place`).pluck().all());
  const shown = () => page.locator('#on-server li').count();

  await gauge(page, WALLS.slice(0, 5));
  expect((await first.ended).signal).toBe('SIGKILL');
  const afterFirst = kept();
  expect(afterFirst).toEqual(WALLS.slice(0, afterFirst.length));
  // On record, and nobody was told.
  expect(afterFirst.length).toBeGreaterThan(await shown());
  await gauge(page, WALLS.slice(5, 8));
  expect(kept()).toEqual(afterFirst);

  const second = await start({ dataDir, inside, env: { KILL_AT: '1', PORT: port } });
  await gauge(page, WALLS.slice(8, 9));
  expect((await second.ended).signal).toBe('SIGKILL');
  const afterSecond = kept();
  expect(afterSecond).toEqual(WALLS.slice(0, afterSecond.length));
  expect(afterSecond.length).toBeGreaterThan(afterFirst.length);
  expect(await page.locator('#waiting-count').textContent()).not.toBe('0');

  const third = await start({ dataDir, env: { PORT: port } });
  await gauge(page, WALLS.slice(9));
  await nothingWaits(page);
  expect(await shown()).toBe(12);
  expect(look(dataDir, faultsIn)).toEqual([]);
  await context.close();
  expect((await third.stop()).code).toBe(0);
  const shop = openShop({ dataDir, now: () => new Date() });
  expectTwelve(await readingsOf(shop, 'K-1'));
  await shop.close();
});

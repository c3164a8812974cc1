import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { findJobs } from '../../../src/records/jobs/findJobs.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { openLan, PASSWORD, PEOPLE } from '../../web/lan.ts';
import { expectAccessible } from '../axe.ts';
import { openBrowser, openProgram, PHONE } from '../browser.ts';

/** The measuring page while there is no network. */
let browser: Browser;

beforeAll(async () => {
  browser = await openBrowser('shop.example');
});
afterAll(() => browser?.close());

async function typed(page: Page, ...readings: readonly string[]): Promise<void> {
  await page.focus('#reading');
  for (const reading of readings) {
    await page.keyboard.type(reading);
    await page.keyboard.press('Enter');
  }
}

const waits = (page: Page, count: string) =>
  page.waitForFunction((n) => document.getElementById('waiting-count')?.textContent === n, count);

/** Readings in the page as it is kept, once all its parts are; -1 before. */
const readingsKept = (page: Page) =>
  page.evaluate(async () => {
    for (const name of await caches.keys()) {
      const cache = await caches.open(name);
      const keys = await cache.keys();
      const key = keys.find(({ url }) => url.includes('/measure?'));
      if (key === undefined || keys.length < 20) continue;
      const kept = (await (await cache.match(key))?.text()) ?? '';
      return Number(/id="server-count">(\d+)</.exec(kept)?.[1] ?? -1);
    }
    return -1;
  });

/** Until the page is kept as it is now, with so many readings in it. */
const keptWith = (page: Page, readings: number) => expect.poll(() => readingsKept(page)).toBe(readings);

async function signIn(page: Page): Promise<void> {
  await page.fill('#f-name', PEOPLE.recorder.name);
  await page.fill('#f-password', PASSWORD);
  await page.click('#sign-in');
}

it('on the machine itself it opens again without the network, says since when it is kept, and sends what was typed', async () => {
  const program = await openProgram();
  const { number } = (await findJobs(program.shop.db, { limit: 1, stage: 'to-measure' })).jobs[0]!;
  const context = await browser.newContext({ viewport: PHONE });
  const page = await context.newPage();
  const address = `${program.url}/jobs/${number}/measure?pass=before`;
  await page.goto(address);
  await page.fill('#f-who', 'AK');
  const before = Number(await page.textContent('#server-count'));
  await typed(page, '4.92', '4.9', '4.86');
  await waits(page, '0');
  await keptWith(page, before + 3);
  expect(await page.isVisible('#kept-copy')).toBe(false);
  expect(await page.isVisible('#keep-open')).toBe(false);

  await offline(context, true);
  await page.goto(address);
  expect(await page.textContent('#kept-copy')).toMatch(
    /a copy saved on this tablet on \w+ \d+, \d{4}, \d+:\d\d/,
  );
  expect(await page.isVisible('#kept-copy')).toBe(true);
  expect(await page.textContent('#server-count')).toBe(String(before + 3));
  await expectAccessible(page, 'the measuring page kept on the tablet');
  await page.fill('#f-who', 'AK');
  await typed(page, '4.83');
  await waits(page, '1');
  await page.close();
  const again = await context.newPage();
  await again.goto(address);
  await waits(again, '1');
  expect(await again.locator('#asked').textContent()).not.toBe(null);

  await again.close();

  await offline(context, false);
  const onJob = await context.newPage();
  await onJob.goto(`${program.url}/jobs/${number}`);
  expect(await onJob.textContent('#waiting-here')).toContain('1 reading of this job is still on this tablet');
  expect(await onJob.isVisible('#waiting-here')).toBe(true);
  await onJob.click('#waiting-here a');
  expect(await onJob.isVisible('#kept-copy')).toBe(false);
  await onJob.fill('#f-who', 'AK');
  await onJob.press('#f-who', 'Tab');
  await waits(onJob, '0');
  const { readings } = (await getJob(program.shop.db, number))!;
  expect(readings.filter((one) => one.typed === '4.83').length).toBe(1);
  await onJob.goto(`${program.url}/jobs/${number}`);
  expect(await onJob.isVisible('#waiting-here')).toBe(false);
  await context.close();
  await program.close();
});

it('over plain http it says to stay open, and asks before it is closed while readings wait', async () => {
  const lan = await openLan();
  const { number } = (await findJobs(lan.shop.db, { limit: 1, stage: 'to-measure' })).jobs[0]!;
  const context = await browser.newContext({ viewport: PHONE });
  const page = await context.newPage();
  const asked: string[] = [];
  page.on('dialog', (dialog) => {
    asked.push(dialog.type());
    void dialog.dismiss();
  });
  await page.goto(`http://${lan.host}/jobs/${number}/measure?pass=before`);
  await signIn(page);
  await page.waitForSelector('#reading');
  expect(await page.evaluate(() => globalThis.isSecureContext)).toBe(false);
  await page.waitForSelector('#keep-open:visible');
  expect(await page.textContent('#keep-open')).toContain('Keep this page open while you measure');
  expect(await page.isVisible('#keep-open')).toBe(true);
  await context.setOffline(true);
  await typed(page, '4.92');
  await waits(page, '1');
  await page.close({ runBeforeUnload: true });
  await expect.poll(() => asked).toEqual(['beforeunload']);
  expect(page.isClosed()).toBe(false);
  await context.setOffline(false);
  await waits(page, '0');
  await page.close({ runBeforeUnload: true });
  await expect.poll(() => page.isClosed()).toBe(true);
  expect(asked).toEqual(['beforeunload']);
  await context.close();
  await lan.close();
});

it('nothing kept of the page is left once its person has signed out', async () => {
  const lan = await openLan();
  const { number } = (await findJobs(lan.shop.db, { limit: 1, stage: 'to-measure' })).jobs[0]!;
  const context = await browser.newContext({ viewport: PHONE });
  const page = await context.newPage();
  const address = `http://127.0.0.1:${lan.port}/jobs/${number}/measure?pass=before`;
  await page.goto(address);
  await signIn(page);
  await page.waitForSelector('#reading');
  await keptWith(page, Number(await page.textContent('#server-count')));
  await page.click('#sign-out');
  await page.waitForURL(/sign-in/);
  await expect.poll(() => page.evaluate(async () => (await caches.keys()).length)).toBe(0);
  await offline(context, true);
  await expect(page.goto(address)).rejects.toThrow(/ERR_INTERNET_DISCONNECTED|ERR_FAILED/);
  await context.close();
  await lan.close();
});

/** Without the network for pages and for the service worker between them and it. */
async function offline(context: BrowserContext, off: boolean): Promise<void> {
  await context.setOffline(off);
}

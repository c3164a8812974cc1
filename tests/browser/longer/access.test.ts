import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { RecordsPage, type RecordsProps } from '../../../views/pages/backupsPage.tsx';
import { renderPage } from '../../../views/render.ts';
import { expectAccessible } from '../axe.ts';
import { openBrowser, openProgram, type Program, settled } from '../browser.ts';

/** Screens for people who see little, or use no mouse; in every look, and with large letters, in everyLook.test.ts. */
let browser: Browser;
let program: Program;
let context: BrowserContext;
let page: Page;
beforeAll(async () => {
  browser = await openBrowser();
  program = await openProgram();
});
afterAll(async () => {
  await browser?.close();
  await program.close();
});
afterEach(() => context.close());

it.each([
  '/cover/example/1125-4-plain-bright',
  '/jobs/1008',
  '/jobs',
  '/stud',
  '/catalogue/steel/pressing-steel',
  '/no-such-page',
])('%s says each state by a word in the colors of the system, too, and nothing moves', async (path) => {
  context = await browser.newContext({ forcedColors: 'active', reducedMotion: 'reduce' });
  page = await context.newPage();
  await page.goto(program.url + path);
  const mute = await page.$$eval(
    '[data-status]',
    (states) => states.filter((one) => !/OK|Caution|Not checked|Advice/.test(one.textContent ?? '')).length,
  );
  expect(mute).toBe(0);
  const moving = await page.evaluate(() => document.getAnimations().length);
  expect(moving).toBe(0);
});

const RUNNING: Omit<RecordsProps, 'frame'> = {
  counts: { jobs: 1, putAway: 0, readings: 0, photos: 0 },
  where: 'a folder',
  inPostgres: false,
  daily: null,
  kept: null,
  backups: [],
  failure: null,
  refused: null,
  underWay: { words: 'Copying photos: 3 of 40', done: 3, of: 40 },
  stopped: null,
  lastAway: null,
  copyDue: null,
  awayRefused: null,
};

it('the focus goes along while a backup is made: to the button that stops it, and back', async () => {
  context = await browser.newContext();
  page = await context.newPage();
  await page.goto(`${program.url}/records`);
  let looked = 0;
  let made = false;
  const running = renderPage(
    RecordsPage({
      ...RUNNING,
      frame: {
        shopName: 'Demo shop',
        demo: true,
        lengthUnit: 'mm',
        decimalSign: 'point',
        timeZone: 'UTC',
        initials: '',
        address: '/records',
      },
    }),
  );
  await page.route('**/records**', (route) => {
    looked += 1;
    return made ? route.continue() : route.fulfill({ contentType: 'text/html', body: running });
  });
  const focused = () => page.evaluate(() => document.activeElement?.id);
  await page.focus('#backup-now');
  await page.keyboard.press('Enter');
  await page.waitForSelector('#making');
  await settled(page);
  expect(await focused()).toBe('stop-making');
  await expectAccessible(page, 'a backup under way');
  const before = looked;
  await expect.poll(() => looked).toBeGreaterThan(before + 1);
  await settled(page);
  expect(await focused()).toBe('stop-making');
  made = true;
  await page.waitForSelector('#backup-now');
  await settled(page);
  expect(await focused()).toBe('backup-now');
});

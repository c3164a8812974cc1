import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { LEAST_ROLE } from '../../../src/web/people/roles.ts';
import { RecordsPage, type RecordsProps } from '../../../views/pages/backupsPage.tsx';
import { renderPage } from '../../../views/render.ts';
import { expectAccessible, expectNoSidewaysScroll } from '../axe.ts';
import { openBrowser, openProgram, type Program, settled } from '../browser.ts';

/** Screens for people who see little, or use no mouse: large letters, narrow pages, the system's own colors. */
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

/** Every page that has one address, and one of each kind of those with a name in it. */
const SCREENS = [
  ...Object.keys(LEAST_ROLE)
    .filter((route) => /^GET \/(?!api|assets|health|sign-in|first|account|people)[^:.]*$/.test(route))
    .map((route) => route.slice('GET '.length)),
  '/cover/example/1125-4-plain-bright',
  '/jobs/1001',
  '/jobs/1008',
  '/jobs/1016/measure',
  '/jobs/1016/measure/paste',
  '/catalogue/family/new',
  '/catalogue/stud/new',
  '/catalogue/stack/new',
  '/catalogue/gauge/new',
  '/catalogue/steel/new',
  '/catalogue/steel/pressing-steel',
  '/catalogue/lining/new',
  '/catalogue/lining/tan-paper-lining',
  '/catalogue/lathe/new',
  '/catalogue/lathe/lathe-2',
  '/no-such-page',
];

it.each(SCREENS)('%s fits 320 px, and letters twice as large at 640 px', async (path) => {
  context = await browser.newContext({ viewport: { width: 320, height: 640 } });
  page = await context.newPage();
  await page.goto(program.url + path);
  await expectNoSidewaysScroll(page, `${path} at 320 px`);
  await page.setViewportSize({ width: 640, height: 900 });
  await page.evaluate(() => {
    const { style } = document.documentElement;
    style.setProperty(
      'font-size',
      `${2 * Number.parseFloat(getComputedStyle(document.documentElement).fontSize)}px`,
    );
  });
  await expectNoSidewaysScroll(page, `${path} with letters twice as large`);
});

it.each([
  '/cover/example/1125-4-plain-bright',
  '/jobs/1008',
  '/jobs',
  '/stud',
  '/catalogue/steel/pressing-steel',
  '/no-such-page',
])('%s is whole in the colors of the system, and says each state by a word', async (path) => {
  context = await browser.newContext({ forcedColors: 'active', reducedMotion: 'reduce' });
  page = await context.newPage();
  await page.goto(program.url + path);
  await expectAccessible(page, `${path} in forced colors`);
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

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openBrowser, openProgram, type Program } from '../browser.ts';

/** How long a job's page is: the answer and what it asks for first, the rest in rows that are opened by who wants them. */
let browser: Browser;
let program: Program;

const DESK = { width: 1440, height: 900 };
const TABLET = { width: 820, height: 1100 };
const PHONE = { width: 360, height: 740 };

beforeAll(async () => {
  browser = await openBrowser();
  program = await openProgram({ unit: 'in' });
});
afterAll(async () => {
  await browser?.close();
  await program?.close();
});

const PLAN = '#decide figure svg.plan';
const JOBS_TO_DECIDE = [1006, 1007, 1008, 1009, 1010, 1011, 1012, 1013, 1014, 1019];

async function open(job: number, viewport: typeof DESK): Promise<Page> {
  const page = await browser.newPage({ viewport });
  await page.goto(`${program.url}/jobs/${job}`);
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  return page;
}

const heightOf = (page: Page) => page.evaluate(() => document.documentElement.scrollHeight);
const openRows = (page: Page) =>
  page.$$eval('#decide details.answer-row', (rows) =>
    rows.filter((row) => (row as HTMLDetailsElement).open).map(({ dataset }) => dataset.status),
  );

/** The lowest edge of what is shown there. */
async function footOf(page: Page, selector: string): Promise<number> {
  const { y, height } = (await page.locator(selector).first().boundingBox())!;
  return y + height;
}

it.each(JOBS_TO_DECIDE)(
  'job %i to decide: answer, drawing and form in one view of a desk, then a closed row for each subject that is OK',
  async (job) => {
    const page = await open(job, DESK);
    for (const selector of ['#decide .verdict', '#decide .why', PLAN, '#decision-form-send']) {
      expect(await footOf(page, selector), selector).toBeLessThanOrEqual(DESK.height);
    }
    expect(await page.locator('#decide details.answer-row').count()).toBeGreaterThanOrEqual(6);
    expect((await openRows(page)).filter((one) => one === 'pass' || one === 'advice')).toEqual([]);
    for (const [viewport, most] of [
      [DESK, 2200],
      [TABLET, 2900],
      [PHONE, 4400],
    ] as const) {
      await page.setViewportSize(viewport);
      expect(await heightOf(page), `as it opens, at ${viewport.width} px`).toBeLessThanOrEqual(most);
    }
    expect(await footOf(page, PLAN), 'the first answer on a phone').toBeLessThanOrEqual(2 * PHONE.height);
    await page.$$eval('#decide details.answer-row', (rows) => {
      for (const row of rows) (row as HTMLDetailsElement).open = false;
    });
    for (const [viewport, most] of [
      [DESK, 1600],
      [TABLET, 2400],
      [PHONE, 3750],
    ] as const) {
      await page.setViewportSize(viewport);
      expect(await heightOf(page), `closed, at ${viewport.width} px`).toBeLessThanOrEqual(most);
    }
    await page.close();
  },
);

it('on a phone the verdict stays in sight while it is decided', async () => {
  const page = await open(1006, PHONE);
  await page.check('#decision-form [name="decision"][value="replace"]');
  for (const box of ['#decision-form [name="reason"]', '#decision-form [name="who"]']) {
    await page.locator(box).focus();
    const verdict = (await page.locator('#decide .verdict').boundingBox())!;
    const typed = (await page.locator(box).boundingBox())!;
    const stays = (await page.locator('#decide .verdict-head > div').first().boundingBox())!;
    expect(verdict.y).toBeGreaterThanOrEqual(0);
    expect(typed.y).toBeGreaterThanOrEqual(stays.y + stays.height);
    expect(stays.height).toBeLessThanOrEqual(PHONE.height / 5);
  }
  await page.close();
});

it('the table of readings waits folded under the way to the bench, and opens with what is asked about', async () => {
  const page = await open(1016, PHONE);
  expect(await page.locator('#measure > details').getAttribute('open')).not.toBeNull();
  expect(await page.locator('#before-form [name="w.0"]').isVisible()).toBe(false);
  expect(await heightOf(page)).toBeLessThanOrEqual(2000);
  await page.click('#before-typed > summary');
  await page.fill('#before-form [name="w.0"]', 'about five');
  await page.click('#before-form-send');
  await page.waitForLoadState();
  expect(await page.inputValue('#before-form [name="w.0"]')).toBe('about five');
  expect(await page.locator('#before-form [name="w.0"]').isVisible()).toBe(true);
  await page.close();
});

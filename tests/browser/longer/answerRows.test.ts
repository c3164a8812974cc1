import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from '../axe.ts';
import { openBrowser, openProgram, type Program, settled } from '../browser.ts';

let browser: Browser;
let program: Program;
let example: string;

const DESK = { width: 1440, height: 900 };
const PHONE = { width: 360, height: 740 };

beforeAll(async () => {
  browser = await openBrowser();
  program = await openProgram({ unit: 'in' });
  const page = await browser.newPage();
  await page.goto(program.url);
  example = (await page.getAttribute('#way-example', 'href'))!;
  await page.close();
});
afterAll(async () => {
  await browser?.close();
  await program?.close();
});

async function open(path: string, viewport: typeof DESK): Promise<Page> {
  const page = await browser.newPage({ viewport });
  await page.goto(program.url + path);
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  return page;
}

const opened = (page: Page) =>
  page.$$eval('details.answer-row', (rows) =>
    rows.filter((row) => (row as HTMLDetailsElement).open).map(({ id }) => id),
  );

const pageHeight = (page: Page) => page.evaluate(() => document.documentElement.scrollHeight);

describe('a cover, checked quickly, in rows', () => {
  it('has its whole answer within 1,600 px on a desk, and every row closed where nothing is wrong', async () => {
    const page = await open(example, DESK);
    expect(await page.locator('details.answer-row').count()).toBeGreaterThanOrEqual(6);
    expect(await opened(page)).toEqual([]);
    expect(await pageHeight(page)).toBeLessThanOrEqual(1600);
    for (const row of await page.locator('details.answer-row > summary').all()) {
      expect((await row.boundingBox())!.height).toBeLessThanOrEqual(60);
    }
    await page.close();
  });

  it('has verdict and drawing within two screens of a phone, and the verdict in sight while readings are typed', async () => {
    const page = await open(example, PHONE);
    const drawing = (await page.locator('#cover-answer').boundingBox())!;
    expect(drawing.y + drawing.height).toBeLessThanOrEqual(2 * PHONE.height);
    await page.locator('[name="w.9"]').focus();
    const verdict = (await page.locator('#cover-head h1').boundingBox())!;
    const box = (await page.locator('[name="w.9"]').boundingBox())!;
    expect(verdict.y).toBeGreaterThanOrEqual(0);
    expect(box.y).toBeGreaterThan(verdict.y + verdict.height);
    const stays = (await page.locator('#cover-head .verdict-head > div').first().boundingBox())!;
    expect(stays.height).toBeLessThanOrEqual(PHONE.height / 5);
    await page.close();
  });

  it('keeps a row as it was left while another reading is typed, and the focus in its box', async () => {
    const page = await open(example, DESK);
    await page.click('#cover-row-balance > summary');
    const before = await page.locator('#cover-row-wall .row-figure').textContent();
    await page.fill('[name="w.7"]', '0.190');
    await page.waitForFunction(
      (was) => document.querySelector('#cover-row-wall .row-figure')?.textContent !== was,
      before,
    );
    await settled(page);
    expect(await opened(page)).toContain('cover-row-balance');
    expect(await page.evaluate(() => (document.activeElement as HTMLInputElement).name)).toBe('w.7');
    await page.click('#cover-row-balance > summary');
    await page.fill('[name="w.7"]', '0.1901');
    await page.waitForURL(/w\.7=0\.1901/);
    await settled(page);
    expect(await opened(page)).not.toContain('cover-row-balance');
    await page.close();
  });

  it('opens what is not OK, with and without a script', async () => {
    const page = await open(example, DESK);
    const address = new URL(page.url());
    address.searchParams.set('crack', 'found');
    await page.goto(address.toString());
    expect(await opened(page)).toEqual(['cover-row-looked']);
    await page.close();
    const bare = await browser.newContext({ viewport: PHONE, javaScriptEnabled: false });
    const still = await bare.newPage();
    await still.goto(address.toString());
    expect(await still.locator('#cover-row-looked[open] .finding').count()).toBeGreaterThan(0);
    await still.click('#cover-row-bending > summary');
    expect(await still.locator('#cover-bending').isVisible()).toBe(true);
    await bare.close();
  });

  it.each([
    ['a desk', DESK],
    ['a tablet', { width: 820, height: 1180 }],
    ['a phone', PHONE],
  ] as const)('is accessible with every row open, on %s, light and dark', async (where, viewport) => {
    const page = await open(example, viewport);
    await page.$$eval('details.answer-row', (rows) => {
      for (const row of rows) (row as HTMLDetailsElement).open = true;
    });
    await expectAccessible(page, `rows open on ${where}`);
    await expectNoSidewaysScroll(page, `rows open on ${where}`);
    await page.emulateMedia({ colorScheme: 'dark' });
    await expectAccessible(page, `rows open on ${where}, dark`);
    await page.close();
  });

  it('prints every row', async () => {
    const page = await open(example, DESK);
    await page.emulateMedia({ media: 'print' });
    await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
    expect(await page.locator('#cover-bending').isVisible()).toBe(true);
    expect(await page.locator('#cover-answer svg').first().isVisible()).toBe(true);
    await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
    expect(await opened(page)).toEqual([]);
    await page.close();
  });
});

describe('a stud, in rows', () => {
  async function answered(viewport: typeof DESK): Promise<Page> {
    const page = await open('/stud', viewport);
    const twoPiece = page.locator('#f-stack option', { hasText: /two.piece/i }).first();
    await page.selectOption('#f-stack', (await twoPiece.getAttribute('value')) ?? '');
    await page.waitForSelector('#stud-head .verdict');
    await settled(page);
    return page;
  }

  it('has joint, tolerances and shims in a closed row each, all within 1,600 px on a desk', async () => {
    const page = await answered(DESK);
    for (const row of ['stud-row-fit', 'stud-row-joint', 'tolerances', 'stud-row-shims'])
      expect(await page.locator(`#${row} > summary .sign-word`).textContent()).not.toBe('');
    expect(await opened(page)).toEqual([]);
    const last = (await page.locator('#stud-row-shims').boundingBox())!;
    expect(last.y + last.height).toBeLessThanOrEqual(1600);
    await page.close();
  });

  it('is accessible with every row open, and opens what does not fit', async () => {
    const page = await answered(PHONE);
    await page.$$eval('details.answer-row', (rows) => {
      for (const row of rows) (row as HTMLDetailsElement).open = true;
    });
    await expectAccessible(page, 'a stud, rows open, on a phone');
    await expectNoSidewaysScroll(page, 'a stud, rows open, on a phone');
    const withCare = page.locator('a.row.ranked:not([aria-current])').first();
    expect(await withCare.textContent()).toContain('fits with care');
    await page.goto(program.url + (await withCare.getAttribute('href')));
    expect(await opened(page)).toEqual(['stud-row-fit']);
    await page.close();
  });
});

describe('the ways in, on a phone', () => {
  it.each(['/cover', '/stud', '/jobs', '/criteria', '/catalogue'])(
    'stand on one line of %s and say where one is',
    async (path) => {
      const page = await open(path, PHONE);
      const places = page.locator('nav.places');
      expect((await places.boundingBox())!.height).toBeLessThanOrEqual(52);
      const here = page.locator('nav.places > ul [aria-current], nav.places .more-here');
      expect(await here.count()).toBe(1);
      expect(await here.isVisible()).toBe(true);
      await page.click('#more-places > summary');
      await page.locator('#more-places a[href="/criteria"]').waitFor({ state: 'visible' });
      await expectAccessible(page, `${path} with More open`);
      await expectNoSidewaysScroll(page, `${path} with More open`);
      await page.close();
    },
  );

  it('stand all beside one another on a desk', async () => {
    const page = await open('/criteria', DESK);
    expect(await page.locator('nav.places a[href="/criteria"]').isVisible()).toBe(true);
    expect(await page.locator('#more-places > summary').isVisible()).toBe(false);
    await page.close();
  });
});

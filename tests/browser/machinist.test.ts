import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from './axe.ts';
import { openBrowser, openProgram, type Program, SCREENS, settled, unfold } from './browser.ts';
import { Hands } from './hands.ts';

let browser: Browser;
let program: Program;

beforeAll(async () => {
  browser = await openBrowser();
  program = await openProgram({ publicUrl: 'http://coverwright.example:4180' });
});
afterAll(async () => {
  await browser?.close();
  await program?.close();
});

/** Invented readings: wall, face height, mark depth, in the order of the stations; and the wall after the cut. */
const READINGS = [
  ['4.92', '0.06', '0.20', '4.51'],
  ['4.90', '0.05', '', '4.50'],
  ['4.86', '0.01', '0.12', '4.50'],
  ['4.83', '-0.02', '', '4.50'],
  ['4.80', '-0.05', '0.25', '4.50'],
  ['4.81', '-0.04', '', '4.50'],
  ['4.85', '0', '0.10', '4.50'],
  ['4.90', '0.04', '', '4.51'],
  ['4.93', '0.07', '0.10', '4.51'],
  ['4.86', '0.01', '0.05', '4.50'],
  ['4.79', '-0.06', '0.15', '4.50'],
  ['4.85', '0', '0.05', '4.50'],
] as const;

async function screen(page: Page, name: string): Promise<void> {
  await expectAccessible(page, name);
  await expectNoSidewaysScroll(page, name);
}

/** Types a column as a gauge does: the reading, then Enter, which goes to the next station. */
async function typeColumn(page: Page, form: string, key: 'w' | 'f' | 'd', column: number): Promise<void> {
  await page.locator(`#${form} [name="${key}.0"]`).focus();
  for (const row of READINGS) {
    await page.keyboard.type(row[column] ?? '');
    await page.keyboard.press('Enter');
  }
}

describe.each(SCREENS)('the machinist, on %s', (where, viewport) => {
  it('has a demo cover decided from the front page in at most five actions', async () => {
    const page = await browser.newPage({ viewport });
    const hands = new Hands(page);
    await page.goto(program.url);
    await screen(page, `front page on ${where}`);
    await hands.press('#way-example');
    await page.waitForSelector('#cover-head .verdict');
    expect(await page.locator('#cover-head h1').textContent()).toMatch(/^Face it/);
    expect(await page.locator('#cover-head .why').textContent()).toMatch(/leaves \d/);
    expect(hands.actions).toBeLessThanOrEqual(5);
    await screen(page, `a cover, answered, on ${where}`);
    await page.close();
  });

  it('measures twelve stations, decides, cuts, measures again, signs and prints', async () => {
    const page = await browser.newPage({ viewport });
    const problems: string[] = [];
    page.on('console', (message) => message.type() === 'error' && problems.push(message.text()));
    page.on('pageerror', (error) => problems.push(error.message));

    await page.goto(program.url);
    await page.click('#way-job');
    await screen(page, `receive on ${where}`);
    await page.selectOption('#f-family', '1125-4-plain');
    await page.fill('#f-customer', 'Demo customer 7');
    await page.fill('#f-who', 'AK');
    await page.click('#receive');
    await page.waitForURL(/\/jobs\/\d+$/);
    const job = page.url();
    expect(await page.locator('h1').textContent()).toContain('To inspect');
    await screen(page, `a job to look over, on ${where}`);

    await page.locator('#looked-form input[name="crackTest"][value="none-found"]').check();
    await page.locator('#looked-form input[name="crackMethod"][value="dye"]').check();
    await page.click('#looked-form-send');
    expect(await page.locator('h1').textContent()).toContain('To measure');
    await screen(page, `a job to measure, on ${where}`);

    await page.click('#before-typed > summary');
    await typeColumn(page, 'before-form', 'w', 0);
    await typeColumn(page, 'before-form', 'f', 1);
    await typeColumn(page, 'before-form', 'd', 2);
    await page.click('#before-form-send');
    expect(await page.locator('h1').textContent()).toContain('To decide');
    expect(await page.locator('#decide .verdict').textContent()).toMatch(/^Face it: 0\.421\smm\.$/);
    await screen(page, `a job to decide, on ${where}`);

    await page.click('#decision-form-send');
    expect(await page.locator('h1').textContent()).toContain('To cut');
    await screen(page, `a job to cut, on ${where}`);

    await page.fill('#cuts-form [name="depth"]', '0.421');
    await page.click('#cuts-form-send');
    expect(await page.locator('h1').textContent()).toContain('To re-measure');

    await page.click('#after-typed > summary');
    await typeColumn(page, 'after-form', 'w', 3);
    await page.click('#after-form-send');
    expect(await page.locator('h1').textContent()).toContain('To sign');
    expect(await page.locator('#verify').textContent()).toContain(
      'Every station measured before the cut was measured again after it.',
    );
    await screen(page, `a job to sign, on ${where}`);

    await unfold(page, '#signature-form [name="statement"]');
    await page.fill('#signature-form [name="statement"]', 'Face runout not read.');
    await page.click('#signature-form-send');
    expect(await page.locator('h1').textContent()).toContain('Signed');
    await screen(page, `a signed job, on ${where}`);

    await page.click('#to-sheet');
    await screen(page, `the sheet on ${where}`);
    const sheet = (await page.locator('article.page').textContent())?.replaceAll('\u00a0', ' ');
    for (const word of [
      'Face it: 0.421 mm',
      'No cracks found by dye penetrant',
      'Passes made; decided: 0.421 mm',
      'Thinnest wall, measured after the cut4.500 mm',
      'AK',
    ]) {
      expect(sheet).toContain(word);
    }
    expect(pagesOf(await page.pdf({ format: 'A4' }))).toBe(1);
    expect(pagesOf(await page.pdf({ format: 'Letter' }))).toBe(1);

    await page.goto(`${job}/tag`);
    expect(await page.locator('.tag svg').getAttribute('aria-label')).toContain(
      'http://coverwright.example:4180/jobs/',
    );
    await screen(page, `the tag on ${where}`);
    expect(problems).toEqual([]);
    await page.close();
  });

  it('is asked at once about a slipped decimal, and goes back without losing what was typed', async () => {
    const page = await browser.newPage({ viewport });
    await page.goto(`${program.url}/cover`);
    await page.selectOption('#f-family', '1125-4-plain');
    await page.waitForURL(/family=/);
    await settled(page);
    await page.fill('[name="w.0"]', '0.492');
    await page.waitForSelector('.doubt');
    expect(await page.locator('.doubt').textContent()).toContain('Did you mean 4.92');
    await screen(page, `a doubted reading on ${where}`);
    await page.click('[id="use-w.0"]');
    await page.waitForFunction(() => document.querySelector('.doubt') === null);
    expect(await page.inputValue('[name="w.0"]')).toMatch(/^4\.92/);
    await page.fill('[name="w.1"]', 'about five');
    await page.waitForSelector('#cover-head h1:has-text("Check what was entered")');
    expect(await page.locator('#cover-head .why').textContent()).toContain(
      '"about five" is not a plain number',
    );
    expect(await page.inputValue('[name="w.1"]')).toBe('about five');
    await page.click('nav a[href="/jobs"]');
    await page.waitForURL(/\/jobs$/);
    await page.goBack();
    expect(await page.inputValue('[name="w.1"]')).toBe('about five');
    expect(await page.inputValue('[name="w.0"]')).toMatch(/^4\.92/);
    await page.close();
  });
});

/** A page object in a PDF that Chrome writes. */
function pagesOf(pdf: Buffer): number {
  return (pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g) ?? []).length;
}

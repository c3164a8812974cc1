import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { DESK, openBrowser, openProgram, type Program } from './browser.ts';

let browser: Browser;
let program: Program;

beforeAll(async () => {
  browser = await openBrowser();
  program = await openProgram();
});
afterAll(async () => {
  await browser?.close();
  await program?.close();
});

/** Invented readings: wall and indicator reading at each station, and the wall after the cut. */
const READINGS = [
  ['4.92', '0.06', '4.51'],
  ['4.90', '0.05', '4.50'],
  ['4.86', '0.01', '4.50'],
  ['4.83', '-0.02', '4.50'],
  ['4.80', '-0.05', '4.50'],
  ['4.81', '-0.04', '4.50'],
  ['4.85', '0', '4.50'],
  ['4.90', '0.04', '4.51'],
  ['4.93', '0.07', '4.51'],
  ['4.86', '0.01', '4.50'],
  ['4.79', '-0.06', '4.50'],
  ['4.85', '0', '4.50'],
] as const;

/** Goes on with the tab key until what is meant has the focus, as somebody without a mouse does. */
async function tabTo(page: Page, selector: string): Promise<void> {
  for (let presses = 0; presses < 250; presses++) {
    if (await page.evaluate((wanted) => document.activeElement?.matches(wanted) ?? false, selector)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`The tab key never reached ${selector}.`);
}

async function press(page: Page, selector: string): Promise<void> {
  await tabTo(page, selector);
  await Promise.all([page.waitForEvent('load'), page.keyboard.press('Enter')]);
}

async function type(page: Page, selector: string, text: string): Promise<void> {
  await tabTo(page, selector);
  await page.keyboard.type(text);
}

/** The column of a table, each reading ended with Enter. */
async function column(page: Page, first: string, readings: readonly string[]): Promise<void> {
  await tabTo(page, first);
  for (const reading of readings) {
    await page.keyboard.type(reading);
    await page.keyboard.press('Enter');
  }
}

const state = (page: Page) => page.locator('h1').textContent();

it('the whole job is done by keyboard alone, from receipt to signature', async () => {
  const page = await browser.newPage({ viewport: DESK });
  page.setDefaultTimeout(60_000);
  await page.goto(program.url);
  await press(page, '#way-job');
  await tabTo(page, '#f-family');
  await page.keyboard.type('1125-4 stamped, plain');
  expect(await page.inputValue('#f-family')).toBe('1125-4-plain');
  await type(page, '#f-who', 'AK');
  await press(page, '#receive');
  expect(await state(page)).toContain('To inspect');

  await tabTo(page, '#looked-form [name="crackTest"]');
  await page.keyboard.press('ArrowDown');
  expect(await page.isChecked('#looked-form [name="crackTest"][value="none-found"]')).toBe(true);
  await page.keyboard.press('Tab');
  await page.keyboard.press('Space');
  expect(await page.isChecked('#looked-form [name="crackMethod"][value="dye"]')).toBe(true);
  await press(page, '#looked-form-send');
  expect(await state(page)).toContain('To measure');

  await column(
    page,
    '#before-form [name="w.0"]',
    READINGS.map(([wall]) => wall),
  );
  await page.keyboard.press('Shift+Tab');
  await backTo(page, '#before-form [name="f.0"]');
  await column(
    page,
    '#before-form [name="f.0"]',
    READINGS.map(([, face]) => face),
  );
  await press(page, '#before-form-send');
  expect(await state(page)).toContain('To decide');

  await press(page, '#decision-form-send');
  expect(await state(page)).toContain('To cut');

  const cut = /([\d.]+) mm/.exec((await page.locator('#cut .section-summary').textContent()) ?? '')?.[1];
  await type(page, '#cuts-form [name="depth"]', cut!);
  await press(page, '#cuts-form-send');
  expect(await state(page)).toContain('To re-measure');

  await column(
    page,
    '#after-form [name="w.0"]',
    READINGS.map(([, , wall]) => wall),
  );
  await press(page, '#after-form-send');
  expect(await state(page)).toContain('To sign');

  await type(page, '#signature-form [name="statement"]', 'Face runout not read.');
  await press(page, '#signature-form-send');
  expect(await state(page)).toContain('Signed');
  await page.close();
});

/** The other way, with shift and tab. */
async function backTo(page: Page, selector: string): Promise<void> {
  for (let presses = 0; presses < 80; presses++) {
    if (await page.evaluate((wanted) => document.activeElement?.matches(wanted) ?? false, selector)) return;
    await page.keyboard.press('Shift+Tab');
  }
  throw new Error(`Shift and tab never reached ${selector}.`);
}

import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from './axe.ts';
import { DESK, openBrowser, openProgram, PHONE, type Program } from './browser.ts';

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

it.each([
  ['America/New_York', true, '21 Sep 2026 04:30 GMT-4'],
  ['Asia/Kolkata', true, '21 Sep 2026 14:00 GMT+5:30'],
  ['Asia/Kolkata', false, '21 Sep 2026 08:30 UTC'],
] as const)('a moment on a tablet in %s, script %s: %s', async (timezoneId, javaScriptEnabled, told) => {
  const context = await browser.newContext({ timezoneId, javaScriptEnabled, viewport: PHONE });
  const page = await context.newPage();
  await page.goto(`${program.url}/jobs/1002/history/1`);
  const time = page.locator('.revision time');
  expect(await time.textContent()).toBe(told);
  expect(await time.getAttribute('datetime')).toBe('2026-09-21T08:30:00.000Z');
  await context.close();
});

it.each([
  ['a phone', PHONE],
  ['a desk', DESK],
] as const)('the history can be read by everybody, on %s', async (where, viewport) => {
  const page = await browser.newPage({ viewport });
  for (const path of ['/jobs/1005/history', '/jobs/1005/history/9', '/criteria', '/catalogue']) {
    await page.goto(program.url + path);
    await expectAccessible(page, `${path} on ${where}`);
    await expectNoSidewaysScroll(page, `${path} on ${where}`);
  }
  await page.close();
});

import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from '../axe.ts';
import { DESK, openBrowser, openProgram, PHONE, type Program } from '../browser.ts';

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
  ['America/New_York', true],
  ['Asia/Kolkata', true],
  ['Asia/Kolkata', false],
] as const)('a tablet in %s, with script %s, shows the time of the shop', async (timezoneId, script) => {
  const context = await browser.newContext({ timezoneId, javaScriptEnabled: script, viewport: PHONE });
  const page = await context.newPage();
  await page.goto(`${program.url}/jobs/1002/history/1`);
  const time = page.locator('.revision time');
  expect((await time.textContent())?.replaceAll('\u00a0', ' ')).toBe('Sep 21, 2026, 8:30 AM');
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

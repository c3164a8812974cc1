import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from '../axe.ts';
import { openBrowser, openProgram, type Program, SCREENS } from '../browser.ts';

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

describe.each(SCREENS)('a cover type beside its drawing, on %s', (where, viewport) => {
  it.each(['/catalogue/family/new', '/catalogue/family/1125-4-plain'])(
    'is drawn anew while a figure is typed on %s, and the hand stays in its box',
    async (path) => {
      const page = await browser.newPage({ viewport });
      const problems: string[] = [];
      page.on('console', (message) => message.type() === 'error' && problems.push(message.text()));
      page.on('pageerror', (error) => problems.push(error.message));
      await page.goto(program.url + path);
      const address = page.url();
      await page.locator('[name="circle"]').fill('');
      await page.locator('[name="circle"]').pressSequentially('287.25');
      await page.locator('#entry-drawn text', { hasText: /287\.25/ }).waitFor();
      expect(await page.evaluate(() => document.activeElement?.getAttribute('name'))).toBe('circle');
      await page.keyboard.type('x');
      await page.locator('#entry-drawn .note', { hasText: 'Not in the drawing' }).waitFor();
      expect(await page.inputValue('[name="circle"]')).toBe('287.25x');
      for (const fold of await page.locator('.folded-boxes > summary').all()) await fold.click();
      expect(page.url()).toBe(address);
      await expectAccessible(page, `${path} drawn, every fold open, on ${where}`);
      await expectNoSidewaysScroll(page, `${path} drawn, every fold open, on ${where}`);
      expect(problems).toEqual([]);
      await page.close();
    },
  );
});

it('nothing of the form scrolls sideways at 320 px', async () => {
  const page = await browser.newPage({ viewport: { width: 320, height: 720 } });
  for (const path of ['/catalogue/family/1125-4-plain', '/catalogue/stud/new', '/criteria']) {
    await page.goto(program.url + path);
    for (const fold of await page.locator('.folded-boxes > summary').all()) await fold.click();
    await expectNoSidewaysScroll(page, `${path} at 320 px`);
  }
  await page.close();
});

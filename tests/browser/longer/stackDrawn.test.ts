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

describe.each(SCREENS)('a stack entered layer by layer, on %s', (where, viewport) => {
  it.each(['/stud?stack=own', '/catalogue/stack/new', '/catalogue/stack/two-piece-four-3-8-24'])(
    'is drawn anew while a thickness is typed on %s, and the hand stays in its box',
    async (path) => {
      const page = await browser.newPage({ viewport });
      const problems: string[] = [];
      page.on('console', (message) => message.type() === 'error' && problems.push(message.text()));
      page.on('pageerror', (error) => problems.push(error.message));
      await page.goto(program.url + path);
      const address = page.url();
      await page.fill('[name="ln.0"]', 'ring');
      await page.selectOption('[name="lk.0"]', 'plate');
      await page.locator('[name="lt.0"]').fill('');
      await page.locator('[name="lt.0"]').pressSequentially('2.75');
      const figure = page.locator('#stack-drawn .dim-figure', { hasText: /^2\.75$/ });
      await figure.waitFor();
      expect(await page.evaluate(() => document.activeElement?.getAttribute('name'))).toBe('lt.0');
      expect(await page.inputValue('[name="lt.0"]')).toBe('2.75');
      await page.keyboard.type('x');
      await page.locator('#stack-drawn .note', { hasText: 'Layer 1 is not drawn.' }).waitFor();
      expect(await page.inputValue('[name="lt.0"]')).toBe('2.75x');
      await page.keyboard.press('Backspace');
      await figure.waitFor();
      expect(await page.locator('#stack-drawn').textContent()).toContain('ring (plate)');
      await page.fill('[name="pull"]', '4.25');
      await page.locator('#stack-drawn .dim-figure', { hasText: /^4\.25$/ }).waitFor();
      expect(await page.inputValue('[name="ln.0"]')).toBe('ring');
      expect(page.url()).toBe(address);
      await expectAccessible(page, `${path} with its stack drawn, on ${where}`);
      await expectNoSidewaysScroll(page, `${path} with its stack drawn, on ${where}`);
      expect(problems).toEqual([]);
      await page.close();
    },
  );
});

import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { expectAccessible, expectNoSidewaysScroll } from '../axe.ts';
import { openBrowser, openProgram, type Program } from '../browser.ts';

let browser: Browser;
let program: Program;

beforeAll(async () => {
  browser = await openBrowser();
  program = await openProgram({ unit: 'in' });
});
afterAll(async () => {
  await browser?.close();
  await program?.close();
});

it('a decision and its form stand in one view of a desk, and each step of the job stands once', async () => {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await page.goto(`${program.url}/jobs/1019`);
  for (const selector of [
    '#decide .verdict',
    '#decide .why',
    '#decide .zones-figure',
    '#decision-form input[name="decision"][value="replace"]',
    '#decision-form-fold-reason > summary',
    '#decision-form [name="who"]',
    '#decision-form-send',
  ]) {
    const box = (await page.locator(selector).boundingBox())!;
    expect(box.y, selector).toBeGreaterThanOrEqual(0);
    expect(box.y + box.height, selector).toBeLessThanOrEqual(900);
  }
  for (const step of ['Receive', 'Inspect', 'Measure', 'Decide', 'Cut', 'Re-measure', 'Studs', 'Sign']) {
    expect(await page.locator(`h2:text-matches("^\\\\d\\\\. ${step}$")`).count(), step).toBe(1);
  }
  const open = await page
    .locator('.job-section > details[open]')
    .evaluateAll((all) => all.map((one) => one.parentElement!.id));
  expect(open).toEqual(['decide']);
  expect(await page.locator('#receive .section-summary').boundingBox()).not.toBeNull();
  await page.close();
});

it('the rows under a decision open, on a phone and on a desk', async () => {
  for (const viewport of [
    { width: 360, height: 740 },
    { width: 1440, height: 900 },
  ]) {
    const page = await browser.newPage({ viewport });
    await page.goto(`${program.url}/jobs/1019`);
    await expectAccessible(page, 'a job to decide');
    await page.$$eval('#decide details:is(.answer-row, .row-rest)', (rows) => {
      for (const row of rows) (row as HTMLDetailsElement).open = true;
    });
    await expectAccessible(page, 'a job to decide, every row open');
    await expectNoSidewaysScroll(page, 'a job to decide, every row open');
    expect(await page.locator('#what-if').isVisible()).toBe(true);
    await page.close();
  }
});

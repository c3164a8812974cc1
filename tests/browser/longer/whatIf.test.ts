import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findJobs } from '../../../src/records/jobs/findJobs.ts';
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

describe.each(SCREENS)('the slider on the cut, on %s', (where, viewport) => {
  it('is followed by wall, sureness, cuts left and verdict, on quick page and job', async () => {
    const page = await browser.newPage({ viewport });
    const problems: string[] = [];
    page.on('console', (message) => message.type() === 'error' && problems.push(message.text()));
    page.on('pageerror', (error) => problems.push(error.message));
    const { jobs } = await findJobs(program.shop.db, { stage: 'to-decide', limit: 20 });
    const job = jobs.find((one) => one.familyId === '1125-4-plain') ?? jobs[0]!;
    await page.goto(program.url);
    const example = (await page.getAttribute('#way-example', 'href'))!;
    for (const path of [example, `/jobs/${job.number}`]) {
      await page.goto(program.url + path);
      const before = await page.locator('#what-if-answer').textContent();
      await page
        .locator('details:has(#what-if):not([open]) > summary')
        .evaluateAll((all) => all.map((one) => (one as HTMLElement).click()));
      await page.locator('#what-if').focus();
      await page.keyboard.press('End');
      await page.waitForFunction(
        (was) => document.getElementById('what-if-answer')?.textContent !== was,
        before,
      );
      const deepest = Number(await page.locator('#what-if').getAttribute('max'));
      expect(await page.locator('#what-if-answer').textContent()).toMatch(
        new RegExp(`${deepest.toFixed(2)}\\smm:`),
      );
      expect(await page.evaluate(() => document.activeElement?.id)).toBe('what-if');
      await expectAccessible(page, `${path} with its slider moved, on ${where}`);
      await expectNoSidewaysScroll(page, `${path} with its slider moved, on ${where}`);
    }
    expect(problems).toEqual([]);
    await page.close();
  });

  it('is followed by the bending, which is read in table and drawings', async () => {
    const page = await browser.newPage({ viewport });
    const problems: string[] = [];
    page.on('console', (message) => message.type() === 'error' && problems.push(message.text()));
    const { jobs } = await findJobs(program.shop.db, { familyId: '1025-3-plain', limit: 1 });
    await page.goto(`${program.url}/jobs/${jobs[0]!.number}?beside=1150-6-billet`);
    const bends = () =>
      page
        .locator('#what-if-answer dl > div', { hasText: 'Friction-surface waviness' })
        .locator('dd')
        .textContent();
    const before = await bends();
    const answered = await page.locator('#what-if-answer').textContent();
    await page.locator('details.answer-row:has(#what-if) > summary').click();
    await page.locator('#what-if').focus();
    await page.keyboard.press('End');
    await page.waitForFunction((was) => {
      const told = document.getElementById('what-if-answer')?.textContent ?? '';
      return told !== was && told.includes('Friction-surface waviness');
    }, answered);
    expect(await bends()).not.toBe(before);
    await page.locator('#job-bending-drawings > summary').click();
    await page.locator('#job-bending-drawn .pressure-map').first().waitFor();
    expect(await page.locator('#job-bending-drawn .bent-section').count()).toBe(1);
    await expectAccessible(page, `the bending on ${where}`);
    await expectNoSidewaysScroll(page, `the bending on ${where}`);
    expect(problems).toEqual([]);
    await page.close();
  });
});

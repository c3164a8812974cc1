import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { findJobs } from '../../../src/records/jobs/findJobs.ts';
import { jpeg } from '../../records/photos/pictures.ts';
import { expectAccessible, expectNoSidewaysScroll } from '../axe.ts';
import { openBrowser, openProgram, PHONE, type Program } from '../browser.ts';

let browser: Browser;
let program: Program;
beforeAll(async () => {
  [browser, program] = await Promise.all([openBrowser(), openProgram()]);
});
afterAll(async () => {
  await browser?.close();
  await program?.close();
});

test('a photo is taken on a phone without script, and stands in the job', async () => {
  const { jobs } = await findJobs(program.shop.db, { stage: 'to-decide', limit: 1 });
  const job = `${program.url}/jobs/${jobs[0]!.number}`;
  const context = await browser.newContext({ viewport: PHONE, javaScriptEnabled: false });
  const page = await context.newPage();
  await page.goto(job);
  if (
    !(await page
      .locator('#look details')
      .first()
      .evaluate((one) => one.hasAttribute('open')))
  ) {
    await page.locator('#look > details > summary').click();
  }
  await page.locator('#look .photos-part summary').click();
  await page.locator('#photo-look-form-place').selectOption('item:welds');
  await page
    .locator('#photo-look-form-file')
    .setInputFiles({ name: 'anything.jpg', mimeType: 'image/jpeg', buffer: await jpeg(640, 480) });
  await page.locator('#photo-look-form-note').fill('the seam by stud 2');
  await page.locator('#photo-look-form-who').fill('AK');
  await page.locator('#photo-look-form-send').click();
  await page.waitForURL(/#look$/);
  await context.close();

  const scripted = await browser.newPage({ viewport: PHONE });
  await scripted.goto(job);
  await scripted.evaluate(() => {
    for (const one of document.querySelectorAll('details')) one.open = true;
  });
  const picture = scripted.locator('.photo img');
  await picture.scrollIntoViewIfNeeded();
  await expect.poll(() => picture.evaluate((one) => (one as HTMLImageElement).naturalWidth)).toBe(320);
  expect(await picture.getAttribute('alt')).toBe('Welds: the seam by stud 2');
  await expectNoSidewaysScroll(scripted, 'a job with a photo, phone');
  await expectAccessible(scripted, 'a job with a photo, phone');
  await scripted.close();
});

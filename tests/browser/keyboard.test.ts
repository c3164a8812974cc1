import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { addEntry } from '../../src/records/catalogue.ts';
import { getJob } from '../../src/records/jobs/readJob.ts';
import { saveCriteria } from '../../src/records/shopCriteria.ts';
import { alder, criteria } from '../records/samples.ts';
import { DESK, openBrowser, openProgram, type Program } from './browser.ts';
import { Keys } from './keys.ts';

let browser: Browser;
let program: Program;

beforeAll(async () => {
  browser = await openBrowser();
  program = await openProgram({ demo: false });
  const ctx = { who: 'BL', now: () => new Date() };
  const limits = { ...criteria, minimumWallMm: 4.3, faceRunoutLimitMm: null };
  await saveCriteria(program.shop.db, ctx, { fromRevision: 0, body: limits });
  await addEntry(program.shop.db, ctx, { kind: 'family', id: 'alder', body: alder });
});
afterAll(async () => {
  await browser?.close();
  await program?.close();
});

/** Invented walls, in the order of the stations. */
const WALLS = [4.9, 4.91, 4.9, 4.92, 4.9, 4.91, 4.9, 4.92, 4.9, 4.91, 4.9, 4.92];

it('a whole job by keyboard alone: received, inspected, measured, decided, cut, measured again, signed', async () => {
  const page = await browser.newPage({ viewport: DESK });
  const keys = new Keys(page);
  await page.goto(`${program.url}/jobs/new`);
  await keys.choose('#f-family', 'alder');
  await keys.type('#f-who', 'AK');
  await keys.enter('#receive', 'receiving');
  expect(await keys.heading()).toContain('To inspect');
  const number = page.url().split('/').at(-1)!.replace(/#.*/, '');
  const job = async () => (await getJob(program.shop.db, number))!;

  await keys.choose('#looked-form input[name="crackTest"][type="radio"]', 'none-found');
  await keys.choose('#looked-form input[name="crackMethod"][type="radio"]', 'dye');
  await keys.enter('#looked-form-send', 'the inspection', 60);
  expect(await keys.heading()).toContain('To measure');

  await keys.enter('#bench-before', 'opening the measuring page');
  // Walls alone, chosen before the first reading.
  await keys.to('details:has(#order-form) > summary', 40);
  await page.keyboard.press('Enter');
  await keys.choose('#order-form [name="asks"]', 'w');
  await keys.enter('#set-order', 'choosing what to measure');
  await keys.to('#reading', 0);
  for (const wall of WALLS) {
    await page.keyboard.type(String(wall));
    await page.keyboard.press('Enter');
  }
  await expect.poll(async () => (await job()).readings.length).toBe(WALLS.length);
  expect((await job()).readings.every(({ who }) => who === 'AK')).toBe(true);
  await keys.enter('#to-answer', 'going on to the answer');
  expect(await keys.heading()).toContain('To decide');

  await keys.enter('#decision-form-send', 'deciding', 40);
  expect(await keys.heading()).toContain('To cut');
  const decidedMm = (await job()).sections.decision!.body.check.cut!.dialledMm;
  await keys.type('#cuts-form [name="depth"]', decidedMm.toFixed(3));
  await keys.enter('#cuts-form-send', 'the cut');
  expect(await keys.heading()).toContain('To re-measure');

  await keys.enter('#bench-after', 'opening the measuring page again', 40);
  await keys.to('#reading');
  for (const wall of WALLS) {
    await page.keyboard.type((wall - decidedMm).toFixed(3));
    await page.keyboard.press('Enter');
  }
  await expect.poll(async () => (await job()).readings.length).toBe(2 * WALLS.length);
  expect((await job()).stage).toBe('to-sign');
  await keys.enter('#to-answer', 'going on to check the cut');
  await keys.to('#signature-form-fold-statement > summary', 60);
  await page.keyboard.press('Enter');
  await keys.type('#signature-form [name="statement"]', 'Face runout not read.');
  await keys.enter('#signature-form-send', 'signing');
  expect(await keys.heading()).toContain('Signed');
  expect((await job()).stage).toBe('signed');
  expect(keys.lost).toEqual([]);
  await page.close();
});

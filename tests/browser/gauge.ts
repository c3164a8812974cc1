import type { BrowserContext, Page } from 'playwright-core';
import { expect } from 'vitest';
import type { Reading } from '../../shared/words/job.ts';
import type { Shop } from '../../src/records/database/database.ts';
import { allReadings } from '../../src/records/jobs/history.ts';
import { getJob } from '../../src/records/jobs/readJob.ts';

/** Invented walls of twelve stations, no two alike, so that a lost, doubled or misplaced one shows. */
export const WALLS = [
  '4.92',
  '4.90',
  '4.86',
  '4.83',
  '4.80',
  '4.81',
  '4.85',
  '4.89',
  '4.93',
  '4.87',
  '4.79',
  '4.84',
];

/** As a gauge with a cable does: the figures one after another without a pause, then Enter. */
export async function gauge(page: Page, readings: readonly string[]): Promise<void> {
  for (const reading of readings) {
    await page.keyboard.type(reading);
    await page.keyboard.press('Enter');
  }
}

export async function opened(context: BrowserContext, base: string, number: string): Promise<Page> {
  const page = await context.newPage();
  await page.goto(`${base}/jobs/${number}/measure?pass=before`);
  if ((await page.inputValue('#f-who')) === '') {
    await page.fill('#f-who', 'AK');
    await page.focus('#reading');
  }
  return page;
}

export async function nothingWaits(page: Page): Promise<void> {
  await page.waitForFunction(() => document.getElementById('waiting-count')?.textContent === '0');
}

export async function readingsOf({ db }: Pick<Shop, 'db'>, number: string): Promise<readonly Reading[]> {
  const job = await getJob(db, number);
  return allReadings(db, job!.id);
}

/** Every reading once, each at its own station, in the order typed. */
export function expectTwelve(readings: readonly Reading[]): void {
  expect(readings.map((one) => one.typed)).toEqual(WALLS);
  expect(readings.map((one) => one.valueMm)).toEqual(WALLS.map(Number));
  expect(new Set(readings.map((one) => `${one.angleDeg}/${one.radiusMm}`)).size).toBe(12);
  expect(new Set(readings.map((one) => one.id)).size).toBe(12);
  expect(readings.every((one) => one.kind === 'wall' && one.pass === 'before' && !one.doubtful)).toBe(true);
}

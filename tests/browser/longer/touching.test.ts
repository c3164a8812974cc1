import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest';
import { listEntries } from '../../../src/records/catalogue.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { allReadings } from '../../../src/records/jobs/history.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { expectAccessible, expectNoSidewaysScroll } from '../axe.ts';
import { openBrowser, openProgram, PHONE, type Program } from '../browser.ts';

/** The measuring page on a touch screen the size of a phone. */
let browser: Browser;
let program: Program;
let context: BrowserContext;
let page: Page;
let number: string;

beforeAll(async () => {
  browser = await openBrowser();
  program = await openProgram();
});
afterAll(async () => {
  await browser?.close();
  await program?.close();
});

beforeEach(async () => {
  const family = (await listEntries(program.shop.db, 'family')).find((one) => one.id === '1125-4-plain')!;
  const received = {
    familyId: family.id,
    familyRevision: family.revision,
    family: family.body,
    customerReference: '',
    receivedOn: '2026-11-24',
    note: '',
  };
  const ctx = { who: 'AK', now: () => new Date() };
  number = (await createJob(program.shop.db, ctx, { received })).number;
  context = await browser.newContext({ viewport: PHONE, hasTouch: true });
  page = await context.newPage();
  await page.goto(`${program.url}/jobs/${number}/measure?pass=before`);
  await page.fill('#f-who', 'AK');
  await page.focus('#reading');
});
afterEach(() => context.close());

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Where the signs of the stations and the middle of the drawing are on the screen. */
async function plan(): Promise<{ readonly stations: readonly Spot[]; readonly middle: Spot }> {
  await page.locator('#plan-figure svg.plan').scrollIntoViewIfNeeded();
  return page.evaluate(() => {
    const spot = (element: Element) => {
      const { left, top, width, height } = element.getBoundingClientRect();
      return { x: left + width / 2, y: top + height / 2 };
    };
    const signs = [...document.querySelectorAll<SVGElement>('#plan-figure [data-station]')];
    signs.sort((a, b) => Number(a.dataset.station) - Number(b.dataset.station));
    return { stations: signs.map(spot), middle: spot(document.querySelector('#plan-figure svg.plan')!) };
  });
}

/** From one spot so many px toward another. */
function toward(from: Spot, to: Spot, px: number): Spot {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return { x: from.x + ((to.x - from.x) * px) / length, y: from.y + ((to.y - from.y) * px) / length };
}

const tap = ({ x, y }: Spot) => page.touchscreen.tap(x, y);
const asked = () => page.locator('#asked').textContent();
const askedMore = () => page.locator('#asked-more').textContent();

async function typed(reading: string): Promise<void> {
  await page.keyboard.type(reading);
  await page.keyboard.press('Enter');
}

async function kept() {
  await page.waitForFunction(() => document.getElementById('waiting-count')?.textContent === '0');
  const job = await getJob(program.shop.db, number);
  return allReadings(program.shop.db, job!.id);
}

it('stations lie 48 px apart or more, so that no two targets overlap, and the drawing says it is not to scale', async () => {
  const { stations } = await plan();
  expect(stations.length).toBe(12);
  const gaps = stations.flatMap((a, i) => stations.slice(0, i).map((b) => Math.hypot(a.x - b.x, a.y - b.y)));
  expect(Math.min(...gaps)).toBeGreaterThanOrEqual(48);
  expect(await page.locator('#plan-figure figcaption').textContent()).toContain('Not to scale');
});

it('a touch up to 23 px beside a station, on any side, is that station and never a heat mark', async () => {
  const { stations, middle } = await plan();
  for (const [index, station] of stations.entries()) {
    const out = toward(station, middle, -1);
    const across = { x: station.x - (out.y - station.y), y: station.y + (out.x - station.x) };
    for (const side of [
      toward(station, middle, -23),
      toward(station, middle, 23),
      toward(station, across, 23),
    ]) {
      await tap(side);
      expect([index, await askedMore()]).toEqual([index, expect.stringMatching(`^Station ${index + 1}, `)]);
      expect(await asked()).toMatch(/^Wall /);
    }
  }
});

it('a wall typed after a touch 16 px beside a station is the wall of that station', async () => {
  const { stations, middle } = await plan();
  await tap(toward(stations[8]!, middle, 16));
  await typed('4.92');
  expect(await kept()).toMatchObject([{ kind: 'wall', typed: '4.92', angleDeg: 0 }]);
  expect(await page.locator('#on-server li').textContent()).toMatch(/^9 wall behind stud 1: 4\.92\smm/);
});

it('a touch far from every station asks for nothing else, and says what to do', async () => {
  const { middle } = await plan();
  await tap(middle);
  expect(await asked()).toBe('Wall behind stud 1');
  expect(await page.locator('#said').textContent()).toBe(
    'No station there. Touch a station, or press Heat mark first.',
  );
});

it('a heat mark is begun by its button, placed by a touch, and then typed', async () => {
  await page.tap('#begin-mark');
  expect(await page.getAttribute('#begin-mark', 'aria-pressed')).toBe('true');
  expect(await asked()).toBe('Heat mark: touch the drawing');
  await expectAccessible(page, 'a heat mark to be placed');
  await expectNoSidewaysScroll(page, 'a heat mark to be placed');
  expect(await page.getAttribute('#measuring-plan-asked', 'visibility')).toBe('hidden');
  // Between stations 1 and 2, a little outside their row.
  const { stations, middle } = await plan();
  const between = {
    x: (stations[0]!.x + stations[1]!.x) / 2,
    y: (stations[0]!.y + stations[1]!.y) / 2,
  };
  await tap(toward(between, middle, -12));
  expect(await asked()).toMatch(/^Heat mark depth at 2\d°$/);
  expect(await page.getAttribute('#begin-mark', 'aria-pressed')).toBe('false');
  await typed('0.15');
  const [mark] = await kept();
  expect(mark).toMatchObject({ kind: 'mark', valueMm: 0.15 });
  expect(mark!.angleDeg).toBeGreaterThan(18);
  expect(mark!.angleDeg).toBeLessThan(27);
  expect(mark!.radiusMm).toBeGreaterThan(110);
  expect(mark!.radiusMm).toBeLessThan(119);
  expect(await asked()).toBe('Wall behind stud 1');
});

it('a reading typed before the heat mark is placed is kept nowhere, and pressing the button again stops it', async () => {
  await page.tap('#begin-mark');
  await page.focus('#reading');
  await typed('0.15');
  expect(await page.locator('#reading-wrong').textContent()).toBe(
    'The heat mark has no place yet. Touch the drawing, or press Heat mark again to stop.',
  );
  expect(await page.inputValue('#reading')).toBe('0.15');
  await page.tap('#begin-mark');
  expect(await asked()).toBe('Wall behind stud 1');
  await page.fill('#reading', '');
  await typed('4.92');
  expect(await kept()).toMatchObject([{ kind: 'wall', typed: '4.92' }]);
});

it('a heat mark placed on a station is at that station', async () => {
  await page.tap('#begin-mark');
  const { stations } = await plan();
  await tap(stations[1]!);
  expect(await asked()).toBe('Heat mark depth between studs 1 and 2');
  expect(await askedMore()).toMatch(/^Station 2, /);
});

it('what the next reading is stands in the largest type, and changes color and shape when it is no wall', async () => {
  const looks = () =>
    page.evaluate(() => {
      const size = (element: Element) => Number.parseFloat(getComputedStyle(element).fontSize);
      const heading = document.getElementById('asked')!;
      const others = [...document.body.querySelectorAll('*')].filter((one) => one !== heading);
      return {
        largest: others.every((one) => size(one) < size(heading)),
        color: getComputedStyle(heading).color,
        shape:
          getComputedStyle(heading, '::before').clipPath + getComputedStyle(heading, '::before').borderRadius,
      };
    });
  const wall = await looks();
  await page.goto(`${program.url}/jobs/${number}/measure?pass=before&at=f.0`);
  expect(await asked()).toMatch(/^Indicator reading/);
  const height = await looks();
  await page.tap('#begin-mark');
  const mark = await looks();
  expect([wall.largest, height.largest, mark.largest]).toEqual([true, true, true]);
  expect(new Set([wall.color, height.color, mark.color]).size).toBe(3);
  expect(new Set([wall.shape, height.shape, mark.shape]).size).toBe(3);
});

import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawnRadius, type PlanRadii } from '../../shared/measuring/planRadii.ts';
import { readReading, type TypedReading } from '../../shared/measuring/readReading.ts';
import type { Reading } from '../../shared/words/job.ts';
import { listEntries } from '../../src/records/catalogue.ts';
import { openShop, type Shop } from '../../src/records/database/database.ts';
import { createJob } from '../../src/records/jobs/createJob.ts';
import { allReadings } from '../../src/records/jobs/history.ts';
import { getJob } from '../../src/records/jobs/readJob.ts';
import { post } from '../faults/kit/http.ts';
import { newFolder, start } from '../faults/kit/program.ts';
import { faultsIn, jobForm, look } from '../faults/kit/shop.ts';
import { TYPED_TEXTS } from '../quantity/typedTexts.ts';
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

/** Invented walls of twelve stations, no two alike, so that a lost, doubled or misplaced one shows. */
const WALLS = [
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

async function newJob(): Promise<string> {
  const family = (await listEntries(program.shop.db, 'family')).find((one) => one.id === '1125-4-plain')!;
  const job = await createJob(
    program.shop.db,
    { who: 'AK', now: () => new Date() },
    {
      received: {
        familyId: family.id,
        familyRevision: family.revision,
        family: family.body,
        customerReference: '',
        receivedOn: '2026-11-24',
        note: '',
      },
    },
  );
  return job.number;
}

async function readingsOf({ db }: Pick<Shop, 'db'>, number: string): Promise<readonly Reading[]> {
  const job = await getJob(db, number);
  return allReadings(db, job!.id);
}

function onServer(number: string): Promise<readonly Reading[]> {
  return readingsOf(program.shop, number);
}

/** As a gauge with a cable does: the figures one after another without a pause, then Enter. */
async function gauge(page: Page, readings: readonly string[]): Promise<void> {
  for (const reading of readings) {
    await page.keyboard.type(reading);
    await page.keyboard.press('Enter');
  }
}

async function opened(context: BrowserContext, base: string, number: string): Promise<Page> {
  const page = await context.newPage();
  await page.goto(`${base}/jobs/${number}/measure?pass=before`);
  if ((await page.inputValue('#f-who')) === '') {
    await page.fill('#f-who', 'AK');
    await page.focus('#reading');
  }
  return page;
}

async function nothingWaits(page: Page): Promise<void> {
  await page.waitForFunction(() => document.getElementById('waiting-count')?.textContent === '0', null, {
    timeout: 60_000,
  });
}

/** Every reading once, each at its own station, in the order typed. */
function expectTwelve(readings: readonly Reading[]): void {
  expect(readings.map((one) => one.typed)).toEqual(WALLS);
  expect(readings.map((one) => one.valueMm)).toEqual(WALLS.map(Number));
  expect(new Set(readings.map((one) => `${one.angleDeg}/${one.radiusMm}`)).size).toBe(12);
  expect(new Set(readings.map((one) => one.id)).size).toBe(12);
  expect(readings.every((one) => one.kind === 'wall' && one.pass === 'before' && !one.doubtful)).toBe(true);
}

describe('twelve readings, typed by a gauge', () => {
  it('are on the server without touching the mouse', async () => {
    const number = await newJob();
    const context = await browser.newContext({ viewport: PHONE });
    const page = await opened(context, program.url, number);
    await gauge(page, WALLS);
    await nothingWaits(page);
    expectTwelve(await onServer(number));
    expect(await page.locator('#asked').textContent()).toContain('Indicator reading behind stud 1');
    expect(await page.locator('#on-server li').count()).toBe(12);
    await context.close();
  });

  it('are there once each when the network was cut in the middle', async () => {
    const number = await newJob();
    const context = await browser.newContext({ viewport: PHONE });
    const page = await opened(context, program.url, number);
    await gauge(page, WALLS.slice(0, 5));
    await nothingWaits(page);
    await context.setOffline(true);
    await gauge(page, WALLS.slice(5, 10));
    await page.waitForFunction(() => document.getElementById('waiting-count')?.textContent === '5');
    await page.waitForFunction(() =>
      /No connection/.test(document.getElementById('trouble')?.textContent ?? ''),
    );
    expect((await onServer(number)).length).toBe(5);
    await context.setOffline(false);
    await gauge(page, WALLS.slice(10));
    await nothingWaits(page);
    expectTwelve(await onServer(number));
    await context.close();
  });

  it('are there once each when the server was killed twice between saving and answering', async () => {
    const dataDir = newFolder();
    const inside = ['unanswered'];
    const first = await start({ dataDir, inside, env: { KILL_AT: '2' } });
    const port = String(first.port);
    expect((await post(first.url, '/jobs', { ...jobForm('K-1'), family: '1125-4-plain' })).status).toBe(303);
    const context = await browser.newContext({ viewport: DESK });
    // This shop, of a process of its own, is in inches.
    await context.addCookies([{ name: 'unit', value: 'mm', url: first.url }]);
    const page = await opened(context, first.url, 'K-1');
    const OF_THE_JOB = `SELECT typed FROM reading WHERE job_id = (SELECT id FROM job WHERE number = 'K-1')`;
    const kept = () =>
      look(dataDir, (raw) => raw.prepare(`${OF_THE_JOB} ORDER BY revision, place`).pluck().all());
    const shown = () => page.locator('#on-server li').count();

    await gauge(page, WALLS.slice(0, 5));
    expect((await first.ended).signal).toBe('SIGKILL');
    const afterFirst = kept();
    expect(afterFirst).toEqual(WALLS.slice(0, afterFirst.length));
    // On record, and nobody was told.
    expect(afterFirst.length).toBeGreaterThan(await shown());
    await gauge(page, WALLS.slice(5, 8));
    expect(kept()).toEqual(afterFirst);

    const second = await start({ dataDir, inside, env: { KILL_AT: '1', PORT: port } });
    await gauge(page, WALLS.slice(8, 9));
    expect((await second.ended).signal).toBe('SIGKILL');
    const afterSecond = kept();
    expect(afterSecond).toEqual(WALLS.slice(0, afterSecond.length));
    expect(afterSecond.length).toBeGreaterThan(afterFirst.length);
    expect(await page.locator('#waiting-count').textContent()).not.toBe('0');

    const third = await start({ dataDir, env: { PORT: port } });
    await gauge(page, WALLS.slice(9));
    await nothingWaits(page);
    expect(await shown()).toBe(12);
    expect(look(dataDir, faultsIn)).toEqual([]);
    await context.close();
    expect((await third.stop()).code).toBe(0);
    const shop = openShop({ dataDir, now: () => new Date() });
    expectTwelve(await readingsOf(shop, 'K-1'));
    await shop.close();
  });

  it('are there once each when the page was closed and opened again', async () => {
    const number = await newJob();
    const context = await browser.newContext({ viewport: DESK });
    const page = await opened(context, program.url, number);
    await gauge(page, WALLS.slice(0, 3));
    await nothingWaits(page);
    await context.setOffline(true);
    await gauge(page, WALLS.slice(3, 9));
    await page.waitForFunction(() => document.getElementById('waiting-count')?.textContent === '6');
    expect((await onServer(number)).length).toBe(3);
    await page.close();
    await context.setOffline(false);
    const again = await opened(context, program.url, number);
    await nothingWaits(again);
    expect(await again.locator('#asked').textContent()).toBe('Wall behind stud 2');
    await gauge(again, WALLS.slice(9));
    await nothingWaits(again);
    expectTwelve(await onServer(number));
    await context.close();
  });

  it('are there once each when two tablets measure one job, and each sees the other’s', async () => {
    const number = await newJob();
    const one = await browser.newContext({ viewport: PHONE });
    const two = await browser.newContext({ viewport: PHONE });
    const [a, b] = [await opened(one, program.url, number), await opened(two, program.url, number)];
    await gauge(a, WALLS.slice(0, 6));
    await nothingWaits(a);
    // The other tablet opened the page before; its first reading is a repeat at station 1, kept beside.
    await gauge(b, ['4.91']);
    await nothingWaits(b);
    // What is asked does not change under the hands; that somebody was here is said.
    expect(await b.locator('#asked').textContent()).toBe('Wall between studs 1 and 2');
    expect(await b.locator('#asked-more').textContent()).toContain('AK entered 4.90 here on another tablet');
    await gauge(b, ['s']);
    expect(await b.locator('#asked').textContent()).toBe('Wall behind stud 4');
    await gauge(b, WALLS.slice(6));
    await nothingWaits(b);
    const readings = await onServer(number);
    expect(readings.map((reading) => reading.typed)).toEqual([
      ...WALLS.slice(0, 6),
      '4.91',
      ...WALLS.slice(6),
    ]);
    expect(readings[6]).toMatchObject({ angleDeg: 0, replaces: null });
    await one.close();
    await two.close();
  });
});

describe('at the bench', () => {
  it('the whole page, opened for the first time, is under 100 KB over the wire', async () => {
    const context = await browser.newContext({ viewport: PHONE });
    const page = await context.newPage();
    const sizes: Promise<number>[] = [];
    page.on('requestfinished', (request) =>
      sizes.push(request.sizes().then(({ responseBodySize }) => responseBodySize)),
    );
    await page.goto(`${program.url}/jobs/1003/measure`, { waitUntil: 'networkidle' });
    const bytes = (await Promise.all(sizes)).reduce((sum, size) => sum + size, 0);
    expect(sizes.length).toBeGreaterThan(20);
    expect(bytes).toBeLessThan(100_000);
    await context.close();
  });

  it('the browser reads what is typed exactly as the server does', async () => {
    const page = await browser.newPage();
    await page.goto(`${program.url}/jobs/${await newJob()}/measure`);
    const asked = TYPED_TEXTS.flatMap((typed) =>
      (['mm', 'in'] as const).flatMap((unit) =>
        (['point', 'comma'] as const).map(
          (decimalSign): TypedReading => ({
            kind: 'wall',
            field: 'Wall',
            typed,
            unit,
            decimalSign,
            nominalWallMm: 5,
          }),
        ),
      ),
    );
    // As text, because the test runner puts a loader of its own in the place of import().
    const inBrowser = await page.evaluate(
      `import('/assets/modules/shared/measuring/readReading.js')
        .then(({ readReading }) => ${JSON.stringify(asked)}.map(readReading))`,
    );
    expect(inBrowser).toEqual(asked.map(readReading));
    await page.close();
  });

  it('asks at once about a slipped decimal, and takes the answer from the keyboard', async () => {
    const number = await newJob();
    const context = await browser.newContext({ viewport: PHONE });
    const page = await opened(context, program.url, number);
    await gauge(page, ['4.92', '0.490']);
    expect(await page.locator('#doubt-question').textContent()).toBe('0.490 mm? Did you mean 4.9 mm?');
    await expectAccessible(page, 'a doubted reading');
    await gauge(page, ['u', '49', 'y', '0.48', '4.83']);
    await nothingWaits(page);
    expect((await onServer(number)).map((one) => [one.typed, one.valueMm, one.doubtful])).toEqual([
      ['4.92', 4.92, false],
      ['4.9 mm', 4.9, false],
      ['49', 49, false],
      ['4.83', 4.83, false],
    ]);
    await context.close();
  });

  it('skips, goes back, corrects and repeats from the keyboard', async () => {
    const number = await newJob();
    const context = await browser.newContext({ viewport: DESK });
    const page = await opened(context, program.url, number);
    await gauge(page, ['4.92', 's', '4.86', 'b']);
    // Back at station 3, which has a reading: typing corrects it. Nothing typed does nothing.
    await gauge(page, ['', '4.85', 'r', '4.84']);
    await nothingWaits(page);
    const readings = await onServer(number);
    expect(readings.map((one) => [one.typed, one.angleDeg])).toEqual([
      ['4.92', 0],
      ['4.86', 90],
      ['4.85', 90],
      ['4.84', 90],
    ]);
    expect(readings[2]!.replaces).toBe(readings[1]!.id);
    expect(readings[3]!.replaces).toBeNull();
    await context.close();
  });

  it('takes a heat mark, begun by its button, where the drawing is touched, and refuses what is no length', async () => {
    const number = await newJob();
    const context = await browser.newContext({ viewport: PHONE, hasTouch: true });
    const page = await opened(context, program.url, number);
    await page.tap('#begin-mark');
    await page.locator('#plan-figure').scrollIntoViewIfNeeded();
    const plan = await page.locator('#plan-figure svg.plan').boundingBox();
    // Half the way between stud 1 and the next station, on the track.
    const scale = plan!.width / 352;
    const radii = (await page.getAttribute('#measuring-plan-asked', 'data-radii')) ?? '';
    const r = drawnRadius(JSON.parse(radii) as PlanRadii, 119);
    const turn = (25 * Math.PI) / 180;
    await page.touchscreen.tap(
      plan!.x + plan!.width / 2 + scale * r * Math.sin(turn),
      plan!.y + plan!.height / 2 - scale * r * Math.cos(turn),
    );
    await page.waitForFunction(() =>
      /^Heat mark depth/.test(document.getElementById('asked')?.textContent ?? ''),
    );
    expect(await page.locator('#asked').textContent()).toMatch(/^Heat mark depth at 2[456]°/);
    await gauge(page, ['about a bit']);
    expect(await page.locator('#reading-wrong').textContent()).toContain('is not a plain number');
    await page.fill('#reading', '');
    await gauge(page, ['0.15']);
    await nothingWaits(page);
    const [mark] = await onServer(number);
    expect(mark).toMatchObject({ kind: 'mark', valueMm: 0.15 });
    expect(Math.abs(mark!.angleDeg - 25)).toBeLessThanOrEqual(1);
    expect(Math.abs(mark!.radiusMm - 119)).toBeLessThanOrEqual(1);
    await context.close();
  });

  it.each([
    ['a phone', PHONE],
    ['a desk', DESK],
  ] as const)('reads well on %s, empty and with readings', async (where, viewport) => {
    const number = await newJob();
    const context = await browser.newContext({ viewport });
    const page = await opened(context, program.url, number);
    const problems: string[] = [];
    page.on('console', (message) => message.type() === 'error' && problems.push(message.text()));
    page.on('pageerror', (error) => problems.push(error.message));
    await expectAccessible(page, `measuring, empty, on ${where}`);
    await gauge(page, WALLS.slice(0, 4));
    await nothingWaits(page);
    await expectAccessible(page, `measuring on ${where}`);
    await expectNoSidewaysScroll(page, `measuring on ${where}`);
    expect(problems).toEqual([]);
    await context.close();
  });

  it('works without its script: a plain form that goes from station to station', async () => {
    const number = await newJob();
    const context = await browser.newContext({ viewport: PHONE, javaScriptEnabled: false });
    const page = await context.newPage();
    await page.goto(`${program.url}/jobs/${number}/measure?pass=before`);
    await page.fill('#f-who', 'AK');
    for (const wall of WALLS.slice(0, 3)) {
      await page.fill('#reading', wall);
      await page.press('#reading', 'Enter');
    }
    expect(await page.locator('#asked').textContent()).toBe('Wall between studs 2 and 3');
    await page.fill('#reading', '0.483');
    await page.press('#reading', 'Enter');
    expect(await page.locator('#doubt-question').textContent()).toContain('Did you mean 4.83 mm?');
    await page.click('#use-meant');
    await page.click('#skip');
    expect(await page.locator('#asked').textContent()).toBe('Wall between studs 3 and 4');
    await page.click('#repeat');
    expect((await onServer(number)).map((one) => one.typed)).toEqual([...WALLS.slice(0, 3), '4.83 mm']);
    await context.close();
  });
});

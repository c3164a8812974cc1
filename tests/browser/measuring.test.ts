import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawnRadius, type PlanRadii } from '../../shared/measuring/planRadii.ts';
import { readReading, type TypedReading } from '../../shared/measuring/readReading.ts';
import type { Reading } from '../../shared/words/job.ts';
import { listEntries } from '../../src/records/catalogue.ts';
import { createJob } from '../../src/records/jobs/createJob.ts';
import { TYPED_TEXTS } from '../quantity/typedTexts.ts';
import { expectAccessible, expectNoSidewaysScroll } from './axe.ts';
import { DESK, openBrowser, openProgram, PHONE, type Program } from './browser.ts';
import { expectTwelve, gauge, nothingWaits, opened, readingsOf, WALLS } from './gauge.ts';

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

function onServer(number: string): Promise<readonly Reading[]> {
  return readingsOf(program.shop, number);
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
    // A number and its unit stay on one line.
    expect(await page.locator('#doubt-question').textContent()).toContain('Did you mean 4.83\u00a0mm?');
    await page.click('#use-meant');
    await page.click('#skip');
    expect(await page.locator('#asked').textContent()).toBe('Wall between studs 3 and 4');
    await page.click('#repeat');
    expect((await onServer(number)).map((one) => one.typed)).toEqual([...WALLS.slice(0, 3), '4.83 mm']);
    await context.close();
  });
});

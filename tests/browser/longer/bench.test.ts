import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest';
import type { NewReading, ReadingKind } from '../../../shared/words/job.ts';
import { samePlace } from '../../../shared/words/places.ts';
import { listEntries } from '../../../src/records/catalogue.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { addReadings } from '../../../src/records/jobs/readings.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { placesOn } from '../../../src/shop/placesOfJob.ts';
import { expectAccessible, expectNoSidewaysScroll } from '../axe.ts';
import { DESK, openBrowser, openProgram, PHONE, type Program } from '../browser.ts';

/** A whole cover measured at the bench, on a touch screen the size of a phone. */
let browser: Browser;
let program: Program;
let context: BrowserContext;
let page: Page;
let number: string;

const WHO = { who: 'AK', now: () => new Date() };

beforeAll(async () => {
  browser = await openBrowser();
  program = await openProgram();
});
afterAll(async () => {
  await browser?.close();
  await program?.close();
});
beforeEach(async () => {
  number = await newJob();
  context = await browser.newContext({ viewport: PHONE, hasTouch: true });
  page = await context.newPage();
});
afterEach(() => context.close());

async function coverType() {
  return (await listEntries(program.shop.db, 'family')).find((one) => one.id === '1125-4-plain')!;
}

async function newJob(): Promise<string> {
  const { id: familyId, revision: familyRevision, body: family } = await coverType();
  const received = {
    familyId,
    familyRevision,
    family,
    customerReference: '',
    receivedOn: '2026-11-24',
    note: '',
  };
  return (await createJob(program.shop.db, WHO, { received })).number;
}

async function open(query = ''): Promise<void> {
  await page.goto(`${program.url}/jobs/${number}/measure?pass=before${query}`);
  if ((await page.inputValue('#f-who')) === '') await page.fill('#f-who', 'AK');
  await page.focus('#reading');
}

const text = (selector: string) => page.locator(selector).textContent();
const asked = () => text('#asked');

/** As a gauge with a cable does, or a hand at the keys: the figures or a letter, then Enter. */
async function typed(...readings: readonly string[]): Promise<void> {
  for (const reading of readings) {
    await page.keyboard.type(reading);
    await page.keyboard.press('Enter');
  }
}

async function nothingWaits(): Promise<void> {
  await page.waitForFunction(() => document.getElementById('waiting-count')?.textContent === '0');
}

async function counting() {
  await nothingWaits();
  return (await getJob(program.shop.db, number))!.readings;
}

/** Where the sign of a station is on the screen, `off` px beside its middle. */
async function touch(station: number, off = 0): Promise<void> {
  const sign = page.locator(`#plan-figure [data-station="${station}"]`);
  await sign.scrollIntoViewIfNeeded();
  const box = (await sign.boundingBox())!;
  await page.touchscreen.tap(box.x + box.width / 2 + off, box.y + box.height / 2);
}

/** Invented: a worn cover, two readings of each wall, its face tilted by a tenth of a millimeter, four heat marks. */
const WALLS = [4.92, 4.91, 4.89, 4.87, 4.86, 4.87, 4.89, 4.91, 4.93, 4.9, 4.87, 4.9];
const PLACES = [0, 45, 90, 135, 180, 225, 270, 315, 0, 90, 180, 270];
const HEIGHTS = PLACES.map((turn, i) =>
  Number(((i < 8 ? 0.05 : 0.056) * Math.cos((turn * Math.PI) / 180) + 0.01).toFixed(3)),
);
const MARKS: Readonly<Record<number, string>> = { 0: '0.12', 2: '0.15', 4: '0.2', 6: '0.14' };
const again = (wall: number) => (wall + 0.002).toFixed(3);

/** What the job answers: the verdict, and the figures it rests on. */
async function answerOf(of: string) {
  const { answer } = await (await fetch(`${program.url}/api/jobs/${of}`)).json();
  const { verdict, cut, leastWall, face } = answer.check;
  return { verdict, cut, leastWall, face };
}

/** The same cover with every reading right the first time. */
async function measuredRightAway(): Promise<string> {
  const right = await newJob();
  const job = (await getJob(program.shop.db, right))!;
  const common = { pass: 'before', gauge: '', doubtful: false, replaces: null } as const;
  const readings = placesOn((await coverType()).body).flatMap(({ angleDeg, radiusMm }, i): NewReading[] => {
    const one = (kind: ReadingKind, typed: string, nth = 0): NewReading => {
      const id = `right-away-${kind}-${i}-${nth}`;
      return { id, kind, angleDeg, radiusMm, valueMm: Number(typed), typed, ...common };
    };
    return [
      one('wall', String(WALLS[i])),
      one('wall', again(WALLS[i]!), 1),
      one('face', String(HEIGHTS[i])),
      one('mark', MARKS[i] ?? '0'),
    ];
  });
  await addReadings(program.shop.db, WHO, { jobId: job.id, readings });
  return right;
}

it('twelve stations, two readings each, an indicator and four heat marks end in the right verdict, and no wrong reading counts', async () => {
  await open();
  await page.click('summary:has-text("Readings per station")');
  await page.selectOption('#order-form [name=times]', '2');
  await page.tap('#set-order');
  await page.waitForURL(/times=2/);
  await page.fill('#f-who', 'AK');
  await page.focus('#reading');

  expect(await asked()).toBe('Wall behind stud 1, 1 of 2');
  await typed(String(WALLS[0]));
  expect(await asked()).toBe('Wall behind stud 1, 2 of 2');
  // A decimal slipped, and the answer from the keyboard.
  await typed('0.4922');
  expect(await text('#doubt-question')).toBe('0.4922 mm? Did you mean 4.922 mm?');
  // Touched while the question is open, the drawing turns to nothing else.
  await touch(5);
  expect(await text('#said')).toBe('Answer the question about the last reading first.');
  await page.focus('#reading');
  await typed('u', String(WALLS[1]), again(WALLS[1]!));
  // A wrong touch on a station that is measured: the next wall does not quietly take the place of the one there.
  await touch(0, 10);
  expect(await asked()).toBe('Replace: wall behind stud 1');
  await typed(String(WALLS[2]));
  expect(await text('#doubt-question')).toBe(`${WALLS[2]} mm in place of 4.922 mm here?`);
  await page.tap('#measure-again');
  await typed('s');
  expect(await asked()).toBe('Wall behind stud 2, 1 of 2');
  await typed(String(WALLS[2]), again(WALLS[2]!), String(WALLS[3]));
  // Figures swapped in the repeat.
  await typed('4.728');
  expect(await text('#doubt-question')).toContain('4.87 mm at the same station?');
  await typed('a', again(WALLS[3]!));
  // A touch beside every station is no touch of one.
  await page.locator('#plan-figure svg.plan').scrollIntoViewIfNeeded();
  const drawing = (await page.locator('#plan-figure svg.plan').boundingBox())!;
  await page.touchscreen.tap(drawing.x + drawing.width / 2, drawing.y + drawing.height / 2);
  expect(await text('#said')).toContain('No station there');
  expect(await asked()).toBe('Wall behind stud 3, 1 of 2');
  await page.focus('#reading');
  for (const [i, wall] of [...WALLS.entries()].slice(4)) {
    await typed(i === 7 ? '49.1' : String(wall));
    if (i === 7) await page.tap('#use-meant');
    await typed(again(wall));
  }

  // The first indicator reading has a slip that only the others can show.
  expect(await asked()).toBe('Indicator reading behind stud 1');
  await typed('0.6', ...HEIGHTS.slice(1, 12).map(String));
  expect(await asked()).toBe('Heat mark depth behind stud 1');
  expect(await text('#to-check-list')).toContain('0.6 mm on the indicator?');
  await page.tap('#to-check-list button:has-text("Use 0.06 mm")');
  expect(await page.isVisible('#to-check')).toBe(false);

  await page.focus('#reading');
  for (let i = 0; i < 12; i++) {
    if (i === 4) {
      await typed('2');
      expect(await text('#doubt-question')).toContain('2 mm deep?');
      await page.tap('#use-meant');
    } else {
      await typed(MARKS[i] ?? 'n');
    }
  }
  expect(await asked()).toBe('Done');
  expect(await text('#asked-more')).toBe(
    'Walls at 12 of 12 stations, 2 each. Indicator readings at 12 of 12. Heat marks at 12 of 12.',
  );
  await expectAccessible(page, 'everything measured');
  await expectNoSidewaysScroll(page, 'everything measured');

  const readings = await counting();
  const places = placesOn((await coverType()).body);
  const byPlace = (kind: ReadingKind) =>
    places.map((place) =>
      readings.filter((one) => one.kind === kind && samePlace(one, place)).map((one) => one.valueMm),
    );
  expect(byPlace('wall')).toEqual(WALLS.map((wall) => [wall, Number(again(wall))]));
  expect(byPlace('face')).toEqual(HEIGHTS.map((height) => [height]));
  expect(byPlace('mark')).toEqual(WALLS.map((_, i) => [Number(MARKS[i] ?? 0)]));
  expect(readings.filter((one) => one.doubtful)).toEqual([]);

  const right = await answerOf(number);
  expect(right).toEqual(await answerOf(await measuredRightAway()));
  expect(right.verdict).toBe('face-if-sound');
  await page.tap('#to-answer');
  await page.waitForURL(/#decide$/);
  expect(await text('#decide')).toContain('Face it if the crack test is clean');
});

it('skipped stations are listed, nothing counts as done with them, and each leads back with one press', async () => {
  await open('&asks=w');
  await typed('s', ...WALLS.slice(1, 3).map(String), 's', ...WALLS.slice(4).map(String));
  expect(await asked()).toBe('Measured, 2 skipped');
  expect(await text('#asked-more')).toBe('Walls at 10 of 12 stations.');
  expect(await page.locator('#skipped-list li').allTextContents()).toEqual([
    'Wall behind stud 1',
    'Wall between studs 2 and 3',
  ]);
  await page.tap('#skipped-list li:nth-child(2) button');
  expect(await asked()).toBe('Wall between studs 2 and 3');
  await typed('4.87');
  expect(await asked()).toBe('Measured, 1 skipped');
  await page.tap('#skipped-list button');
  await typed('4.92');
  expect(await asked()).toBe('Done');
  expect(await page.isVisible('#skipped')).toBe(false);
  expect((await counting()).length).toBe(12);
});

it('readings per station are chosen once: the next job on this tablet is measured the same way', async () => {
  await open();
  await page.click('summary:has-text("Readings per station")');
  await page.selectOption('#order-form [name=times]', '3');
  await page.selectOption('#order-form [name=repeats]', 'rounds');
  await page.tap('#set-order');
  await page.waitForURL(/times=3/);
  number = await newJob();
  await open();
  expect(await asked()).toBe('Wall behind stud 1, 1 of 3');
  await typed(...WALLS.map(String));
  expect(await asked()).toBe('Wall behind stud 1, 2 of 3');
  expect((await counting()).length).toBe(12);
});

it('a fraction in millimeters is asked about with buttons, and cannot be confirmed as it stands', async () => {
  await open();
  await typed('3/16');
  expect(await text('#doubt-question')).toContain('Did you mean 3/16 in?');
  expect(await page.isVisible('#is-right')).toBe(false);
  expect(await page.locator('#doubt .button:visible').allTextContents()).toEqual(
    ['Use 3/16 in U', 'Measure again A'].map((label) =>
      expect.stringMatching(new RegExp(label.replace(/ (\w)$/, '\\s*$1'), 'i')),
    ),
  );
  await typed('u');
  expect(await counting()).toMatchObject([{ typed: '3/16 in', valueMm: 4.7625 }]);
});

it.each([
  ['a phone', PHONE],
  ['a desk', DESK],
] as const)(
  '44 readings leave no empty paper on %s, and every one can be reached',
  async (where, viewport) => {
    const job = (await getJob(program.shop.db, number))!;
    const places = placesOn((await coverType()).body);
    const readings = Array.from({ length: 44 }, (_, i): NewReading => {
      const { angleDeg, radiusMm } = places[i % 12]!;
      const id = `of-forty-four-${where.slice(2)}-${i}`;
      return {
        id,
        pass: 'before',
        kind: 'wall',
        angleDeg,
        radiusMm,
        valueMm: 4.9,
        typed: '4.9',
        gauge: '',
        doubtful: false,
        replaces: null,
      };
    });
    await page.setViewportSize(viewport);
    await open();
    const empty = await page.evaluate(() => document.documentElement.scrollHeight);
    await addReadings(program.shop.db, WHO, { jobId: job.id, readings });
    await open();
    expect(await page.locator('#on-server li').count()).toBe(44);
    const height = await page.evaluate(() => document.documentElement.scrollHeight);
    // The list is as high as its frame, whatever is in it.
    const frame = await page.evaluate(() => document.getElementById('on-server')!.clientHeight);
    expect(frame).toBeLessThan(500);
    expect(height - empty).toBeLessThan(frame + 80);
    const under = await page.evaluate(() => {
      const last = [...document.querySelectorAll('#measuring ~ *, .sheet > *, footer')].map(
        (one) => one.getBoundingClientRect().bottom,
      );
      return document.documentElement.scrollHeight - window.scrollY - Math.max(...last);
    });
    expect(under).toBeLessThan(80);
    const oldest = page.locator('#on-server li').last();
    await oldest.scrollIntoViewIfNeeded();
    await oldest.getByText('correct').tap();
    expect(await asked()).toBe('Replace: wall behind stud 1');
  },
);

import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { listEntries } from '../../src/records/catalogue.ts';
import { getStudy } from '../../src/records/gauges/studies.ts';
import { getJob } from '../../src/records/jobs/readJob.ts';
import { shelfOf } from '../../src/records/shelf/shelfChanges.ts';
import { currentCriteria } from '../../src/records/shopCriteria.ts';
import { allWrong } from '../../src/records/trends/wrong.ts';
import { expectAccessible } from './axe.ts';
import { openBrowser, openProgram, PHONE, type Program } from './browser.ts';
import { Keys } from './keys.ts';

/** What stands around the jobs, by keyboard alone on a phone, every screen as axe sees it. */
let browser: Browser;
let page: Page;
let keys: Keys;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser?.close());
beforeEach(async () => {
  page = await browser.newPage({ viewport: PHONE });
  keys = new Keys(page);
});
afterEach(() => page.close());

/** A day is typed in three parts, each taking the next figure. */
async function typeDay(selector: string): Promise<void> {
  await keys.to(selector, 40);
  await page.keyboard.type('01152026');
}

describe('in the demo shop', () => {
  let program: Program;
  beforeAll(async () => {
    program = await openProgram();
  });
  afterAll(() => program.close());
  const open = async (path: string) => {
    await page.goto(program.url + path);
    await expectAccessible(page, path);
  };
  const done = async (what: string) => expectAccessible(page, what);

  it('a cover is put on the shelf, and taken off with a reason', async () => {
    await open('/shelf');
    await open('/shelf/1001');
    const { id } = (await getJob(program.shop.db, '1001'))!;
    await keys.type('#shelf-put [name="lies"]', 'rack B', 40);
    await keys.type('#shelf-put [name="who"]', 'AA');
    await keys.enter('#shelf-put-send', 'putting it on the shelf');
    expect(await shelfOf(program.shop.db, id)).toMatchObject({ what: 'put', lies: 'rack B' });
    await done('a cover on the shelf');
    await keys.to('details:has(#shelf-off) > summary', 60);
    await page.keyboard.press('Enter');
    await keys.type('#shelf-off [name="why"]', 'sold', 60);
    await keys.enter('#shelf-off-send', 'taking it off', 60);
    expect((await shelfOf(program.shop.db, id))?.what).toBe('off');
  });

  it('an inspection list is added', async () => {
    await open('/inspection');
    await open('/inspection/new');
    await keys.type('[name="listName"]', 'Bench list', 40);
    await keys.type('[name="name.0"]', 'Hub free of grooves', 40);
    await keys.choose('[name="kind.0"]', 'yes-no');
    await keys.type('#list-form [name="who"]', 'AA', 80);
    await keys.enter('#save-list', 'adding the list');
    expect((await listEntries(program.shop.db, 'checklist')).map(({ name }) => name)).toContain('Bench list');
    await done('an inspection list');
    await page.goto(`${program.url}/inspection/bench-list`);
    expect(await page.isVisible('.for-paper')).toBe(false);
    await page.emulateMedia({ media: 'print' });
    expect(await page.isVisible('.for-paper')).toBe(true);
    expect(await page.locator('.for-paper').textContent()).toContain('Hub free of grooves: yes');
    await page.emulateMedia({ media: null });
  });

  it('something is marked wrong, with what is right, and a job of it closed', async () => {
    await open('/wrong');
    await keys.type('[name="thing"]', 'Shop limits', 40);
    await typeDay('[name="since"]');
    await keys.type('[name="reason"]', 'A typing mistake.', 20);
    await keys.type('#wrong-form [name="who"]', 'AA', 20);
    await keys.enter('#mark-wrong', 'marking it wrong');
    expect(await allWrong(program.shop.db)).toMatchObject([{ what: 'criteria', since: '2026-01-15' }]);
    await done('the jobs that rested on it');
    const first = page.locator('.rested').first();
    const form = `#${await first.getAttribute('id')}`;
    await keys.type(`${form} [name="word"]`, 'Looked at.', 40);
    await keys.type(`${form} [name="who"]`, '');
    await keys.enter(`${form} button`, 'closing a job');
    await done('one gone through');
    expect(await page.textContent('main')).toContain('Looked at.');
  });

  it('a gauge is studied: set up and read, nothing of what was read in sight', async () => {
    await open('/gauges/micrometer-m2/studies');
    await keys.type('[name="covers"]', '2', 40);
    await keys.type('[name="rounds"]', '2', 20);
    await keys.type('[name="people"]', 'AA, BB', 20);
    await keys.type('form [name="who"]', 'AA', 20);
    await keys.enter('form button.first', 'setting up a study', 20);
    await done('a reading of a study');
    // The tablet goes off before the first is saved: what was typed stands there again.
    await keys.type('[name="value"]', '4.9', 20);
    await page.goto('about:blank');
    await page.goto(`${program.url}/studies/1`);
    expect(await page.inputValue('#reading')).toBe('4.9');
    expect(await page.isVisible('[data-typed-note]')).toBe(true);
    await page.fill('#reading', '');
    await page.reload();
    expect(await page.inputValue('#reading')).toBe('');
    for (const wall of ['4.92', '4.93', '4.91']) {
      await keys.type('[name="value"]', wall, 20);
      await Promise.all([page.waitForEvent('load'), page.keyboard.press('Enter')]);
      expect(await page.textContent('main')).not.toContain(wall);
      expect(await page.inputValue('#reading')).toBe('');
    }
    await expect.poll(async () => (await getStudy(program.shop.db, 1))?.readings.length).toBe(3);
    await done('the next reading of a study');
  });
});

describe('in an empty shop', () => {
  let program: Program;
  beforeAll(async () => {
    program = await openProgram({ demo: false });
  });
  afterAll(() => program.close());

  it('the shop is set up, its time zone too', async () => {
    await page.goto(`${program.url}/setup`);
    await expectAccessible(page, '/setup');
    await keys.type('[name="shopName"]', 'Heron Lane', 40);
    await keys.choose('[name="lengthUnit"][type="radio"]', 'mm');
    await keys.choose('[name="decimalSign"][type="radio"]', 'point');
    await keys.to('[name="timeZone"]');
    await page.keyboard.press('Control+A');
    await page.keyboard.type('America/Denver');
    await keys.type('#shop-form [name="who"]', 'AA');
    await keys.enter('#save-shop', 'the first step');
    await expectAccessible(page, 'the second step');
    const { body } = await currentCriteria(program.shop.db);
    expect(body).toMatchObject({ shopName: 'Heron Lane', lengthUnit: 'mm', timeZone: 'America/Denver' });
  });

  const HEADS =
    'name,number of studs,bolt circle diameter (mm),friction surface inner diameter (mm),friction surface outer diameter (mm),new wall (mm),stiffening ring may be welded on';
  const list = (rows: number) =>
    Buffer.from(
      [HEADS, ...Array.from({ length: rows }, (_, i) => `Type ${i},4,286,214,264,5,no`)].join('\r\n'),
    );
  const types = async () => (await listEntries(program.shop.db, 'family', { retired: true })).length;

  it('a long list shows how far it is, and is stopped: nothing of it is saved', async () => {
    await page.goto(`${program.url}/import/family`);
    await expectAccessible(page, '/import/family');
    await page.setInputFiles('[name="file"]', { name: 'list.csv', mimeType: 'text/csv', buffer: list(4900) });
    await keys.enter('#send-file', 'sending the list', 40);
    await page.waitForSelector('#importing');
    await expectAccessible(page, 'a list under way');
    expect(await page.textContent('#importing-words')).toMatch(/\S/);
    await keys.to('#stop-import', 40);
    await Promise.all([page.waitForEvent('load'), page.keyboard.press('Enter')]);
    expect(await page.textContent('#import')).toContain('Nothing was saved');
    await expectAccessible(page, 'a list that was stopped');
    expect(await types()).toBe(0);
  });

  it('a short one is looked at and saved', async () => {
    await page.goto(`${program.url}/import/family`);
    await page.setInputFiles('[name="file"]', { name: 'list.csv', mimeType: 'text/csv', buffer: list(3) });
    await keys.enter('#send-file', 'sending the list', 40);
    await expectAccessible(page, 'a list that was looked at');
    await keys.type('[name="who"]', 'AA', 40);
    await keys.enter('#import button.first', 'saving the list', 20);
    expect(await types()).toBe(3);
    await expectAccessible(page, 'a list that was saved');
  });
});

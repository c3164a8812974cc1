import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { findJobs } from '../../src/records/jobs/findJobs.ts';
import { type Lan, openLan, PASSWORD, PEOPLE } from '../web/lan.ts';
import { expectAccessible, expectNoSidewaysScroll } from './axe.ts';
import { openBrowser, openProgram, type Program, SCREENS, settled, unfold } from './browser.ts';

/** What a page says when its answer is late, wrong or lost, and that nothing typed is lost. */
let browser: Browser;
let context: BrowserContext;
let page: Page;
beforeAll(async () => {
  browser = await openBrowser('shop.example');
});
afterAll(() => browser?.close());
afterEach(() => context.close());

const said = () => page.textContent('#page-says');
const works = () => page.textContent('#page-works');

describe.each(SCREENS)('lost and late, on %s', (where, viewport) => {
  let program: Program;
  let posts: string[];
  beforeAll(async () => {
    program = await openProgram();
  });
  afterAll(() => program.close());
  beforeEach(async () => {
    context = await browser.newContext({ viewport, colorScheme: 'dark' });
    page = await context.newPage();
    posts = [];
    page.on('request', (request) => request.method() === 'POST' && posts.push(request.url()));
  });

  async function openCover(): Promise<void> {
    await page.goto(`${program.url}/`);
    await page.goto(program.url + (await page.getAttribute('a[href^="/cover/example/"]', 'href')));
  }

  it('a reading typed while the network is gone keeps, and the answer says that it is old', async () => {
    await openCover();
    const verdict = await page.textContent('#cover-head');
    await context.setOffline(true);
    await page.fill('[name="w.0"]', '2.9');
    await page.waitForSelector('#try-again');
    expect(await said()).toContain('No answer from the program. Nothing was saved.');
    expect(await page.textContent('#cover-head')).toBe(verdict);
    for (const part of ['#cover-head', '#cover-answer', '#cover-rows']) {
      expect(await page.getAttribute(part, 'data-old'), part).toBe('');
    }
    await expectAccessible(page, `a lost answer on ${where}`);
    await expectNoSidewaysScroll(page, `a lost answer on ${where}`);
    expect(await page.inputValue('[name="w.0"]')).toBe('2.9');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('name'))).toBe('w.0');
    // Typed on: said once, not at every key.
    await page.evaluate(() => document.querySelector('#page-says p')?.setAttribute('data-first', ''));
    await page.fill('[name="w.1"]', '4.9');
    await page.waitForFunction(() => document.querySelector('.htmx-request') === null);
    expect(await page.getAttribute('#page-says p', 'data-first')).toBe('');

    await context.setOffline(false);
    await page.waitForSelector('#try-again', { state: 'detached' });
    await settled(page);
    expect(await page.textContent('#cover-head')).not.toBe(verdict);
    expect(await page.$('[data-old]')).toBeNull();
    expect(await page.inputValue('[name="w.0"]')).toBe('2.9');
  });

  it('an answer of "busy" is told in its own words, and asked for again by the button', async () => {
    await openCover();
    await page.route('**/cover?**', (route) =>
      route.fulfill({ status: 503, contentType: 'text/html', body: '<main><p class="why">Busy.</p></main>' }),
    );
    await page.fill('[name="w.0"]', '2.9');
    await page.waitForSelector('#try-again');
    expect(await said()).toContain('Busy.');
    await page.unroute('**/cover?**');
    await page.focus('#try-again');
    await page.keyboard.press('Enter');
    await page.waitForSelector('#try-again', { state: 'detached' });
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('main');
  });

  it('a form sent while the program is gone stays as it was typed, and is saved once it is back', async () => {
    await page.goto(`${program.url}/jobs/new`);
    const number = `9${where.length}`;
    await unfold(page, '#f-number');
    await page.fill('#f-number', number);
    await unfold(page, '[name="note"]');
    await page.fill('[name="note"]', 'typed while the network was gone');
    if (await page.isVisible('#f-who')) await page.fill('#f-who', 'AB');
    await context.setOffline(true);
    await page.click('#receive');
    await page.waitForSelector('#try-again');
    expect(await said()).toContain('What you entered is still on this page.');
    expect(await page.inputValue('[name="note"]')).toBe('typed while the network was gone');
    await expectAccessible(page, `a form that was not sent on ${where}`);
    expect(posts).toEqual([]);
    await context.setOffline(false);
    await page.click('#try-again');
    await page.waitForURL(`${program.url}/jobs/${number}`);
    expect(posts).toHaveLength(1);
    const found = await findJobs(program.shop.db, { text: number, limit: 5 });
    expect(found.jobs.map((job) => job.number)).toContain(number);
  });

  it('a slow answer is said to be worked on, and a form pressed twice is sent once', async () => {
    await openCover();
    let answer = () => {};
    const held = new Promise<void>((resolve) => {
      answer = resolve;
    });
    await page.route('**/cover?**', async (route) => {
      await held;
      await route.continue();
    });
    await page.fill('[name="w.0"]', '2.9');
    await page.waitForFunction(() => document.getElementById('page-works')?.textContent === 'Working…');
    await expectAccessible(page, `a slow answer on ${where}`);
    answer();
    await page.waitForFunction(() => document.getElementById('page-works')?.textContent === '');

    await page.goto(`${program.url}/jobs/new`);
    await unfold(page, '#f-number');
    await page.fill('#f-number', `8${where.length}`);
    if (await page.isVisible('#f-who')) await page.fill('#f-who', 'AB');
    let sent = () => {};
    const waits = new Promise<void>((resolve) => {
      sent = resolve;
    });
    await page.route('**/health', async (route) => {
      await waits;
      await route.continue();
    });
    await page.dispatchEvent('#receive', 'click');
    await page.waitForFunction(() => document.getElementById('page-works')?.textContent === 'Working…');
    await page.dispatchEvent('#receive', 'click');
    sent();
    await page.waitForURL(`${program.url}/jobs/8${where.length}`);
    expect(posts).toHaveLength(1);
    expect(await works()).toBe('');
  });

  it('exports twice from one page: a file that comes leaves its form ready', async () => {
    await page.goto(`${program.url}/records`);
    for (const _time of [1, 2]) {
      const file = page.waitForEvent('download');
      await page.click('#export-everything');
      await (await file).cancel();
    }
    expect(posts.filter((url) => url.endsWith('/records/export'))).toHaveLength(2);
  });
});

describe.each(SCREENS)('signed out meanwhile, on %s', (where, viewport) => {
  let lan: Lan;
  const url = (path: string) => `http://${lan.host}${path}`;
  beforeEach(async () => {
    lan = await openLan();
    context = await browser.newContext({ viewport });
    page = await context.newPage();
    await page.goto(url('/'));
    await signIn(page);
  });
  afterEach(() => lan.close());

  async function signIn(at: Page): Promise<void> {
    await at.fill('#f-name', PEOPLE.keeper.name);
    await at.fill('#f-password', PASSWORD);
    await at.click('#sign-in');
    await at.waitForSelector('#sign-out', { state: 'attached' });
  }

  it('a reading typed then is in the page that comes after signing in', async () => {
    await page.goto(url('/cover'));
    await context.clearCookies();
    await page.fill('[name="w.0"]', '4.8');
    await page.waitForURL(/sign-in/);
    await page.fill('#f-name', PEOPLE.keeper.name);
    await page.fill('#f-password', PASSWORD);
    await page.click('#sign-in');
    await page.waitForURL(/\/cover\?/);
    expect(await page.inputValue('[name="w.0"]')).toBe('4.8');
  });

  it('a form with a drawing beside it stays, and is saved after signing in on another page', async () => {
    await page.goto(url('/catalogue/stack/new'));
    await context.clearCookies();
    await page.fill('#f-name', 'Typed before signing out');
    await page.waitForSelector('#sign-in-again');
    expect(await said()).toContain('You are signed out. Nothing was saved.');
    expect(await page.inputValue('#f-name')).toBe('Typed before signing out');
    await expectAccessible(page, `signed out in a form on ${where}`);
    const other = context.waitForEvent('page');
    await page.click('#sign-in-again');
    await signIn(await other);
    await page.bringToFront();
    await page.click('#try-again');
    await page.waitForSelector('#try-again', { state: 'detached' });
    expect(await page.inputValue('#f-name')).toBe('Typed before signing out');
  });
});

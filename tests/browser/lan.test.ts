import type { Browser, BrowserContext, Page, Request } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { listEntries } from '../../src/records/catalogue.ts';
import { findJobs } from '../../src/records/jobs/findJobs.ts';
import { getJob } from '../../src/records/jobs/readJob.ts';
import { SESSION } from '../../src/web/people/sessionCookie.ts';
import { type Lan, openLan, PASSWORD, PEOPLE } from '../web/lan.ts';
import { expectAccessible, expectNoSidewaysScroll } from './axe.ts';
import { openBrowser, PHONE, SCREENS, unfold } from './browser.ts';

/** Plain HTTP under a name of the shop's network: for a browser that is no secure context, unlike 127.0.0.1. */
let browser: Browser;
let lan: Lan;
let context: BrowserContext;
let page: Page;
let problems: string[];
let posts: Request[];

beforeAll(async () => {
  browser = await openBrowser('shop.example');
});
afterAll(() => browser?.close());

async function visit(viewport: { width: number; height: number }): Promise<void> {
  context = await browser.newContext({ viewport });
  page = await context.newPage();
  problems = [];
  posts = [];
  page.on('console', (message) => message.type() === 'error' && problems.push(message.text()));
  page.on('pageerror', (error) => problems.push(error.message));
  page.on('requestfailed', (request) => {
    // The browser itself drops what it is loading when it is sent to another page.
    const why = request.failure()?.errorText ?? '';
    if (why !== 'net::ERR_ABORTED') problems.push(`${request.url()}: ${why}`);
  });
  page.on('request', (request) => request.method() === 'POST' && posts.push(request));
}

const url = (path: string) => `http://${lan.host}${path}`;

async function signIn(name: string, password = PASSWORD): Promise<void> {
  await page.fill('#f-name', name);
  await page.fill('#f-password', password);
  await page.click('#sign-in');
}

/** What the page says when it is opened by somebody who is not signed in is no fault of the page. */
const faults = () => problems.filter((one) => !/status of (401|422)/.test(one));

describe.each(SCREENS)('a shop on its network, on %s', (where, viewport) => {
  beforeEach(async () => {
    lan = await openLan();
    await visit(viewport);
  });
  afterEach(async () => {
    await context.close();
    await lan.close();
  });

  it('signs in, receives a cover and keeps a reading, signed by whoever signed in', async () => {
    await page.goto(url('/jobs/new'));
    expect(await page.evaluate(() => globalThis.isSecureContext)).toBe(false);
    await expectAccessible(page, `sign in on ${where}`);
    await expectNoSidewaysScroll(page, `sign in on ${where}`);
    await signIn(PEOPLE.recorder.name, 'not the password');
    await page.waitForSelector('.faults');
    await expectAccessible(page, `sign in refused on ${where}`);
    await signIn(PEOPLE.recorder.name);
    await page.waitForURL(url('/jobs/new'));

    const family = (await listEntries(lan.shop.db, 'family'))[0]!;
    await unfold(page, '#f-number');
    await page.fill('#f-number', '901');
    await page.selectOption('[name="family"]', family.id);
    await page.click('#receive');
    await page.waitForURL(url('/jobs/901'));
    await page.evaluate(() => {
      for (const folded of document.querySelectorAll('details')) folded.open = true;
    });
    await page.fill('#before-form [name="w.0"]', String(family.body.nominalWallMm));
    const kept = page.waitForResponse((reply) => reply.url().endsWith('/jobs/901/readings'));
    await page.click('#before-form-send');
    expect((await kept).status()).toBe(303);
    const job = (await getJob(lan.shop.db, '901'))!;
    expect(job.sections.received?.who).toBe(PEOPLE.recorder.initials);
    expect(job.readings.map((one) => one.who)).toEqual([PEOPLE.recorder.initials]);
    expect(await page.locator('input[name="who"]').count()).toBe(0);

    expect(posts.length).toBeGreaterThanOrEqual(4);
    for (const post of posts) expect((await post.allHeaders()).origin, post.url()).toBe(`http://${lan.host}`);
    expect(faults()).toEqual([]);
  });

  it('loads style, letters and script; its cookie is for no script; sign out ends it', async () => {
    await page.goto(url('/cover'));
    await signIn(PEOPLE.reader.name);
    await page.waitForURL(url('/cover'));
    await page.waitForFunction(() => document.fonts.status === 'loaded');
    const seen = await page.evaluate(() => ({
      font: document.fonts.check('16px "Barlow Semi Condensed"'),
      loaded: [...document.fonts].filter((face) => face.status === 'loaded').length,
      rules: [...document.styleSheets].map((sheet) => sheet.cssRules.length > 0),
      htmx: 'htmx' in globalThis,
      cookie: document.cookie,
    }));
    expect(seen.font && seen.loaded).toBeGreaterThan(0);
    expect(seen.rules).toEqual(seen.rules.map(() => true));
    // Each sheet that the page names.
    expect(seen.rules.length).toBe(await page.locator('link[rel="stylesheet"]').count());
    expect(seen.htmx).toBe(true);
    expect(seen.cookie).not.toContain(SESSION);
    const cookie = (await context.cookies()).find(({ name }) => name === SESSION)!;
    expect(cookie).toMatchObject({ httpOnly: true, sameSite: 'Lax', secure: false, path: '/' });
    await page.click('#sign-out');
    await page.waitForURL(url('/sign-in'));
    expect((await context.cookies()).some(({ name }) => name === SESSION)).toBe(false);
    await page.goto(url('/jobs'));
    expect(await page.locator('h1').textContent()).toBe('Sign in');
    expect(faults()).toEqual([]);
  });

  it('a form sent after the session ended is sent again after signing in', async () => {
    await page.goto(url('/jobs/new'));
    await signIn(PEOPLE.recorder.name);
    await page.waitForURL(url('/jobs/new'));
    await unfold(page, '#f-number');
    await page.fill('#f-number', '902');
    await page.selectOption('[name="family"]', (await listEntries(lan.shop.db, 'family'))[0]!.id);
    await context.clearCookies();
    await page.click('#receive');
    await page.waitForSelector('#sign-in');
    await expectAccessible(page, `sign in to send again on ${where}`);
    await signIn(PEOPLE.recorder.name);
    await page.waitForSelector('#resend');
    await expectAccessible(page, `send it now on ${where}`);
    await page.click('#resend');
    await page.waitForURL(url('/jobs/902'));
    expect((await getJob(lan.shop.db, '902'))?.sections.received?.who).toBe(PEOPLE.recorder.initials);
    expect(faults()).toEqual([]);
  });

  it('a keeper adds somebody, who chooses a password and sees what a reader may', async () => {
    await page.goto(url('/people'));
    await signIn(PEOPLE.keeper.name);
    await page.waitForURL(url('/people'));
    await page.fill('#f-name', 'Tester Seven');
    await page.fill('#f-initials', 'BL');
    await page.check('#f-role-reader');
    await page.click('#add-person');
    const told = (await page.textContent('#secret')) ?? '';
    await expectAccessible(page, `people on ${where}`);
    await expectNoSidewaysScroll(page, `people on ${where}`);
    await page.click('ul.rows >> text=Tester Seven');
    await page.waitForSelector('#retire');
    await expectAccessible(page, `a person on ${where}`);
    await expectNoSidewaysScroll(page, `a person on ${where}`);
    await page.click('#sign-out');
    await signIn('tester seven', told);
    await page.waitForURL(url('/account?back=%2F'));
    await expectAccessible(page, `account on ${where}`);
    await page.fill('#f-old', told);
    await page.fill('#f-password', 'a password of my own');
    await page.fill('#f-again', 'a password of my own');
    await page.click('#change-password');
    await page.waitForURL(url('/'));
    expect(await page.locator('nav a[href="/people"]').count()).toBe(0);
    await page.goto(url('/account'));
    await expectAccessible(page, `own account on ${where}`);
    await expectNoSidewaysScroll(page, `own account on ${where}`);
    expect(faults()).toEqual([]);
  });

  it('a reader sees a job whole and is offered nothing to change', async () => {
    const number = (await findJobs(lan.shop.db, { limit: 1 })).jobs[0]!.number;
    await page.goto(url('/jobs'));
    await signIn(PEOPLE.reader.name);
    await page.waitForURL(url('/jobs'));
    await page.goto(url(`/jobs/${number}`));
    const forms = await page
      .locator('main form[method="post"]')
      .evaluateAll((all) => all.map((form) => form.getAttribute('action')));
    expect(forms).toEqual([]);
    for (const path of ['/catalogue', '/criteria', '/catalogue/stud/999']) await page.goto(url(path));
    expect(faults().filter((one) => !/status of 404/.test(one))).toEqual([]);
  });
});

it('the first keeper comes in with the code of the start', async () => {
  lan = await openLan({ people: false });
  await visit(PHONE);
  await page.goto(url('/'));
  await expectAccessible(page, 'the first manager');
  await expectNoSidewaysScroll(page, 'the first keeper');
  await page.fill('#f-code', lan.firstCode.typed);
  await page.fill('#f-name', 'Tester One');
  await page.fill('#f-initials', 'AK');
  await page.fill('#f-password', PASSWORD);
  await page.fill('#f-again', PASSWORD);
  await page.click('#become-keeper');
  await page.waitForURL(url('/'));
  expect(await page.locator('nav a[href="/people"]').count()).toBe(1);
  expect(faults()).toEqual([]);
  await context.close();
  await lan.close();
});

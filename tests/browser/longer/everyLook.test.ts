import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { LEAST_ROLE } from '../../../src/web/people/roles.ts';
import { SESSION } from '../../../src/web/people/sessionCookie.ts';
import { type Lan, openLan, PEOPLE } from '../../web/lan.ts';
import { expectAccessibleInEveryLook, expectNoSidewaysScroll } from '../axe.ts';
import { openBrowser, openProgram, type Program, settled } from '../browser.ts';

/** Every screen, and each state it can be in, on the narrowest phone and on a desk: light, dark, in the system's colors. */
let browser: Browser;
let context: BrowserContext;
let page: Page;
beforeAll(async () => {
  browser = await openBrowser('shop.example');
});
afterAll(() => browser?.close());
beforeEach(async () => {
  context = await browser.newContext();
  page = await context.newPage();
});
afterEach(() => context.close());

/** Every page that has one address, and one of each kind of those with a name in it. */
const EVERY_PAGE = [
  ...Object.keys(LEAST_ROLE)
    .filter((route) => /^GET \/(?!api|assets|health|sign-in|first|account|people)[^:.]*$/.test(route))
    .map((route) => route.slice('GET '.length)),
  '/cover/example/1125-4-plain-bright',
  '/jobs/1001',
  '/jobs/1008',
  '/jobs/1016/measure',
  '/jobs/1016/measure/paste',
  '/catalogue/family/new',
  '/catalogue/stud/new',
  '/catalogue/stack/new',
  '/catalogue/gauge/new',
  '/catalogue/steel/new',
  '/catalogue/steel/pressing-steel',
  '/catalogue/lining/new',
  '/catalogue/lining/tan-paper-lining',
  '/catalogue/lathe/new',
  '/catalogue/lathe/lathe-2',
  '/no-such-page',
];

/** Sends a form as it stands, with these boxes changed; what answers is looked at. */
async function send(form: string, typed: Readonly<Record<string, string>>): Promise<number> {
  const answered = page.waitForResponse((reply) => reply.request().method() === 'POST');
  const [, , answer] = await Promise.all([
    page.waitForEvent('load'),
    page.evaluate(
      ([selector, boxes]) => {
        const found = document.querySelector<HTMLFormElement>(selector)!;
        for (const [name, value] of Object.entries(boxes)) {
          const box = found.elements.namedItem(name);
          if (box instanceof Element && 'value' in box) box.value = value;
        }
        // Once this has returned: the answer takes the page away.
        setTimeout(() => HTMLFormElement.prototype.submit.call(found));
      },
      [form, typed] as const,
    ),
    answered,
  ]);
  return answer.status();
}

describe('in the demo shop', () => {
  let program: Program;
  beforeAll(async () => {
    program = await openProgram();
  });
  afterAll(() => program.close());

  it.each(EVERY_PAGE)('%s, which fits 320 px, and letters twice as large at 640 px', async (path) => {
    await page.goto(program.url + path);
    await expectAccessibleInEveryLook(page, path);
    await page.emulateMedia({ forcedColors: 'none' });
    await page.setViewportSize({ width: 320, height: 640 });
    await expectNoSidewaysScroll(page, `${path} at 320 px`);
    await page.setViewportSize({ width: 640, height: 900 });
    await page.evaluate(() => {
      const { style } = document.documentElement;
      style.setProperty(
        'font-size',
        `${2 * Number.parseFloat(getComputedStyle(document.documentElement).fontSize)}px`,
      );
    });
    await expectNoSidewaysScroll(page, `${path} with letters twice as large`);
  });

  it.each([
    ['/jobs/new', 'form[action="/jobs"]', { who: '' }],
    ['/catalogue/stud/new', 'main form[method="post"]', { name: '' }],
    ['/criteria', 'main form[action="/criteria"]', { minimum: 'half' }],
    ['/inspection/new', '#list-form', { listName: '' }],
  ] as const)('a form that was not taken: %s', async (path, form, typed) => {
    await page.goto(program.url + path);
    expect(await send(form, typed)).toBe(422);
    await page.locator('[aria-invalid="true"]').first().waitFor();
    await expectAccessibleInEveryLook(page, `${path}, not taken`);
  });

  it('a reading asked about, in a job and on the quick page', async () => {
    await page.goto(`${program.url}/jobs/1016`);
    expect(await send('#before-form', { 'w.0': '0.492', who: 'AK' })).toBe(422);
    await page.locator('.question').first().waitFor();
    await expectAccessibleInEveryLook(page, 'a reading asked about in a job');
    await page.goto(`${program.url}/cover/example/1125-4-plain-bright`);
    await page.fill('[name="w.0"]', '0.492');
    await page.waitForSelector('.doubt');
    await settled(page);
    await expectAccessibleInEveryLook(page, 'a reading asked about on the quick page');
  });

  it('an answer that is late, then lost', async () => {
    await page.goto(`${program.url}/cover/example/1125-4-plain-bright`);
    let lose = () => {};
    const held = new Promise<void>((resolve) => {
      lose = resolve;
    });
    await page.route('**/cover?**', async (route) => {
      await held;
      await route.abort();
    });
    await page.fill('[name="w.0"]', '2.9');
    await page.waitForFunction(() => document.getElementById('page-works')?.textContent === 'Working…');
    await expectAccessibleInEveryLook(page, 'a late answer');
    lose();
    await page.waitForSelector('#try-again');
    await expectAccessibleInEveryLook(page, 'a lost answer');
  });

  it('a job that somebody else changed', async () => {
    await page.goto(`${program.url}/jobs/1016`);
    const form = 'form[action$="/received"]';
    const from = (await page.locator(`${form} [name="from"]`).getAttribute('value'))!;
    expect(await send(form, { customer: 'theirs', who: 'AK' })).toBe(303);
    expect(await send(form, { from, customer: 'mine', who: 'BB' })).toBe(409);
    await page.locator('.stale').waitFor();
    await expectAccessibleInEveryLook(page, 'changed by somebody else');
  });
});

describe('in a shop with nothing in it', () => {
  let program: Program;
  beforeAll(async () => {
    program = await openProgram({ demo: false });
  });
  afterAll(() => program.close());

  it.each([
    '/',
    '/jobs',
    '/jobs/new',
    '/cover',
    '/stud',
    '/slips',
    '/shelf',
    '/trends',
    '/catalogue',
    '/criteria',
  ])('%s', async (path) => {
    await page.goto(program.url + path);
    await expectAccessibleInEveryLook(page, `${path}, empty`);
  });
});

describe('in a shop where people sign in', () => {
  let lan: Lan;
  const url = (path: string) => `http://${lan.host}${path}`;
  beforeAll(async () => {
    lan = await openLan();
  });
  afterAll(() => lan.close());

  async function comes(role: 'reader' | 'keeper'): Promise<void> {
    const value = (await lan.cookieOf(role)).slice(`${SESSION}=`.length);
    await context.addCookies([{ name: SESSION, value, url: url('/') }]);
  }

  it('asked to sign in, refused, and after too many tries', async () => {
    await page.goto(url('/jobs'));
    await expectAccessibleInEveryLook(page, 'sign in');
    const wrong = { name: PEOPLE.reader.name, password: 'not the password' };
    expect(await send('form[action="/sign-in"]', wrong)).toBe(422);
    await expectAccessibleInEveryLook(page, 'sign in, refused');
    let status = 422;
    for (let tries = 0; tries < 30 && status === 422; tries++)
      status = await send('form[action="/sign-in"]', wrong);
    expect(status).toBe(429);
    await expectAccessibleInEveryLook(page, 'too many tries');
  });

  it('signed out with a form under the hands', async () => {
    await comes('keeper');
    await page.goto(url('/jobs/new'));
    await context.clearCookies();
    expect(await send('form[action="/jobs"]', {})).toBe(401);
    await expectAccessibleInEveryLook(page, 'signed out');
  });

  it('not allowed to', async () => {
    await comes('reader');
    const answer = await page.goto(url('/records'));
    expect(answer?.status()).toBe(403);
    await expectAccessibleInEveryLook(page, 'not allowed');
  });

  it.each(['/people', '/account'])('%s', async (path) => {
    await comes('keeper');
    await page.goto(url(path));
    await expectAccessibleInEveryLook(page, path);
  });
});

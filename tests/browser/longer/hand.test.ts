import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DESK, openBrowser, openProgram, type Program, settled } from '../browser.ts';

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

async function open(path: string): Promise<Page> {
  const page = await browser.newPage({ viewport: { ...DESK, height: 700 } });
  await page.goto(program.url + path);
  return page;
}

/** Presses it where it is, and says how far on the screen it has moved since and whether it has the focus still. */
async function pressed(page: Page, selector: string) {
  const at = page.locator(selector);
  await at.scrollIntoViewIfNeeded();
  const top = (await at.boundingBox())!.y;
  await Promise.all([page.waitForEvent('load'), at.click()]);
  await settled(page);
  return {
    moved: Math.abs((await at.boundingBox())!.y - top),
    focused: await page.evaluate((id) => document.activeElement?.matches(id), selector),
  };
}

const focusedName = (page: Page) => page.evaluate(() => document.activeElement?.getAttribute('name'));

/** Whether the box with the focus is on the screen. */
const inSight = (page: Page) =>
  page.evaluate(() => {
    const { top, bottom } = document.activeElement!.getBoundingClientRect();
    return top >= 0 && bottom <= innerHeight;
  });

describe('where the hand was, after the page is shown anew', () => {
  it.each([
    ['Add a station', '/cover?family=1125-4-plain', '#add-station'],
    ['Add a heat mark', '/cover?family=1125-4-plain', '#add-mark'],
    ['Work it out, a cover', '/cover?family=1125-4-plain&w.0=4.9', '#work-out'],
    ['Add a layer, at the counter', '/stud?stack=own', '#add-layer'],
    ['Work it out, a stud', '/stud?stack=two-piece-four-3-8-24', '#find'],
    ['Add a layer, in the catalog', '/catalogue/stack/new', '#add-layer'],
    ['Work out the joint of a job', '/jobs/1018?stack=two-piece-four-3-8-24#studs', '#work-out-joint'],
  ])('%s', async (_what, path, selector) => {
    const page = await open(path);
    const { moved, focused } = await pressed(page, selector);
    expect(focused).toBe(true);
    expect(moved).toBeLessThan(3);
    await page.close();
  });

  it('a reading in doubt that is put right leads back to its box', async () => {
    const page = await open('/cover?family=1125-4-plain');
    await page.fill('[name="w.3"]', '0.492');
    await page.waitForSelector('.doubt');
    await page.focus('[id="use-w.3"]');
    await page.keyboard.press('Enter');
    await page.waitForFunction(() => document.querySelector('.doubt') === null);
    await page.waitForFunction(() => document.activeElement?.getAttribute('name') === 'w.3');
    await page.close();
  });
});

describe('a form that is not taken', () => {
  it('puts the focus into the first refused box, and its summary leads to the others', async () => {
    const page = await open('/jobs/new');
    await page.fill('#f-receivedOn', '2999-01-01');
    await page.click('#receive');
    await page.waitForSelector('.faults');
    expect(await focusedName(page)).toBe('ok.receivedOn');
    expect(await inSight(page)).toBe(true);
    // Asked for in the first round, beside its box.
    expect(await page.locator('#f-who-error').textContent()).toContain('Enter your initials');
    await page.click('.faults a[href="#f-who"]');
    expect(await focusedName(page)).toBe('who');
    expect(await inSight(page)).toBe(true);
    await page.close();
  });

  it.each([
    ['the inspection', '/jobs/1017', '#looked-form', 'who'],
    ['a decision', '/jobs/1019', '#decision-form', 'who'],
    ['a cover type', '/catalogue/family/new', 'form[action="/catalogue/family"]', 'name'],
    ['the shop limits', '/criteria', 'form[action="/criteria"]', 'who'],
  ])('%s', async (_what, path, form, name) => {
    const page = await open(path);
    await page.locator(`${form} button[type="submit"]`).first().click();
    await page.waitForSelector('.faults');
    expect(await focusedName(page)).toBe(name);
    expect(await inSight(page)).toBe(true);
    await page.close();
  });
});

it('the first click after typing is not lost while the answer comes in', async () => {
  const page = await open('/cover?family=1125-4-plain');
  await page.fill('[name="w.0"]', '0.492');
  await page.waitForSelector('.doubt');
  await settled(page);
  // No answer comes before the finger is down, however fast or slow the machine is: it would move the button.
  let letThrough = () => {};
  const down = new Promise<void>((resolve) => {
    letThrough = resolve;
  });
  await page.route('**', async (route) => {
    await down;
    await route.continue();
  });
  const answered = page.waitForResponse(/w\.1=4\.9/);
  await page.locator('[name="w.1"]').focus();
  await page.keyboard.type('4.9');
  const button = page.locator('[id="use-w.0"]');
  await button.scrollIntoViewIfNeeded();
  const at = (await button.boundingBox())!;
  await page.mouse.move(at.x + 20, at.y + at.height / 2);
  await page.mouse.down();
  letThrough();
  await answered;
  // Long enough for the part to be shown anew under the finger.
  await page.waitForTimeout(150);
  await page.mouse.up();
  await page.waitForFunction(() => document.querySelector('.doubt') === null);
  expect(await page.inputValue('[name="w.0"]')).toMatch(/^4\.92/);
  expect(await page.inputValue('[name="w.1"]')).toMatch(/^4\.9/);
  await page.close();
});

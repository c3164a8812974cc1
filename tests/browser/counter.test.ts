import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { listEntries } from '../../src/records/catalogue.ts';
import { expectAccessible, expectNoSidewaysScroll } from './axe.ts';
import { openBrowser, openProgram, type Program, SCREENS } from './browser.ts';
import { Hands } from './hands.ts';

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

describe.each(SCREENS)('the counter, on %s', (where, viewport) => {
  it('picks the long stud for a two-piece flexplate from the front page in three presses, and prints a slip', async () => {
    const stacks = await listEntries(program.shop.db, 'stack');
    const twoPiece = stacks.find((entry) => entry.body.stack.style === 'two-piece');
    const page = await browser.newPage({ viewport });
    const problems: string[] = [];
    page.on('console', (message) => message.type() === 'error' && problems.push(message.text()));
    page.on('pageerror', (error) => problems.push(error.message));
    const hands = new Hands(page);
    await page.goto(program.url);
    await hands.press('#way-stud');
    await expectAccessible(page, `a stud, nothing chosen, on ${where}`);
    await hands.choose('#f-stack', twoPiece!.id);
    await page.waitForSelector('#stud-head .verdict');
    expect(await page.locator('#stud-head h1').textContent()).toMatch(
      /^Long stud .* fits: the nut starts by hand/,
    );
    expect(await page.locator('ol.rows a.row').first().getAttribute('aria-current')).toBe('true');
    expect(hands.actions).toBeLessThanOrEqual(4);
    await expectAccessible(page, `a stud, answered, on ${where}`);
    await expectNoSidewaysScroll(page, `a stud, answered, on ${where}`);
    await hands.press('#slip');
    await page.waitForURL(/\/stud\/slip/);
    expect(hands.actions).toBe(3);
    expect(await page.locator('main').textContent()).toMatch(/Not .+:/);
    await expectAccessible(page, `the slip on ${where}`);
    expect(problems).toEqual([]);
    await page.close();
  });

  it('finds the flexplate by one look after the other, from the front page to a slip in seven presses', async () => {
    const page = await browser.newPage({ viewport });
    const hands = new Hands(page);
    await page.goto(program.url);
    await hands.press('#way-stud');
    await hands.press('#which-flexplate');
    await page.waitForURL(/\/stud\/flexplate/);
    expect(await page.locator('h1').textContent()).toBe('Which of 12 flexplate stacks is it?');
    const ask = await page.locator('#flexplate-ask').boundingBox();
    expect(ask!.y).toBeLessThan(viewport.height / 2);
    await hands.press('#answer-4');
    await page.waitForURL(/holeCount=4/);
    expect(await page.locator('h1').textContent()).toBe('5 of 12 flexplate stacks are left.');
    await hands.press('#answer-two-piece');
    await page.waitForURL(/style=two-piece/);
    expect(await page.locator('h1').textContent()).toBe('3 of 12 flexplate stacks are left.');
    await expectAccessible(page, `the next look, on ${where}`);
    await expectNoSidewaysScroll(page, `the next look, on ${where}`);
    await hands.press('#answer-3-8-24-unf');
    await page.waitForURL(/nutThread=/);
    expect(await page.locator('h1').textContent()).toMatch(/^One left: Two-piece, four 3\/8-24/);
    await hands.press('#use-stack');
    await page.waitForSelector('#stud-head .verdict');
    expect(await page.locator('#stud-head h1').textContent()).toMatch(/^Long stud 3\/8-24/);
    await hands.press('#slip');
    await page.waitForURL(/\/stud\/slip/);
    expect(hands.actions).toBeLessThanOrEqual(7);
    expect(await page.locator('main').textContent()).toContain('Long stud 3/8-24 UNF');
    await page.close();
  });

  it('finds the long stud with only the old stud and a caliper, in eight presses to its slip', async () => {
    const page = await browser.newPage({ viewport });
    const hands = new Hands(page);
    await page.goto(`${program.url}/?unit=mm`);
    await hands.press('#way-stud');
    await hands.press('#to-caliper');
    await page.waitForURL(/\/stud\/stacks/);
    await hands.fill('#f-major', '9.45');
    await hands.fill('#f-over', '10.6');
    await hands.fill('#f-projection', '30.3');
    await hands.press('#find-stacks');
    await page.waitForSelector('#stacks-found');
    expect(await page.locator('#thread-head').textContent()).toBe('Thread: 3/8-24 UNF');
    expect(await page.locator('#twins').textContent()).toContain('M10×1');
    expect(await page.locator('#on-the-shelf a.row').first().textContent()).toContain('Long stud 3/8-24 UNF');
    await expectAccessible(page, `a stud by a caliper, on ${where}`);
    await expectNoSidewaysScroll(page, `a stud by a caliper, on ${where}`);
    await hands.press('#stack-two-piece-four-3-8-24');
    await page.waitForSelector('#stud-head .verdict');
    expect(await page.locator('#stud-head h1').textContent()).toMatch(/^Long stud 3\/8-24/);
    await hands.press('#slip');
    await page.waitForURL(/\/stud\/slip/);
    expect(hands.actions).toBeLessThanOrEqual(8);
    expect(await page.locator('main').textContent()).toContain('Long stud 3/8-24 UNF');
    await page.close();
  });

  it('puts the value meant into the box with one press; Enter sends what was typed instead', async () => {
    const page = await browser.newPage({ viewport });
    await page.goto(`${program.url}/stud?stack=two-piece-four-3-8-24&unit=mm&pull=.16`);
    await page.fill('#f-pull', '4.1');
    await page.press('#f-pull', 'Enter');
    await page.waitForSelector('#stud-head .verdict');
    expect(await page.inputValue('#f-pull')).toBe('4.1');
    await page.goto(`${program.url}/stud?stack=two-piece-four-3-8-24&unit=mm&pull=.16`);
    await expectAccessible(page, `a gap asked about, on ${where}`);
    await page.click('[name="set.pull"]');
    await page.waitForSelector('#stud-head .verdict');
    expect(await page.inputValue('#f-pull')).toBe('0.16 in');
    await page.close();
  });

  it('goes from "I don\'t know which flexplate" to a printed slip, by what the caliper says', async () => {
    const page = await browser.newPage({ viewport });
    const problems: string[] = [];
    page.on('console', (message) => message.type() === 'error' && problems.push(message.text()));
    page.on('pageerror', (error) => problems.push(error.message));
    await page.addInitScript(() => {
      window.print = () => document.documentElement.setAttribute('data-printed', 'yes');
    });
    await page.goto(`${program.url}/stud?unit=mm`);
    await page.click('#which-flexplate');
    await page.waitForURL(/\/stud\/flexplate/);
    await expectAccessible(page, `which flexplate, on ${where}`);
    await expectNoSidewaysScroll(page, `which flexplate, on ${where}`);
    await page.click('#all-at-once summary');
    await page.check('#f-style-two-piece');
    await page.fill('#flexplate-form [name="total"]', '12.9');
    await page.fill('#flexplate-form [name="nutThread"]', '3/8-24');
    await page.click('#tell');
    await page.waitForSelector('#flexplate-found');
    await expectAccessible(page, `a flexplate told, on ${where}`);
    await expectNoSidewaysScroll(page, `a flexplate told, on ${where}`);
    await page.click('#match-two-piece-four-3-8-24');
    await page.waitForSelector('#stud-head .verdict');
    expect(await page.locator('#stud-head h1').textContent()).toMatch(/^Long stud 3\/8-24/);
    expect(await page.locator('#stud-short-3-8-24').textContent()).toMatch(
      /stud pilot is [\d.]+\smm short of the casting/,
    );
    await page.click('#joint-fields summary');
    await page.fill('[name="torque"]', '27 lb-ft');
    await page.fill('[name="engine"]', '350 N·m');
    await page.selectOption('[name="kFrom"]', 'zinc');
    await page.click('#find');
    await page.click('#stud-row-joint > summary');
    await page.waitForSelector('#joint-answer');
    expect(await page.locator('#joint-head').textContent()).toMatch(/Joint holds/);
    expect(page.url()).toContain('torque=27');
    await page.locator('#tolerances summary').click();
    await expectAccessible(page, `stud, joint and tolerances, on ${where}`);
    await expectNoSidewaysScroll(page, `stud, joint and tolerances, on ${where}`);
    await page.click('#slip');
    await page.waitForURL(/\/stud\/slip/);
    expect(await page.locator('main').textContent()).toMatch(/Holds at .*Look up the vehicle maker’s torque/);
    await expectAccessible(page, `the slip with its joint, on ${where}`);
    await page.click('#print');
    expect(await page.getAttribute('html', 'data-printed')).toBe('yes');
    expect(problems).toEqual([]);
    await page.close();
  });

  it('saves a slip, finds it again by its number, counts it out of stock and begins a job from it', async () => {
    const page = await browser.newPage({ viewport });
    const problems: string[] = [];
    page.on('console', (message) => message.type() === 'error' && problems.push(message.text()));
    page.on('pageerror', (error) => problems.push(error.message));
    await page.goto(`${program.url}/stud?stack=two-piece-four-3-8-24&pull=0.16&unit=in`);
    await page.click('#slip');
    await page.fill('[name="customer"]', `Caller on ${where}`);
    await page.fill('#slip-form [name="who"]', 'BB');
    await expectAccessible(page, `the slip to be saved, on ${where}`);
    await page.click('#save-slip');
    await page.waitForURL(/\/slips\/S-\d+$/);
    const number = /S-\d+$/.exec(page.url())![0];
    await expectAccessible(page, `a saved slip, on ${where}`);
    await expectNoSidewaysScroll(page, `a saved slip, on ${where}`);

    await page.goto(program.url);
    await page.fill('.finder [name="text"]', number);
    await page.click('#find-job');
    await page.click(`#slips-found a[href="/slips/${number}"]`);
    await page.click('#count-out');
    await page.waitForSelector('#stock-history');
    expect(await page.locator('#stock-history').textContent()).toMatch(/Taken out by BB.*48 → 44|44 → 40/);
    await page.click('#printed');
    await page.waitForURL(/\/printed$/);
    expect(await page.locator('.slip-block').textContent()).toContain(number);
    await expectAccessible(page, `the paper of a slip, on ${where}`);
    await page.click('#to-slip');
    await page.click('#begin-job');
    expect(await page.inputValue('[name="customer"]')).toBe(`Caller on ${where}`);
    await page.click('#receive');
    await page.waitForSelector('#studs-slip');
    expect(await page.locator('#studs-slip').textContent()).toContain(`Counter slip ${number}`);
    expect(await page.inputValue('#job-stack-form [name="stack"]')).toBe('two-piece-four-3-8-24');
    await page.goto(`${program.url}/slips`);
    await expectAccessible(page, `the list of slips, on ${where}`);
    await expectNoSidewaysScroll(page, `the list of slips, on ${where}`);
    expect(problems).toEqual([]);
    await page.close();
  });

  it('measures the gap, is told shims, and goes on to the studs', async () => {
    const page = await browser.newPage({ viewport });
    await page.goto(`${program.url}/stud/gap?unit=mm`);
    await page.fill('[name="depth"]', '28');
    await page.fill('[name="standsOut"]', '22');
    await page.fill('[name="hub"]', '20');
    await page.fill('[name="shims"]', '0.8; 1.5; 2');
    await page.selectOption('[name="stack"]', 'one-piece-four-3-8-24');
    await page.click('#work-out-gap');
    await page.waitForSelector('#gap-answer');
    await expectAccessible(page, `the gap, on ${where}`);
    await expectNoSidewaysScroll(page, `the gap, on ${where}`);
    await page.click('#all-studs');
    await page.waitForSelector('#stud-head .verdict');
    expect(await page.locator('#stud-page').textContent()).toContain('shim 2.00, plate 3.17');
    await page.close();
  });

  it('types a stack layer by layer in inches, and learns what suits a stud in the hand', async () => {
    const page = await browser.newPage({ viewport });
    await page.goto(`${program.url}/stud?stack=own&unit=in`);
    await page.fill('[name="ln.0"]', 'plate');
    await page.fill('[name="lt.0"]', '1/8');
    await page.fill('[name="nutThread"]', '3/8-24');
    await page.fill('[name="nutHeight"]', '21/64 in');
    await page.fill('[name="pull"]', '4 mm');
    await page.click('#find');
    await page.waitForSelector('ol.rows');
    expect(await page.locator('#stud-page').textContent()).toContain('plate');
    await expectAccessible(page, `a stack typed in, on ${where}`);
    await page.goto(`${program.url}/stud/stacks?stud=own`);
    await page.fill('[name="thread"]', '3/8-24');
    await page.click('#hand-more summary');
    await page.fill('[name="threadStart"]', '1');
    await page.fill('[name="threadEnd"]', '20');
    await page.fill('[name="projection"]', '10');
    await page.click('#find-stacks');
    await page.waitForSelector('.faults');
    expect(await page.inputValue('[name="projection"]')).toBe('10');
    await page.fill('[name="projection"]', '23');
    await page.click('#find-stacks');
    await page.waitForSelector('ol.rows');
    await expectAccessible(page, `stacks for a stud, on ${where}`);
    await expectNoSidewaysScroll(page, `stacks for a stud, on ${where}`);
    await page.close();
  });

  it('finds catalog, criteria and every other page in order', async () => {
    const page = await browser.newPage({ viewport });
    for (const path of [
      '/catalogue',
      '/catalogue/family/new',
      '/catalogue/stud/new',
      '/catalogue/stack/new',
      '/criteria',
      '/how',
      '/how/bending',
      '/how/studs',
      '/how/studs/torqueWindow',
      '/how/cover/toolPlane',
      '/records',
      '/jobs',
      '/no-such-page',
    ]) {
      await page.goto(program.url + path);
      await expectAccessible(page, `${path} on ${where}`);
      await expectNoSidewaysScroll(page, `${path} on ${where}`);
    }
    await page.close();
  });
});

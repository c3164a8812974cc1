import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { findJobs } from '../../../src/records/jobs/findJobs.ts';
import { DESK, openBrowser, openProgram, type Program } from '../browser.ts';

/** The screens as a screen reader tells them: by roles and names alone, pressed from the keyboard. */
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

const STEPS = ['Receive', 'Inspect', 'Measure', 'Decide', 'Cut', 'Re-measure', 'Studs', 'Sign'];

/** Invented readings: wall, indicator reading, heat mark, in the order of the stations; and the wall after the cut. */
const READINGS = [
  ['4.92', '0.06', '0.20', '4.51'],
  ['4.90', '0.05', '', '4.50'],
  ['4.86', '0.01', '0.12', '4.50'],
  ['4.83', '-0.02', '', '4.50'],
  ['4.80', '-0.05', '0.25', '4.50'],
  ['4.81', '-0.04', '', '4.50'],
  ['4.85', '0', '0.10', '4.50'],
  ['4.90', '0.04', '', '4.51'],
  ['4.93', '0.07', '0.10', '4.51'],
  ['4.86', '0.01', '0.05', '4.50'],
  ['4.79', '-0.06', '0.15', '4.50'],
  ['4.85', '0', '0.05', '4.50'],
] as const;
const COLUMNS = ['Wall', 'Indicator reading', 'Heat mark depth'] as const;

/** Somebody who sees nothing of the page. */
class Listener {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  box(name: string, description?: RegExp): Locator {
    return this.page.getByRole('textbox', { name, ...(description && { description }) });
  }

  list(name: string): Locator {
    return this.page.getByRole('combobox', { name });
  }

  async press(name: string, role: 'button' | 'link' = 'button'): Promise<void> {
    const pressed = this.page.getByRole(role, { name, exact: true });
    await pressed.focus();
    await Promise.all([this.page.waitForEvent('load'), this.page.keyboard.press('Enter')]);
    await this.expectInOrder();
  }

  /** What folds has no role of its own in ARIA: browsers call it a disclosure triangle. */
  async unfold(name: string): Promise<void> {
    const fold = this.page.locator('summary').filter({ hasText: name, visible: true }).first();
    await fold.focus();
    await this.page.keyboard.press('Enter');
  }

  title(): Promise<string> {
    return this.page.title();
  }

  async headings(): Promise<readonly { level: number; words: string }[]> {
    const told = await this.page.locator('body').ariaSnapshot();
    const found = told.matchAll(/heading "((?:[^"\\]|\\.)*)" \[level=(\d)\]/g);
    return [...found].map(([, words = '', level]) => ({ level: Number(level), words }));
  }

  /** One heading of the page and none skipped below it, one of each landmark, and a unit told with each box that has one. */
  async expectInOrder(): Promise<void> {
    const headings = await this.headings();
    const where = `headings of ${await this.title()}`;
    expect(headings.filter(({ level }) => level === 1).length, where).toBe(1);
    expect(headings[0]?.level, where).toBe(1);
    for (const [index, { level, words }] of headings.entries())
      expect(level, `${where}: ${words}`).toBeLessThanOrEqual((headings[index - 1]?.level ?? 0) + 1);
    for (const landmark of ['banner', 'main', 'contentinfo'] as const)
      expect(await this.page.getByRole(landmark).count(), landmark).toBe(1);
    expect(await this.page.getByRole('navigation', { name: 'Main' }).count()).toBe(1);
    expect(await this.page.evaluate(mute)).toEqual([]);
  }

  /** The focus is on this box, which is told as wrong, and why. */
  async expectWrong(name: string, sentence: RegExp, role: 'textbox' | 'combobox' = 'textbox'): Promise<void> {
    const box = this.page.getByRole(role, { name, description: sentence });
    await box.waitFor();
    expect(await box.getAttribute('aria-invalid'), name).toBe('true');
    expect(await box.evaluate((one) => one === document.activeElement), `${name} has the focus`).toBe(true);
    expect(await this.page.getByRole('alert').filter({ hasText: sentence }).count(), name).toBe(1);
  }

  /** Said by a region that was there before. */
  async expectSaid(words: RegExp, role: 'status' | 'alert' = 'status'): Promise<void> {
    await this.page.getByRole(role).filter({ hasText: words }).waitFor({ state: 'attached' });
  }
}

/** Run in the page: boxes without a name, pictures without words, and boxes whose unit is not told with them. */
function mute(): string[] {
  const textOf = (ids: string) =>
    ids
      .split(' ')
      .map((id) => document.getElementById(id)?.textContent ?? '')
      .join(' ');
  const boxes = [...document.querySelectorAll<HTMLInputElement>('main :is(input, select, textarea)')].filter(
    (box) => box.type !== 'hidden' && box.checkVisibility(),
  );
  return boxes.flatMap((box) => {
    const name = [...(box.labels ?? [])].map((label) => label.textContent ?? '').join(' ');
    const told = `${name} ${textOf(box.getAttribute('aria-describedby') ?? '')}`;
    const unit = box.closest('.box')?.querySelector('.unit')?.textContent ?? '';
    if (name.trim() === '') return [`${box.id} has no name`];
    return told.includes(unit) ? [] : [`${box.id} does not tell its unit, ${unit}`];
  });
}

it('a whole job is told in order: received, inspected, set up, measured, decided, cut, measured again, studs, signed', async () => {
  const page = await browser.newPage({ viewport: DESK });
  const hears = new Listener(page);
  const heading = (name: string | RegExp, level: number) => page.getByRole('heading', { name, level });

  await page.goto(`${program.url}/jobs/new`);
  await hears.expectInOrder();
  expect(await hears.headings()).toEqual([{ level: 1, words: 'Receive a cover' }]);
  await hears.list('Cover type').selectOption({ label: '1125-4 stamped, plain wall' });
  await hears.press('Receive it');
  await hears.expectWrong('Your initials', /Enter your initials, 1 to 8 characters/);
  await hears.box('Your initials').fill('AK');
  await hears.press('Receive it');

  const title = await hears.title();
  const number = /^Job (\d+)/.exec(title)?.[1];
  await heading(/^Job \d+: To inspect$/, 1).waitFor();
  const steps = (await hears.headings()).filter(({ words }) => /^\d\. /.test(words));
  expect(steps).toEqual(STEPS.map((step, index) => ({ level: 2, words: `${index + 1}. ${step}` })));
  const test = page.getByRole('group', { name: 'Crack test', exact: true });
  await test.getByRole('radio', { name: 'no cracks found' }).check();
  const method = page.getByRole('group', { name: 'Crack test method' });
  await method.getByRole('radio', { name: 'dye penetrant' }).check();
  await hears.press('Save inspection');

  await heading(/: To measure$/, 1).waitFor();
  await hears.unfold('Gauge and chucking');
  await hears.list('Gauge for the wall').selectOption({ index: 2 });
  await hears
    .list('Held in the lathe by')
    .selectOption({ label: 'pads and crank pilot, trued in the chuck' });
  await hears.box('Runout left in the chuck', /^mm/).fill('half');
  await hears.press('Save as a new revision');
  await hears.expectWrong('Runout left in the chuck', /"half" is not a plain number/);
  await hears.box('Runout left in the chuck').fill('0.01');
  await hears.press('Save as a new revision');

  await hears.press('Measure at the bench', 'link');
  const reading = page.getByRole('textbox', { name: 'Reading', description: /^Wall behind stud 1 .*mm/ });
  await reading.fill('about five');
  await page.keyboard.press('Enter');
  await hears.expectWrong('Reading', /"about five" is not a plain number/);
  await hears.box('Reading').fill('0.492');
  await page.keyboard.press('Enter');
  await hears.expectSaid(/0\.492.*Did you mean 4\.92/, 'alert');
  expect(await hears.box('Reading').getAttribute('aria-invalid')).toBeNull();
  await hears.box('Reading').fill('4.92');
  await page.keyboard.press('Enter');
  await hears.expectSaid(/4\.92 saved: wall behind stud 1/);
  const next = heading('Wall between studs 1 and 2', 1);
  await next.waitFor();
  expect(await next.getAttribute('aria-live'), 'what comes next is said').toBe('polite');
  await page.waitForFunction(() => document.getElementById('waiting-count')?.textContent === '0');
  await hears.press(`Job ${number}`, 'link');

  await hears.unfold('Type readings in a table');
  const at = (column: string, index: number) =>
    page.getByRole('textbox', { name: new RegExp(`^${column}, mm at station ${index + 1}, `) });
  for (const [index, row] of READINGS.entries()) {
    for (const [column, name] of COLUMNS.entries())
      if (index > 0 || column > 0) await at(name, index).fill(row[column] ?? '');
  }
  await at('Wall', 3).fill('0.483');
  await hears.press('Save readings');
  await hears.expectWrong('Wall, mm at station 4', /0\.483\smm\? Did you mean 4\.83\smm\?/);
  const use = page.getByRole('button', { name: 'Use 4.83', description: /Did you mean 4\.83/ });
  await use.focus();
  await Promise.all([page.waitForEvent('load'), page.keyboard.press('Enter')]);
  if ((await heading(/: To decide$/, 1).count()) === 0) await hears.press('Save readings');

  await heading(/: To decide$/, 1).waitFor();
  await heading(/^Face it: 0\.4\d+\smm\.$/, 3).waitFor();
  await page
    .getByRole('group', { name: 'Decision', exact: true })
    .getByRole('radio', { checked: true })
    .waitFor();
  await hears.press('Decide');

  await heading(/: To cut$/, 1).waitFor();
  const depth = hears.box('Depth of cut', /^mm This pass only, not the total/);
  await depth.fill('0.3');
  await hears.expectSaid(/^Leaves 4\.\d+\smm at the thinnest station/);
  expect(await hears.title(), 'the part that is drawn brings no title').toMatch(/^Job \d+/);
  await depth.fill('half');
  await hears.expectSaid(/^The cut is not drawn/);
  await hears.press('Save this pass');
  await hears.expectWrong('Depth of cut', /"half" is not a plain number/);
  await depth.fill('0.421');
  await hears.press('Save this pass');

  await heading(/: To re-measure$/, 1).waitFor();
  await hears.unfold('Type readings in a table');
  for (const [index, row] of READINGS.entries()) await at('Wall', index).fill(row[3]);
  await hears.press('Save readings');

  await heading(/: To sign$/, 1).waitFor();
  await hears
    .list('Flexplate stack')
    .selectOption({ label: 'Two-piece, four 3/8-24 on an 11.25 in bolt circle' });
  await hears.press('Check every stud');
  const studs = page.getByRole('group', { name: 'Stud, best first' });
  await studs.getByRole('radio', { name: /^Caution Short stud/ }).check();
  await hears.expectSaid(/Short stud .*: fits with care\./);
  await studs.getByRole('radio', { name: /^OK Long stud/ }).check();
  await hears.expectSaid(/Long stud .*: fits\./);
  await hears.press('Save these studs');

  await heading(/: To sign$/, 1).waitFor();
  await hears.box('Statement', /^Needed\. /).waitFor();
  await hears.press('Sign');
  await hears.expectWrong('Statement', /statement/);
  await hears.box('Statement').fill('Face runout not read.');
  await hears.press('Sign');
  await heading(/: Signed$/, 1).waitFor();
  await page.close();
});

it('what changes in a part of the page is said by a region that stays, sentence by sentence', async () => {
  const page = await browser.newPage({ viewport: DESK });
  const hears = new Listener(page);
  /** What was said after this, by the region that was there before. */
  const said = async (words: RegExp, change: () => Promise<unknown>) => {
    const region = await page.waitForSelector('#page-tells', { state: 'attached' });
    const before = await hears.title();
    await change();
    await hears.expectSaid(words);
    expect(await region.textContent()).toMatch(words);
    expect(await hears.title()).toBe(before);
  };

  await page.goto(`${program.url}/cover/example/1125-4-plain-bright`);
  const wall = page.getByRole('textbox', { name: 'Wall, mm at station 1,' });
  await said(/^Replace it/, () => wall.fill('2.9'));
  await said(/Did you mean 4\.92\smm\?$/, () => wall.fill('0.492'));
  await said(/^Check what was entered\. ?Wall.*"thin" is not a plain number/, () => wall.fill('thin'));
  await said(/^Face it: /, () => wall.fill('4.968'));

  await page.goto(`${program.url}/jobs`);
  const text = page.getByRole('searchbox');
  await said(/^Jobs: 1, by /, () => text.fill('1003'));
  await said(/^No jobs found$/, () => text.fill('no such words'));
  await page.goto(`${program.url}/catalogue`);
  await said(/^Nothing found$/, () => page.getByRole('searchbox').fill('no such words'));

  await page.goto(`${program.url}/stud`);
  await said(/stud/, () => hears.list('Flexplate stack').selectOption({ index: 2 }));

  const { jobs } = await findJobs(program.shop.db, { familyId: '1025-3-plain', limit: 1 });
  const { number } = jobs[0]!;
  await page.goto(`${program.url}/jobs/${number}?beside=1150-6-billet`);
  await hears.unfold('Cut plan');
  const slider = page.getByRole('slider', { name: 'Depth of cut' });
  await slider.focus();
  await said(/^\d\.\d+\smm: /, () => page.keyboard.press('End'));
  await hears.unfold('Drawings: lining pressure');
  await page
    .getByRole('img', { name: /^Lining pressure/ })
    .first()
    .waitFor();
  expect(await hears.title(), 'drawings bring no title').toContain(`Job ${number}`);
  await page.close();
});

import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { restore } from '../../../src/records/backup/restore.ts';
import { peopleCommand } from '../../../src/records/people/peopleCommand.ts';
import { type Lan, openLan } from '../../web/lan.ts';
import { DESK, openBrowser, unfold } from '../browser.ts';

/** A name of the shop's network, over plain HTTP. */
const NAME = 'shop.example';
const OWN = 'a password of my own';

let browser: Browser;
let place: string;
const shops: Lan[] = [];

beforeAll(async () => {
  browser = await openBrowser(NAME);
  place = mkdtempSync(join(tmpdir(), 'coverwright-owner-'));
});
afterAll(async () => {
  await browser?.close();
  for (const shop of shops) await shop.close();
  rmSync(place, { recursive: true, force: true });
});

async function open(options: Parameters<typeof openLan>[0]): Promise<Lan> {
  const lan = await openLan(options);
  shops.push(lan);
  return lan;
}

async function signIn(page: Page, name: string, password: string): Promise<void> {
  await page.fill('#f-name', name);
  await page.fill('#f-password', password);
  await page.click('#sign-in');
}

/** After a temporary password, which leads to the page that was asked for. */
async function choosePassword(page: Page, old: string): Promise<void> {
  await page.waitForSelector('#change-password');
  await page.fill('#f-old', old);
  await page.fill('#f-password', OWN);
  await page.fill('#f-again', OWN);
  await page.click('#change-password');
}

async function receive(page: Page, url: string, customer: string): Promise<string> {
  await page.goto(`${url}/jobs/new`);
  await page.selectOption('#f-family', '1125-4-plain');
  await page.fill('#f-customer', customer);
  await page.click('#receive');
  await page.waitForURL(/\/jobs\/\d+$/);
  return page.url();
}

it('the owner goes from the demo to a shop of three, forgets the password, restores elsewhere and signs a cover there', async () => {
  const lan = await open({ people: false });
  const url = `http://${lan.host}`;
  const page = await browser.newPage({ viewport: DESK, acceptDownloads: true });
  const problems: string[] = [];
  page.on('pageerror', (error) => problems.push(error.message));

  await page.goto(url);
  await page.fill('#f-code', lan.firstCode.typed.replaceAll('-', ' '));
  await page.fill('#f-name', 'Tester One');
  await page.fill('#f-initials', 'TO');
  await page.fill('#f-password', OWN);
  await page.fill('#f-again', OWN);
  await page.click('#become-keeper');
  await page.waitForURL(`${url}/`);

  const job = await receive(page, url, 'the first of ours');
  await page.goto(url);
  await page.click('a[href="/begin"]');
  await page.click('#begin');
  await page.waitForSelector('text=The demo is put away.');
  await page.goto(job);
  expect(await page.locator('#made-up-cover').textContent()).toContain('It was kept because you use it.');
  await page.goto(`${url}/jobs`);
  expect(await page.locator('main').textContent()).not.toContain('1001');

  const passwords: string[] = [];
  for (const [name, initials, role] of [
    ['Tester Two', 'TT', 'recorder'],
    ['Tester Three', 'TH', 'reader'],
  ] as const) {
    await page.goto(`${url}/people`);
    await page.fill('#f-name', name);
    await page.fill('#f-initials', initials);
    await page.check(`#f-role-${role}`);
    await page.click('#add-person');
    await page.waitForSelector(`#told-once:has-text("${name}")`);
    await page.reload();
    passwords.push((await page.textContent('#secret')) ?? '');
  }

  const reader = await browser.newPage({ viewport: DESK });
  reader.on('pageerror', (error) => problems.push(error.message));
  await reader.goto(`${url}/jobs`);
  await signIn(reader, 'th', passwords[1]!);
  await choosePassword(reader, passwords[1]!);
  await reader.waitForURL(`${url}/jobs`);
  expect(await reader.locator('main').textContent()).toContain('the first of ours');

  // Forgotten: at the computer itself a command makes a new one.
  await page.click('#sign-out');
  await signIn(page, 'TO', 'what was it again');
  await page.waitForSelector('.faults');
  expect(await page.locator('main').textContent()).toContain('npm run people -- reset');
  const said = await peopleCommand(lan.shop.db, ['reset', 'TO'], () => lan.now);
  const made = /[a-z0-9]{4}(-[a-z0-9]{4}){2,}/.exec(said)?.[0] ?? '';
  await page.goto(`${url}/records`);
  await signIn(page, 'TO', made);
  await choosePassword(page, made);
  await page.waitForURL(`${url}/records`);

  const backups = page.locator('a[href^="/records/backups/"]');
  const before = await backups.count();
  await page.click('#backup-now');
  await expect.poll(() => backups.count()).toBe(before + 1);
  const download = page.waitForEvent('download');
  await backups.first().click();
  const zip = join(place, (await download).suggestedFilename());
  await (await download).saveAs(zip);
  expect(readdirSync(place)).toEqual([expect.stringMatching(/^coverwright-.+\.zip$/)]);

  const dataDir = join(place, 'another-computer');
  await restore({ dataDir, folder: zip, now: () => lan.now });
  const there = await open({ people: false, demo: false, dataDir });
  const thereUrl = `http://${there.host}`;
  const machinist = await browser.newPage({ viewport: DESK });
  machinist.on('pageerror', (error) => problems.push(error.message));
  await machinist.goto(`${thereUrl}/jobs/new`);
  await signIn(machinist, 'Tester Two', passwords[0]!);
  await choosePassword(machinist, passwords[0]!);
  await machinist.waitForURL(`${thereUrl}/jobs/new`);
  await signACover(machinist, await receive(machinist, thereUrl, 'the second of ours'));
  expect(problems).toEqual([]);
});

/** A cover that cracked: inspected, decided and signed to be replaced. */
async function signACover(page: Page, job: string): Promise<void> {
  await page.locator('#looked-form input[name="crackTest"][value="found"]').check();
  await page.locator('#looked-form input[name="crackMethod"][value="dye"]').check();
  await page.click('#looked-form-send');
  await page.waitForSelector('#decision-form-send');
  await page.click('#decision-form-send');
  await page.waitForSelector('#signature-form-send');
  await unfold(page, '#signature-form [name="statement"]');
  await page.fill('#signature-form [name="statement"]', 'Cracked at a stud; scrapped.');
  await page.click('#signature-form-send');
  await page.waitForFunction(() => document.querySelector('h1')?.textContent?.includes('Signed'));
  await page.goto(`${job}/sheet/signed`);
  expect(await page.locator('article.page').textContent()).toContain('TT');
}

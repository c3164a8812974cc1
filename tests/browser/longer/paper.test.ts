import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { findJobs } from '../../../src/records/jobs/findJobs.ts';
import { allReadings } from '../../../src/records/jobs/history.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { expectAccessible, expectNoSidewaysScroll } from '../axe.ts';
import { DESK, openBrowser, openProgram, PHONE, type Program } from '../browser.ts';

let browser: Browser;
let program: Program;
let numbers: readonly string[];

beforeAll(async () => {
  browser = await openBrowser();
  program = await openProgram({ publicUrl: 'http://coverwright.example:4180' });
  numbers = (await findJobs(program.shop.db, { limit: 200 })).jobs.map(({ number }) => number);
});
afterAll(async () => {
  await browser?.close();
  await program?.close();
});

async function pageIn(unit: 'mm' | 'in', viewport: typeof DESK | typeof PHONE = DESK): Promise<Page> {
  const context = await browser.newContext({ viewport });
  await context.addCookies([{ name: 'unit', value: unit, url: program.url }]);
  return context.newPage();
}

it.each(['mm', 'in'] as const)(
  'every sheet of the demo shop, in %s, fits one page of Letter and of A4, two beyond 16 stations, and stays within its frame',
  async (unit) => {
    const page = await pageIn(unit);
    const seen = new Set<number>();
    for (const number of numbers) {
      const pages = (await stationsOf(number)) <= 16 ? 1 : 2;
      seen.add(pages);
      await page.goto(`${program.url}/jobs/${number}/sheet`);
      for (const format of ['A4', 'Letter'] as const) {
        expect([number, format, pagesOf(await page.pdf({ format }))]).toEqual([number, format, pages]);
      }
      await page.emulateMedia({ media: 'print' });
      expect([number, await beyondFrame(page)]).toEqual([number, []]);
      await page.emulateMedia({ media: null });
    }
    expect(seen).toEqual(new Set([1, 2]));
    await page.context().close();
  },
);

/** Places of the face where a wall was measured before the cut. */
async function stationsOf(number: string): Promise<number> {
  const job = await getJob(program.shop.db, number);
  const readings = await allReadings(program.shop.db, job!.id);
  const walls = readings.filter(({ kind, pass }) => kind === 'wall' && pass === 'before');
  return new Set(walls.map(({ angleDeg, radiusMm }) => `${angleDeg}/${radiusMm}`)).size;
}

/** What reaches out of the sheet, or out of the column it stands in. */
function beyondFrame(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('.page table, .page p, .page dl, .page svg, .page h1')].flatMap((one) => {
      if (one.getClientRects().length === 0) return [];
      const inside = one.getBoundingClientRect();
      const frame = one.closest('.page')!.getBoundingClientRect();
      const column = one.parentElement!.getBoundingClientRect();
      const title = one.matches('.title-block');
      const out =
        inside.left < frame.left ||
        inside.right > frame.right ||
        inside.bottom > frame.bottom ||
        (!title && one.scrollWidth > one.clientWidth + 1 && one.tagName !== 'svg') ||
        (!title && !one.matches('.unseen') && inside.right > column.right + 1);
      return out ? [`${one.tagName}.${one.getAttribute('class')}: ${one.textContent?.slice(0, 40)}`] : [];
    }),
  );
}

it('a tag prints on a label of 4 × 2 in, and ten on a page of Letter or A4', async () => {
  const page = await pageIn('in');
  await page.goto(`${program.url}/jobs/${numbers[0]}/tag`);
  const label = await page.pdf({ preferCSSPageSize: true });
  expect([pagesOf(label), /MediaBox\s*\[([^\]]*)\]/.exec(label.toString('latin1'))?.[1]?.trim()]).toEqual([
    1,
    '0 0 288 144',
  ]);
  await page.click('#tag-page');
  expect(await page.locator('.tag').count()).toBe(10);
  for (const format of ['A4', 'Letter'] as const) {
    expect([format, pagesOf(await page.pdf({ format }))]).toEqual([format, 1]);
  }
  await page.context().close();
});

it.each([
  ['a phone', PHONE],
  ['a desk', DESK],
] as const)(
  'sheet and tag, as they are and as signed, can be read by everybody on %s',
  async (where, viewport) => {
    const page = await pageIn('in', viewport);
    const signed = (await findJobs(program.shop.db, { stage: 'signed', limit: 1 })).jobs[0]!.number;
    for (const path of ['/sheet', '/sheet/signed', '/tag', '/tag?on=page', '/tag/signed']) {
      await page.goto(`${program.url}/jobs/${signed}${path}`);
      await expectAccessible(page, `${path} on ${where}`);
      await expectNoSidewaysScroll(page, `${path} on ${where}`);
    }
    await page.context().close();
  },
);

/** A page object in a PDF that Chrome writes. */
function pagesOf(pdf: Buffer): number {
  return (pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g) ?? []).length;
}

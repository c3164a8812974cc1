import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { openBrowser, openProgram } from '../browser/browser.ts';

/**
 * Every screen of the demo shop at three widths, light and dark, and every print, each as a picture of its own and all
 * on contact sheets, to be laid side by side and looked at.
 */
interface Screen {
  readonly name: string;
  readonly path: string;
  /** Done before the picture is taken. */
  readonly first?: (page: Page) => Promise<void>;
}

const WIDTHS = [360, 820, 1440] as const;
const LOOKS = ['light', 'dark'] as const;

const STUD = '/stud?stack=two-piece-four-3-8-24&pull=0.16&unit=in';

const SCREENS: readonly Screen[] = [
  { name: 'front', path: '/' },
  { name: 'cover, empty', path: '/cover' },
  { name: 'cover, example', path: '/', first: (page) => press(page, '#way-example') },
  {
    name: 'cover, in doubt',
    path: '/cover?family=1125-4-plain&unit=in&w.0=1.94&w.1=0.193&w.2=abc',
  },
  { name: 'stud, empty', path: '/stud' },
  { name: 'stud, answered', path: STUD },
  { name: 'stud, in doubt', path: '/stud?stack=two-piece-four-3-8-24&pull=4&unit=in' },
  { name: 'stud, gap', path: '/stud/gap' },
  { name: 'stud, which flexplate', path: '/stud/flexplate' },
  { name: 'stud, caliper', path: '/stud/stacks?unit=in&major=0.372&over=0.417&projection=1.19' },
  { name: 'slips, none yet', path: '/slips' },
  { name: 'jobs', path: '/jobs' },
  { name: 'jobs, none found', path: '/jobs?text=zzq' },
  { name: 'job, new', path: '/jobs/new' },
  { name: 'job, to measure', path: '/jobs/1016' },
  { name: 'job, to inspect', path: '/jobs/1017' },
  { name: 'measuring', path: '/jobs/1016/measure' },
  { name: 'job, to decide', path: '/jobs/1006' },
  { name: 'job, to cut', path: '/jobs/1004' },
  { name: 'job, to re-measure', path: '/jobs/1018' },
  { name: 'job, to sign', path: '/jobs/1005' },
  { name: 'job, signed', path: '/jobs/1001' },
  { name: 'job, history', path: '/jobs/1001/history' },
  { name: 'job, try another cut', path: '/jobs/1005/what-if' },
  { name: 'catalog', path: '/catalogue' },
  { name: 'studs in the catalog', path: '/catalogue?shelf=stud' },
  { name: 'cover type', path: '/catalogue/family/1125-4-plain' },
  { name: 'stud in the catalog', path: '/catalogue/stud/long-3-8-24' },
  { name: 'stack in the catalog', path: '/catalogue/stack/two-piece-four-3-8-24' },
  { name: 'gauge, new', path: '/catalogue/gauge/new' },
  { name: 'steel, new', path: '/catalogue/steel/new' },
  { name: 'steel in the catalog', path: '/catalogue/steel/pressing-steel' },
  { name: 'lining, new', path: '/catalogue/lining/new' },
  { name: 'lining in the catalog', path: '/catalogue/lining/tan-paper-lining' },
  { name: 'lathe, new', path: '/catalogue/lathe/new' },
  { name: 'lathe in the catalog', path: '/catalogue/lathe/lathe-2' },
  { name: 'limits', path: '/criteria' },
  { name: 'how it is worked out', path: '/how' },
  { name: 'how, the cover', path: '/how/cover' },
  { name: 'how, words', path: '/how/words' },
  { name: 'records', path: '/records' },
  { name: 'not found', path: '/no-such-page' },
];

const PRINTS: readonly Screen[] = [
  { name: 'sheet', path: '/jobs/1001/sheet' },
  { name: 'sheet, to be replaced', path: '/jobs/1002/sheet' },
  { name: 'tag', path: '/jobs/1001/tag' },
  { name: 'slip', path: '/stud/slip?stack=two-piece-four-3-8-24&pull=0.16&stud=long-3-8-24&unit=in' },
  { name: 'a job', path: '/jobs/1005' },
  { name: 'how, the cover', path: '/how/cover' },
];

async function press(page: Page, selector: string): Promise<void> {
  await page.click(selector);
  await page.waitForLoadState('networkidle');
}

/** A page as high as it is, cut where a contact sheet would become unreadable. */
const HIGHEST = 6000;

export async function takeEvery(folder: string): Promise<void> {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  const program = await openProgram({ unit: 'in', publicUrl: 'http://coverwright.example:4180' });
  const browser = await openBrowser();
  try {
    const rows: { name: string; files: string[] }[] = [];
    for (const screen of SCREENS) {
      const files: string[] = [];
      for (const look of LOOKS)
        for (const width of WIDTHS) files.push(await take(browser, program.url, screen, folder, width, look));
      rows.push({ name: screen.name, files });
      console.log(screen.name);
    }
    for (const print of PRINTS) {
      rows.push({
        name: `${print.name}, printed`,
        files: [await take(browser, program.url, print, folder, 816, 'print')],
      });
      console.log(`${print.name}, printed`);
    }
    await layOut(browser, folder, rows);
  } finally {
    await browser.close();
    await program.close();
  }
}

async function take(
  browser: Browser,
  base: string,
  screen: Screen,
  folder: string,
  width: number,
  look: (typeof LOOKS)[number] | 'print',
): Promise<string> {
  const context = await browser.newContext({
    viewport: { width, height: width === 1440 ? 900 : 1100 },
    reducedMotion: 'reduce',
    ...(look !== 'print' && { colorScheme: look }),
  });
  const page = await context.newPage();
  if (look === 'print') await page.emulateMedia({ media: 'print' });
  await page.goto(base + screen.path, { waitUntil: 'networkidle' });
  await screen.first?.(page);
  const high = Math.min(HIGHEST, await page.evaluate(() => document.documentElement.scrollHeight));
  const file = `${screen.name.replaceAll(/\W+/g, '-')}-${width}-${look}.png`;
  await page.screenshot({
    path: join(folder, file),
    fullPage: true,
    clip: { x: 0, y: 0, width, height: high },
  });
  await context.close();
  return file;
}

/** A row for each screen, its pictures to one scale; six rows a sheet. */
async function layOut(
  browser: Browser,
  folder: string,
  rows: readonly { readonly name: string; readonly files: readonly string[] }[],
): Promise<void> {
  const ROWS = 6;
  for (let from = 0; from < rows.length; from += ROWS) {
    const body = rows
      .slice(from, from + ROWS)
      .map(
        ({ name, files }) =>
          `<h2>${name}</h2><div>${files
            .map(
              (file) => `<img src="${file}" style="width:${Number(/-(\d+)-\w+\.png/.exec(file)![1]) / 4}px">`,
            )
            .join('')}</div>`,
      )
      .join('');
    const sheet = join(folder, `contact-${from / ROWS + 1}`);
    writeFileSync(
      `${sheet}.html`,
      `<!doctype html><meta charset="utf-8"><style>body{font:14px sans-serif;background:#888;margin:8px}
      h2{font-size:16px;margin:8px 0 4px}div{display:flex;gap:8px;align-items:flex-start}
      img{max-height:900px;object-fit:cover;object-position:top}</style>${body}`,
    );
    const page = await browser.newPage({ viewport: { width: 1400, height: 800 } });
    await page.goto(pathToFileURL(`${sheet}.html`).href);
    await page.screenshot({ path: `${sheet}.png`, fullPage: true });
    await page.close();
  }
}

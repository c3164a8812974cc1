import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { seedDemo } from '../../data/demo/seed.ts';
import type { LengthUnit } from '../../shared/words/print.ts';
import { openShop, type Shop } from '../../src/records/database/database.ts';
import { app } from '../../src/web/app.ts';
import { printsFor } from '../../src/web/job/papers.ts';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];
const PLACES = ['/Applications/Google Chrome.app/Contents/MacOS/Google Chrome'];

/** A Chrome or Chromium of this machine, else the one inside the npm package. Never skips: says what to install. */
async function executable(): Promise<string> {
  for (const name of NAMES) {
    const found = spawnSync('which', [name], { encoding: 'utf8' }).stdout?.trim();
    if (found) return found;
  }
  const place = PLACES.find((path) => existsSync(path));
  if (place) return place;
  if (process.platform === 'linux' && process.arch === 'x64') {
    const { default: packed } = await import('@sparticuz/chromium');
    return packed.executablePath();
  }
  throw new Error(
    'The browser tests need Chrome or Chromium. Install one (on Debian: apt-get install chromium) and run them again.',
  );
}

/** A loaded machine may take long for any step. */
const AGAINST_HANGING_MS = 200_000;

/** With `named`, a host name of a shop's network leads to this machine, which is no secure context for the browser. */
export async function openBrowser(named?: string): Promise<Browser> {
  try {
    const browser = await chromium.launch({
      executablePath: await executable(),
      headless: true,
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        ...(named === undefined ? [] : [`--host-resolver-rules=MAP ${named} 127.0.0.1`]),
      ],
    });
    const open = browser.newContext.bind(browser);
    browser.newContext = async (options) => {
      const context = await open(options);
      context.setDefaultTimeout(AGAINST_HANGING_MS);
      context.on('page', waitsUntilSent);
      return context;
    };
    return browser;
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new Error(
      `Chrome did not start. On a bare Debian install chromium, or the libraries libnss3, libnspr4 and libexpat1, and run the tests again. (${why})`,
    );
  }
}

/**
 * A form asks first whether the program is reached, and is sent a moment after it was pressed: a press is over when the
 * form has been answered, as it is for whoever looks at the page.
 */
function waitsUntilSent(page: Page): void {
  const { click, press } = page;
  page.click = async (...pressed) => {
    await click.apply(page, pressed);
    await sent(page);
  };
  page.press = async (...pressed) => {
    await press.apply(page, pressed);
    await sent(page);
  };
  const { keyboard } = page;
  const { press: key } = keyboard;
  keyboard.press = async (...pressed) => {
    await key.apply(keyboard, pressed);
    await sent(page);
  };
  const { locator } = page;
  page.locator = (...asked) => {
    const found = locator.apply(page, asked);
    const { click: clickIt } = found;
    found.click = async (...pressed) => {
      await clickIt.apply(found, pressed);
      await sent(page);
    };
    return found;
  };
}

async function sent(page: Page): Promise<void> {
  const waits = () => document.querySelector('form[data-sent]') !== null;
  // Between two pages there is nothing to ask yet.
  while (!page.isClosed() && (await page.evaluate(waits).catch(() => true))) await page.waitForTimeout(5);
}

export interface Program {
  readonly url: string;
  readonly shop: Shop;
  close(): Promise<void>;
}

/** The whole program on a free port of this machine, with the demo shop in a folder of its own. */
export async function openProgram(
  options: { demo?: boolean; unit?: LengthUnit; publicUrl?: string | null } = {},
): Promise<Program> {
  const dataDir = mkdtempSync(join(tmpdir(), 'coverwright-test-'));
  const now = () => new Date();
  const shop = openShop({ dataDir, now });
  const print = printsFor(null, { timeZone: 'UTC' });
  // Most of these tests type millimeters.
  if (options.demo !== false) await seedDemo(shop.db, print, { lengthUnit: options.unit ?? 'mm' });
  const server: Server = createServer(
    { maxHeaderSize: 128 * 1024 },
    app({
      shop,
      now,
      settings: {
        port: 0,
        host: '127.0.0.1',
        dataDir,
        databaseUrl: null,
        publicUrl: options.publicUrl ?? null,
        accounts: false,
        timeZone: 'UTC',
        demo: options.demo !== false,
      },
    }),
  );
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}`,
    shop,
    close: async () => {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
      await shop.close();
      rmSync(dataDir, { recursive: true, force: true });
    },
  };
}

export const PHONE = { width: 390, height: 844 } as const;
export const DESK = { width: 1240, height: 900 } as const;

/** The phone alone in `npm test`, both in the longer run of `npm run test:screens`. */
export const SCREENS: readonly (readonly [string, { readonly width: number; readonly height: number }])[] =
  process.env.EVERY_SCREEN === undefined
    ? [['a phone', PHONE]]
    : [
        ['a phone', PHONE],
        ['a desk', DESK],
      ];

/** Waits until htmx has nothing under way. */
export async function settled(page: Page): Promise<void> {
  await page.waitForFunction(
    () => document.querySelector('.htmx-request, .htmx-swapping, .htmx-settling') === null,
  );
}

/** Opens what folds a box, as whoever needs it does; nothing where it is open. */
export async function unfold(page: Page, box: string): Promise<void> {
  const fold = page.locator(box).locator('xpath=ancestor::details[not(@open)]/summary');
  if ((await fold.count()) > 0) await fold.click();
}

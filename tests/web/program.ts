import '../patient.ts';
import type { Server } from 'node:http';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { seedDemo } from '../../data/demo/seed.ts';
import type { LengthUnit } from '../../shared/words/print.ts';
import { openShopInMemory, type Shop } from '../../src/records/database/database.ts';
import { app } from '../../src/web/app.ts';
import { printsFor } from '../../src/web/job/papers.ts';
import { demoFile } from './demoShop.ts';

export interface Served {
  readonly url: string;
  readonly shop: Shop;
  /** What a person sees of a page: its status and its text without markup. */
  get(path: string): Promise<{ status: number; html: string; text: string }>;
  /** Sends a form as a browser would, and does not follow where it leads. */
  post(
    path: string,
    fields: Readonly<Record<string, string>>,
  ): Promise<{ status: number; html: string; text: string; location: string | null }>;
  close(): Promise<void>;
}

/** The whole program over HTTP on a shop in memory, for tests of pages that need no browser. */
export async function serve(options: {
  demo: boolean;
  /** What the demo shop works in: mm where a test does not choose. */
  unit?: LengthUnit;
  publicUrl?: string | null;
  databaseUrl?: string | null;
  now?: () => Date;
  /** UTC where none is given. */
  timeZone?: string;
  timeZoneSet?: boolean;
  /** Another shop than one in memory. */
  open?: (options: { now: () => Date }) => Promise<Shop>;
}): Promise<Served> {
  const { unit = 'mm' } = options;
  const now = options.now ?? (() => new Date('2026-11-24T12:00:00Z'));
  const shop = options.open
    ? await options.open({ now })
    : openShopInMemory({ now, ...(options.demo && { file: await demoFile(unit) }) });
  // A shop that is the demo shop already is left alone.
  const print = printsFor(null, { timeZone: 'UTC' });
  if (options.demo) await seedDemo(shop.db, print, { lengthUnit: unit });
  const settings = {
    port: 0,
    host: '127.0.0.1',
    dataDir: ':memory:',
    databaseUrl: options.databaseUrl ?? null,
    publicUrl: options.publicUrl ?? null,
    accounts: false,
    timeZone: options.timeZone ?? 'UTC',
    timeZoneSet: options.timeZoneSet ?? false,
    demo: options.demo,
  };
  const server: Server = createServer({ maxHeaderSize: 128 * 1024 }, app({ shop, settings, now }));
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const read = async (response: Response) => {
    // That a number is kept with its unit at the end of a line is a test of its own.
    const html = (await response.text()).replaceAll('\u00a0', ' ');
    return { status: response.status, html, text: textOf(html), location: response.headers.get('location') };
  };
  return {
    url,
    shop,
    get: async (path) => read(await fetch(url + path)),
    post: async (path, fields) =>
      read(
        await fetch(url + path, {
          method: 'POST',
          redirect: 'manual',
          headers: { origin: url, 'content-type': 'application/x-www-form-urlencoded' },
          body: new URLSearchParams(fields),
        }),
      ),
    close: async () => {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
      await shop.close();
    },
  };
}

/** Markup taken out, entities that we write put back, blanks folded. */
function textOf(html: string): string {
  return html
    .replace(/<(script|style)[\s\S]*?<\/\1>/g, ' ')
    .replace(/<[^>]+>/g, ' ')
    .replaceAll('&quot;', '"')
    .replaceAll('&lt;', '<')
    .replaceAll('&amp;', '&')
    .replace(/\s+/g, ' ')
    .trim();
}

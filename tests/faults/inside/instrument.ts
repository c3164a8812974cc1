/**
 * Loaded into the program before it starts, by tests alone: answers what they ask about routes and memory, and bends
 * the clock and the room for records.
 */
import http, { type RequestListener, type Server } from 'node:http';
import { syncBuiltinESMExports } from 'node:module';
import { setImmediate as turn } from 'node:timers/promises';
import Database from 'better-sqlite3';
import express from 'express';

export interface Route {
  readonly path: string;
  readonly methods: readonly string[];
}

export type Asked =
  | { readonly what: 'routes' }
  | { readonly what: 'heap' }
  | { readonly what: 'limits' }
  | { readonly what: 'clock'; readonly shiftMs: number }
  /** How many more pages the records may take; null for as many as they like. */
  | { readonly what: 'room'; readonly pages: number | null };

interface Layer {
  readonly handle: { readonly stack?: readonly Layer[] };
  readonly route?: { readonly path: string; readonly methods: Readonly<Record<string, boolean>> };
}

const mounted = new Map<unknown, string>();
let handler: { readonly router: { readonly stack: readonly Layer[] } } | undefined;
let server: Server | undefined;
let records: Database.Database | undefined;
let shiftMs = 0;

const routers = express.Router.prototype as { use: (...args: unknown[]) => unknown };
const use = routers.use;
routers.use = function (this: unknown, ...args: unknown[]) {
  const path = typeof args[0] === 'string' && args[0] !== '/' ? args[0] : '';
  for (const one of args.flat()) if (typeof one === 'function') mounted.set(one, path);
  return use.apply(this, args);
};

const createServer = http.createServer;
http.createServer = ((...args: Parameters<typeof createServer>) => {
  handler = args.findLast((one) => typeof one === 'function') as RequestListener & typeof handler;
  server = createServer(...args);
  return server;
}) as typeof createServer;
syncBuiltinESMExports();

const prepare = Database.prototype.prepare;
Database.prototype.prepare = function (this: Database.Database, ...args: Parameters<typeof prepare>) {
  if (!this.readonly && this.name.endsWith('coverwright.sqlite')) records = this;
  return prepare.apply(this, args);
} as typeof prepare;

const RealDate = Date;
globalThis.Date = class extends RealDate {
  constructor(...args: [] | ConstructorParameters<typeof RealDate>) {
    if (args.length === 0) super(RealDate.now() + shiftMs);
    else super(...args);
  }
  static override now(): number {
    return RealDate.now() + shiftMs;
  }
} as typeof Date;

function routesIn(stack: readonly Layer[], prefix: string): Route[] {
  return stack.flatMap(({ handle, route }) => {
    if (route) return [{ path: prefix + route.path, methods: Object.keys(route.methods) }];
    return handle.stack ? routesIn(handle.stack, prefix + (mounted.get(handle) ?? '')) : [];
  });
}

async function heapUsed(): Promise<number> {
  for (let i = 0; i < 4; i++) {
    globalThis.gc?.();
    await turn();
  }
  return process.memoryUsage().heapUsed;
}

function giveRoom(pages: number | null): unknown {
  const now = Number(records?.pragma('page_count', { simple: true }));
  return records?.pragma(`max_page_count = ${pages === null ? 1_000_000 : now + pages}`, { simple: true });
}

async function answer(asked: Asked): Promise<unknown> {
  switch (asked.what) {
    case 'routes':
      return routesIn(handler?.router.stack ?? [], '');
    case 'heap':
      return heapUsed();
    case 'limits':
      return { headersMs: server?.headersTimeout, requestMs: server?.requestTimeout };
    case 'clock':
      shiftMs = asked.shiftMs;
      return shiftMs;
    case 'room':
      return giveRoom(asked.pages);
  }
}

process.on('message', async ({ number, question }: { number: number; question: Asked }) => {
  process.send?.({ number, value: await answer(question) });
});
process.channel?.unref();

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, request } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Person, Role } from '../../shared/words/people.ts';
import { FILE_NAME, openShop, type Shop } from '../../src/records/database/database.ts';
import { ownPassword } from '../../src/records/people/passwords.ts';
import { addPerson } from '../../src/records/people/people.ts';
import { beginSession } from '../../src/records/people/sessions.ts';
import type { Settings } from '../../src/settings.ts';
import { app } from '../../src/web/app.ts';
import { SESSION } from '../../src/web/people/sessionCookie.ts';
import { FirstCode } from '../../src/web/request/firstCode.ts';
import { holdAnswer } from './api/heldAnswers.ts';
import { demoFile } from './demoShop.ts';

export const PASSWORD = 'four plain words here';
const HASHED = await ownPassword(PASSWORD);
export const PEOPLE = {
  reader: { name: 'Tester Three', initials: 'RO' },
  recorder: { name: 'Tester Two', initials: 'CD' },
  keeper: { name: 'Tester One', initials: 'AK' },
} as const;

export interface Reply {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly text: string;
  /** What it sets, whole. */
  readonly cookies: readonly string[];
}

export interface Asked {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly form?: Readonly<Record<string, string>>;
  readonly json?: unknown;
}

export interface Lan {
  readonly shop: Shop;
  readonly port: number;
  readonly host: string;
  readonly firstCode: FirstCode;
  readonly people: Readonly<Record<Role, Person>>;
  now: Date;
  /** A request with nothing added to what is asked; a form and JSON carry their type. */
  ask(path: string, asked?: Asked): Promise<Reply>;
  /** As a browser of somebody signed in sends it: with the cookie, and on a write with Origin. */
  askAs(role: Role, path: string, asked?: Asked): Promise<Reply>;
  /** A new session of somebody, as its cookie. */
  cookieOf(role: Role): Promise<string>;
  close(): Promise<void>;
}

/** The whole program as it answers on a shop's network, under a name that is not this machine's. */
export async function openLan(
  options: {
    readonly people?: boolean;
    readonly settings?: Partial<Settings>;
    readonly demo?: boolean;
    /** The shop in this folder, which stays. */
    readonly dataDir?: string;
  } = {},
): Promise<Lan> {
  const dataDir = options.dataDir ?? mkdtempSync(join(tmpdir(), 'coverwright-lan-'));
  const clock = { now: new Date('2026-11-24T12:00:00.000Z') };
  const now = () => clock.now;
  if (options.demo !== false && options.dataDir === undefined)
    writeFileSync(join(dataDir, FILE_NAME), await demoFile('mm'));
  const shop = openShop({ dataDir, now });
  const people: Partial<Record<Role, Person>> = {};
  if (options.people !== false) {
    for (const role of ['keeper', 'recorder', 'reader'] as const) {
      people[role] = await addPerson(shop.db, { who: 'AK', now }, { ...PEOPLE[role], role }, HASHED);
    }
  }
  const firstCode = new FirstCode();
  const settings: Settings = {
    port: 0,
    host: 'shop.example',
    dataDir,
    databaseUrl: null,
    publicUrl: null,
    accounts: true,
    timeZone: 'UTC',
    demo: options.demo !== false,
    ...options.settings,
  };
  const server = createServer({ maxHeaderSize: 128 * 1024 }, app({ shop, settings, now, firstCode }));
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  const host = `shop.example:${port}`;

  const ask = (path: string, { method, headers = {}, form, json }: Asked = {}) =>
    new Promise<Reply>((resolve, reject) => {
      const body = form
        ? new URLSearchParams(form).toString()
        : json === undefined
          ? null
          : JSON.stringify(json);
      const type = form ? 'application/x-www-form-urlencoded' : 'application/json';
      const sent = request(
        {
          port,
          host: '127.0.0.1',
          path,
          method: method ?? (body === null ? 'GET' : 'POST'),
          headers: { host, ...(body !== null && { 'content-type': type }), ...headers },
        },
        (reply) => {
          const parts: Buffer[] = [];
          reply.on('data', (part: Buffer) => parts.push(part));
          reply.on('end', () => {
            const status = reply.statusCode ?? 0;
            const text = Buffer.concat(parts).toString('utf8');
            try {
              holdAnswer({
                method: sent.method,
                url: path,
                status,
                type: reply.headers['content-type'],
                text,
              });
            } catch (error) {
              reject(error);
              return;
            }
            const cookies = reply.headers['set-cookie'] ?? [];
            resolve({ status, headers: reply.headers, text, cookies });
          });
        },
      );
      sent.on('error', reject);
      sent.end(body ?? undefined);
    });

  const cookieOf = async (role: Role) => {
    const personId = people[role]?.id ?? 0;
    return `${SESSION}=${await beginSession(shop.db, { personId, device: 'a test', now: clock.now })}`;
  };

  return {
    shop,
    port,
    host,
    firstCode,
    people: people as Record<Role, Person>,
    get now() {
      return clock.now;
    },
    set now(to) {
      clock.now = to;
    },
    ask,
    cookieOf,
    askAs: async (role, path, asked = {}) => {
      const cookie = await cookieOf(role);
      const writes = asked.form || asked.json !== undefined || (asked.method ?? 'GET') !== 'GET';
      const headers = { cookie, ...(writes && { origin: `http://${host}` }), ...asked.headers };
      return ask(path, { ...asked, headers });
    },
    close: async () => {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
      await shop.close();
      if (options.dataDir === undefined) rmSync(dataDir, { recursive: true, force: true });
    },
  };
}

/** The value a reply gives the session's cookie; '' when it takes it away, null when it leaves it. */
export function sessionIn(reply: Reply): string | null {
  const set = reply.cookies.find((cookie) => cookie.startsWith(`${SESSION}=`));
  return set === undefined ? null : (/^[^=]+=([^;]*)/.exec(set)?.[1] ?? '');
}

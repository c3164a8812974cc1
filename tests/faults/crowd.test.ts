import { connect, type Socket } from 'node:net';
import { gzipSync } from 'node:zlib';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { ask, post } from './kit/http.ts';
import { newFolder, type Program, start } from './kit/program.ts';
import { faultsIn, jobForm, look, readingIds, readingsForm } from './kit/shop.ts';
import { tell } from './kit/tell.ts';

const BODY_BYTES = 5_000_000;
const sockets: Socket[] = [];
let dataDir: string;
let program: Program;
beforeEach(async () => {
  dataDir = newFolder();
  program = await start({ dataDir, inside: ['instrument'] });
});
afterEach(() => {
  for (const socket of sockets.splice(0)) socket.destroy();
});

async function open(): Promise<Socket> {
  const socket = connect(program.port, '127.0.0.1');
  socket.on('error', () => {});
  sockets.push(socket);
  await new Promise((resolve) => socket.once('connect', resolve));
  return socket;
}

const head = (method: string, path: string, more = '') =>
  `${method} ${path} HTTP/1.1\r\nHost: 127.0.0.1:${program.port}\r\n${more}\r\n`;

test('slow and deaf clients do not keep the others from being answered', async () => {
  expect((await post(program.url, '/jobs', jobForm('S-1'))).status).toBe(303);
  const drips: [Socket, string][] = [];
  for (let i = 0; i < 20; i++) {
    drips.push([await open(), head('GET', '/')]);
    const form = 'Content-Type: application/x-www-form-urlencoded\r\nContent-Length: 100000\r\n';
    const slow = await open();
    slow.write(head('POST', '/jobs', form));
    drips.push([slow, `number=${'x'.repeat(99_000)}`]);
    const deaf = await open();
    deaf.pause();
    for (let k = 0; k < 6; k++) deaf.write(head('GET', '/cover'));
  }
  const timers = drips.map(([socket, text]) => {
    let at = 0;
    return setInterval(() => socket.write(text[at++] ?? ''), 50);
  });
  for (let i = 0; i < 20; i++) {
    const token = `slow-clients-${i}`;
    expect((await ask(`${program.url}/jobs/S-1`)).status).toBe(200);
    expect((await post(program.url, '/jobs/S-1/readings', readingsForm(token, [i]))).status).toBe(303);
  }
  for (const timer of timers) clearInterval(timer);
  const limits = await program.ask<{ headersMs: number; requestMs: number }>({ what: 'limits' });
  expect(limits.headersMs, 'a request that never ends is cut off').toBeGreaterThan(0);
  expect(limits.requestMs).toBeGreaterThan(0);
  expect(limits.requestMs).toBeLessThanOrEqual(60_000);
  tell(
    'Slow and deaf clients',
    '60 at once',
    'the others are answered meanwhile; a request that never ends is cut off',
  );
});

test('200 connections at once are all answered, and all they send is kept', async () => {
  expect((await post(program.url, '/jobs', jobForm('H-1'))).status).toBe(303);
  const paths = [
    '/',
    '/jobs',
    '/cover',
    '/stud',
    '/jobs/1001',
    '/catalogue',
    '/criteria',
    '/api/openapi.json',
  ];
  const pages = await Promise.all(
    Array.from({ length: 200 }, (_, i) => ask(program.url + paths[i % paths.length])),
  );
  expect(pages.map(({ status }) => status)).toEqual(Array(200).fill(200));
  const tokens = Array.from({ length: 200 }, (_, i) => `of-tablet-${i}`);
  const answers = await Promise.all(
    tokens.map((token, i) => post(program.url, '/jobs/H-1/readings', readingsForm(token, [i]))),
  );
  expect(answers.map(({ status }) => status)).toEqual(Array(200).fill(303));
  const ids = look(dataDir, (raw) => raw.prepare('SELECT id FROM reading').pluck().all());
  expect(ids).toEqual(expect.arrayContaining(tokens.flatMap((token) => readingIds(token, [1]))));
  expect(look(dataDir, faultsIn)).toEqual([]);
  expect(program.said().err).toBe('');
  tell('200 connections at once', '200 pages, 200 readings', 'all answered, all kept');
});

/** Sends a large body and then asks for a page on the same connection. */
async function largeThenPage(bytes: readonly Buffer[]): Promise<string> {
  const socket = await open();
  let heard = '';
  socket.setEncoding('utf8').on('data', (text: string) => {
    heard += text;
  });
  const closed = new Promise((resolve) => socket.once('close', resolve));
  for (const part of bytes) socket.write(part);
  socket.write(head('GET', '/health', 'Connection: close\r\n'));
  const limit = setTimeout(() => socket.destroy(), 200_000);
  await closed;
  clearTimeout(limit);
  return heard;
}

test('a body of 5 MB is refused, and the next request on its connection answered', async () => {
  const form = Buffer.from(`number=${'x'.repeat(BODY_BYTES)}`);
  const json = Buffer.from(JSON.stringify({ thread: 'x'.repeat(BODY_BYTES) }));
  const packed = gzipSync(json);
  const said = (type: string, length: number, more = '') =>
    `Content-Type: ${type}\r\nContent-Length: ${length}\r\n${more}`;
  const FORM = 'application/x-www-form-urlencoded';
  const JSON_TYPE = 'application/json';
  const chunk = (body: Buffer) =>
    Buffer.concat([Buffer.from(`${body.length.toString(16)}\r\n`), body, Buffer.from('\r\n0\r\n\r\n')]);
  const LARGE: readonly [string, string, Buffer, RegExp][] = [
    ['a form', head('POST', '/jobs', said(FORM, form.length)), form, /<title>[^<]*Too much to send/],
    ['JSON', head('POST', '/api/thread', said(JSON_TYPE, json.length)), json, /"code":"too-large"/],
    [
      'JSON, packed small',
      head('POST', '/api/thread', said(JSON_TYPE, packed.length, 'Content-Encoding: gzip\r\n')),
      packed,
      /"code":"too-large"/,
    ],
    [
      'JSON of a length not told',
      head('POST', '/api/thread', `Content-Type: ${JSON_TYPE}\r\nTransfer-Encoding: chunked\r\n`),
      chunk(json),
      /"code":"too-large"/,
    ],
  ];
  for (const [what, first, body, shape] of LARGE) {
    const heard = await largeThenPage([Buffer.from(first), body]);
    const answers = heard.split(/(?=HTTP\/1\.1 \d{3} )/);
    expect(answers[0], what).toMatch(/^HTTP\/1\.1 413 /);
    expect(answers[0], what).toMatch(shape);
    expect(answers[0], what).toMatch(/content-security-policy:/i);
    expect(answers[1], `${what}: the next request`).toMatch(/^HTTP\/1\.1 200 /);
  }
  expect(look(dataDir, faultsIn)).toEqual([]);
  tell(
    'Bodies of 5 MB',
    `${LARGE.length} kinds`,
    '413 in the shape of the place; the next request on that connection is answered',
  );
});

import { once } from 'node:events';
import { connect } from 'node:net';
import { text } from 'node:stream/consumers';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bytesOf } from '../../faults/kit/raw.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: false });
});
afterAll(() => program.close());

/** More than a connection holds between two programs of one computer. */
const LARGE = 24 * 1024 * 1024;

/** As a proxy does that passes a form on: everything is sent, then the answer is read. */
async function sentThenRead(port: number, bytes: Buffer): Promise<string> {
  const socket = connect(port, '127.0.0.1');
  socket.pause();
  await once(socket, 'connect');
  await new Promise<void>((resolve, reject) => {
    socket.write(bytes, (error) => (error ? reject(error) : resolve()));
  });
  return text(socket);
}

test.each([
  ['to an address that is none', '/no/such/page', null, 404],
  ['from a page of another site', '/jobs', 'http://elsewhere.example', 403],
])('a large request %s is answered before its connection closes', async (_why, target, origin, status) => {
  const port = Number(new URL(program.url).port);
  const headers: (readonly [string, string])[] = [
    ['Host', `127.0.0.1:${port}`],
    ['Content-Type', 'application/octet-stream'],
  ];
  if (origin !== null) headers.push(['Origin', origin]);
  const answer = await sentThenRead(
    port,
    bytesOf({ method: 'POST', target, headers, body: Buffer.alloc(LARGE) }),
  );
  expect(answer).toMatch(new RegExp(`^HTTP/1\\.1 ${status} `));
  expect(answer).toContain('</html>');
});

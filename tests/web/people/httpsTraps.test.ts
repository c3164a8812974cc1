import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Lan, openLan, PASSWORD, PEOPLE, sessionIn } from '../lan.ts';

const settings = { host: '127.0.0.1', publicUrl: 'https://shop.example' };
let lan: Lan;
beforeAll(async () => {
  lan = await openLan({ settings });
});
afterAll(() => lan.close());

const form = { name: PEOPLE.keeper.name, password: PASSWORD };

test('signing in over http, where the shop is at https, says what is wrong and what to set', async () => {
  const headers = { host: `shop.example:${lan.port}`, origin: `http://shop.example:${lan.port}` };
  const reply = await lan.ask('/sign-in', { form, headers });
  expect([reply.status, sessionIn(reply)]).toEqual([422, null]);
  expect(reply.text).toContain(
    'Signing in works only over https here. Open https://shop.example, or set PUBLIC_URL',
  );
});

test('signing in over https, and at the computer itself over http, works', async () => {
  const proxied = { host: 'shop.example', origin: 'https://shop.example', 'x-forwarded-proto': 'https' };
  const far = await lan.ask('/sign-in', { form, headers: proxied });
  expect([far.status, far.cookies[0]]).toEqual([303, expect.stringContaining('Secure')]);
  const here = { host: `127.0.0.1:${lan.port}`, origin: `http://127.0.0.1:${lan.port}` };
  const near = await lan.ask('/sign-in', { form, headers: here });
  expect([near.status, near.cookies[0]]).toEqual([303, expect.not.stringContaining('Secure')]);
});

test('a proxy that gives requests another name is told of, and nothing is saved', async () => {
  const headers = { host: `127.0.0.1:${lan.port}`, origin: 'https://shop.example' };
  const reply = await lan.ask('/sign-in', { form, headers });
  expect([reply.status, reply.cookies]).toEqual([403, []]);
  expect(reply.text).toContain('Set the proxy in between to pass on the Host header.');
});

test('the sign-in page says the command of a keeper who forgot the password', async () => {
  const page = await lan.ask('/sign-in', { headers: { host: 'shop.example' } });
  expect(page.text).toMatch(/<code>DATA_DIR=\S+ npm run people -- reset NAME<\/code>/);
});

test('the sign-in page tells nobody who comes over the network a folder of this computer', async () => {
  const headers = { host: 'shop.example', 'x-forwarded-for': '192.168.7.9' };
  const page = await lan.ask('/sign-in', { headers });
  expect(page.text).toContain('<code>npm run people -- reset NAME</code>');
  expect(page.text).toContain('Open this page on that computer to see the command with its folder.');
  expect(page.text).not.toContain('DATA_DIR=');
});

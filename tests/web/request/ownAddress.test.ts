import { afterAll, beforeAll, expect, test } from 'vitest';
import { addressAsked } from '../../../src/web/request/ownAddress.ts';
import { bytesOf, sendRaw } from '../../faults/kit/raw.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

test.each([
  ['/jobs?text=a\\b', '/jobs?text=a\\b'],
  ['/', '/'],
  ['//elsewhere.example/x', '/'],
  ['/\\elsewhere.example', '/'],
  ['/\\?x=1', '/'],
  ['http://elsewhere.example/', '/'],
  ['?x', '/'],
])('a page asked by %s has the address %s', (originalUrl, address) => {
  expect(addressAsked({ originalUrl })).toBe(address);
});

test.each(['/\\?x=1', '//?x=1', '/\\elsewhere.example/jobs', '//elsewhere.example/jobs'])(
  'asked by %s the program answers, and leads nowhere else',
  async (target) => {
    const { port, host } = new URL(program.url);
    const answer = await sendRaw(Number(port), bytesOf({ method: 'GET', target, headers: [['Host', host]] }));
    expect([200, 404]).toContain(answer.status);
    expect(answer.body).not.toMatch(/"\/[/\\]/);
  },
);

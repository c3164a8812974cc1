import { afterAll, beforeAll, expect, test } from 'vitest';
import { PAGES } from '../bench/pages.ts';
import { type Served, serve } from './program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

const WITH_SCRIPTS = [
  '/',
  '/jobs',
  '/jobs/1001/measure',
  '/jobs/1001/measure/paste',
  ...Object.values(PAGES),
];

test.each(WITH_SCRIPTS)('what %s shows first waits for no script', async (path) => {
  const { html, status } = await program.get(path);
  expect(status).toBe(200);
  const scripts = html.match(/<script[^>]*>/g) ?? [];
  expect(scripts.length).toBeGreaterThan(0);
  expect(scripts.filter((one) => !/ (defer|async|type="module")(?=[ >/])/.test(one))).toEqual([]);
});

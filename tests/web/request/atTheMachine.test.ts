import { expect, test } from 'vitest';
import { openLan } from '../lan.ts';

test('with PUBLIC_URL others sign in; whoever sits at the machine does not, until somebody has an account', async () => {
  const lan = await openLan({
    settings: { host: '127.0.0.1', publicUrl: 'http://shop.example:4180' },
    people: false,
  });
  const here = { host: `127.0.0.1:${lan.port}` };
  const there = { host: `shop.example:${lan.port}` };
  const sheet = await lan.ask('/jobs/1001/sheet', { headers: here });
  expect(sheet.status).toBe(200);
  expect(sheet.text).toContain('http://shop.example:4180/jobs/1001');
  expect((await lan.ask('/', { headers: here })).text).toContain('Demo shop');
  expect((await lan.ask('/api/thread', { headers: here, json: { thread: 'M10' } })).status).toBe(200);
  for (const path of ['/people', '/tokens/1', '/account']) {
    const asked = await lan.ask(path, { headers: here });
    expect([path, asked.headers.location]).toEqual([path, '/first']);
  }
  expect((await lan.ask('/', { headers: there })).headers.location).toBe('/first');
  // What a proxy adds, a page of another name, and the machine's name in front of a program that listens to all.
  const proxied: readonly Readonly<Record<string, string>>[] = [
    { 'x-forwarded-for': '192.0.2.7' },
    { forwarded: 'for=192.0.2.7' },
    { via: '1.1 front' },
    { 'x-real-ip': '192.0.2.7' },
    { referer: 'http://shop.example:4180/jobs' },
    { referer: 'nonsense' },
  ];
  for (const added of proxied) {
    const asked = await lan.ask('/jobs', { headers: { ...here, ...added } });
    expect([asked.status, asked.headers.location], JSON.stringify(added)).toEqual([303, '/first']);
  }
  await lan.close();

  const kept = await openLan({ settings: { host: '127.0.0.1', publicUrl: 'http://shop.example:4180' } });
  const jobs = await kept.ask('/jobs', { headers: { host: `127.0.0.1:${kept.port}` } });
  expect(jobs.status).toBe(401);
  expect(jobs.text).not.toContain('Demo shop');
  await kept.close();

  const open = await openLan({ settings: { host: '0.0.0.0' }, people: false });
  const named = await open.ask('/jobs', { headers: { host: `127.0.0.1:${open.port}` } });
  expect([named.status, named.headers.location]).toEqual([303, '/first']);
  await open.close();
});

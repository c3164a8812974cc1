import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { createServer, request, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Job } from '../../../shared/words/job.ts';
import { openShop, type Shop } from '../../../src/records/database/database.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { fileOf } from '../../../src/records/photos/files.ts';
import { photosOf } from '../../../src/records/photos/photos.ts';
import { readSettings } from '../../../src/settings.ts';
import { app } from '../../../src/web/app.ts';
import { jpeg, jpegOf13Mb, jpegOnItsSide } from '../../records/photos/pictures.ts';
import { measuredJob } from '../../records/samples.ts';

let dataDir: string;
let shop: Shop;
let server: Server;
let job: Job;
let url: string;
beforeAll(async () => {
  dataDir = mkdtempSync(join(tmpdir(), 'coverwright-test-'));
  shop = openShop({ dataDir });
  job = await measuredJob(shop.db);
  const settings = readSettings({ DATA_DIR: dataDir, DEMO: '0', PORT: '0' });
  server = createServer(app({ shop, settings, now: () => new Date() }));
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  url = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
});
afterAll(async () => {
  server.closeAllConnections();
  await new Promise((done) => server.close(done));
  await shop.close();
  rmSync(dataDir, { recursive: true });
});

const photos = () => photosOf(shop.db, job.id, 999);
const waiting = () => readdirSync(join(dataDir, 'files', 'incoming'));

function form(changes: Record<string, string> = {}): FormData {
  const fields = { in: 'look', place: 'item:welds', note: '', who: 'CD', token: crypto.randomUUID() };
  const body = new FormData();
  for (const [name, value] of Object.entries({ ...fields, ...changes })) body.set(name, value);
  return body;
}

function send(bytes: Buffer | null, changes: Record<string, string> = {}, name = 'photo.jpg') {
  const body = form(changes);
  if (bytes !== null) body.set('file', new Blob([new Uint8Array(bytes)], { type: 'image/jpeg' }), name);
  return fetch(`${url}/jobs/${job.number}/photos`, { method: 'POST', body, redirect: 'manual' });
}

describe('a photo sent with the form', () => {
  test('is kept, shown in the job and on the sheet, and in no revision before it', async () => {
    const before = (await getJob(shop.db, job.id))!.revision;
    const answer = await send(await jpeg(80, 50), { note: 'seam <b>by</b> "stud 2"' });
    expect([answer.status, answer.headers.get('location')]).toEqual([303, `/jobs/${job.number}#look`]);
    const [photo] = (await photos()).slice(-1);
    expect(photo).toMatchObject({
      place: { spot: 'item', item: 'welds' },
      kind: 'jpeg',
      width: 80,
      height: 50,
    });
    expect(readFileSync(join(dataDir, fileOf(photo!.hash))).equals(await jpeg(80, 50))).toBe(true);
    expect(waiting()).toEqual([]);

    const page = await (await fetch(`${url}/jobs/${job.number}`)).text();
    expect(page).toContain(`<img src="/photos/${photo!.hash}-small.jpg"`);
    expect(page).toContain('seam &lt;b>by&lt;/b> &quot;stud 2&quot;');
    const asItWas = await (await fetch(`${url}/jobs/${job.number}?revision=${before}`)).text();
    expect(asItWas).not.toContain(photo!.hash);
    const sheet = await (await fetch(`${url}/jobs/${job.number}/sheet`)).text();
    expect(sheet).toContain('Welds (seam &lt;b>by&lt;/b> &quot;stud 2&quot;), CD');
  });

  test.each([
    ['station:45/110', {}, { spot: 'station', angleDeg: 45, radiusMm: 110 }],
    ['own', { angle: '30', radius: '4 in' }, { spot: 'station', angleDeg: 30, radiusMm: 101.6 }],
    ['job', {}, { spot: 'job' }],
  ])('may be of %s', async (place, more, expected) => {
    const answer = await send(await jpeg(), { place, in: 'measure', ...more });
    expect([answer.status, answer.headers.get('location')]).toEqual([303, `/jobs/${job.number}#measure`]);
    expect((await photos()).at(-1)?.place).toEqual(expected);
  });

  test('is there once when one form sends it twice', async () => {
    const token = crypto.randomUUID();
    const before = (await photos()).length;
    for (let i = 0; i < 2; i++) expect((await send(await jpeg(33, 44), { token })).status).toBe(303);
    expect((await photos()).length).toBe(before + 1);
  });

  test.each([
    ['of 13 MB', jpegOf13Mb, 'The photo has more than 12 MB. Send it smaller.'],
    ['that is none', async () => null, 'No photo was chosen. Choose one, or take one.'],
    ['of no bytes', async () => Buffer.alloc(0), 'No photo was chosen. Choose one, or take one.'],
    [
      'that is a script by another name',
      async () => Buffer.from('<script>alert(1)</script>'),
      'This file is not a photo that can be read.',
    ],
  ])('is refused beside its box, with the note kept, where it is %s', async (_, make, sentence) => {
    const before = (await photos()).length;
    const answer = await send(await make(), { note: 'typed already' });
    expect(answer.status).toBe(422);
    const page = (await answer.text()).replaceAll('\u00a0', ' ');
    expect(page).toContain(sentence);
    expect(page).toContain('value="typed already"');
    expect((await photos()).length).toBe(before);
    expect(waiting()).toEqual([]);
  });

  test.each([
    ['place', { place: 'item:radio' }, 'Choose from the list what the photo shows.'],
    ['clock position', { place: 'own', radius: '100' }, 'The angle from stud 1 is empty. Enter it.'],
    ['radius', { place: 'own', angle: '3', radius: 'wide' }, 'wide'],
    ['initials', { who: '' }, 'Enter your initials, 1 to 8 characters.'],
  ])('is refused without a usable %s, and its file is not kept', async (_, changes, sentence) => {
    const bytes = await jpeg(71, 19);
    const answer = await send(bytes, changes);
    expect(answer.status).toBe(422);
    expect((await answer.text()).replaceAll('\u00a0', ' ')).toContain(sentence);
    expect(waiting()).toEqual([]);
  });

  test.each([
    '../../../etc/cron.d/x.jpg',
    '<script>alert(1)</script>.jpg',
    'a\r\nSet-Cookie: b.jpg',
    '.htaccess',
  ])('loses its file name %j, which goes nowhere', async (name) => {
    expect((await send(await jpeg(), {}, name)).status).toBe(303);
    const page = await (await fetch(`${url}/jobs/${job.number}`)).text();
    expect(page).not.toContain('alert(1)');
    const files = readdirSync(join(dataDir, 'files'), { recursive: true, withFileTypes: true });
    for (const one of files) expect(one.name).toMatch(/^([0-9a-f]{2}|[0-9a-f]{64}|incoming)$/);
  });

  test('leaves nothing when it is cut off on the way, and the program goes on', async () => {
    const before = (await photos()).length;
    const cut = request(`${url}/jobs/${job.number}/photos`, {
      method: 'POST',
      headers: { 'Content-Type': 'multipart/form-data; boundary=b', 'Content-Length': 900_000 },
    });
    cut.on('error', () => {});
    cut.write('--b\r\nContent-Disposition: form-data; name="file"; filename="a.jpg"\r\n\r\n');
    cut.write((await jpeg(300, 300)).subarray(0, 2000));
    await expect.poll(() => waiting().length).toBe(1);
    cut.destroy();
    await expect.poll(() => waiting()).toEqual([]);
    expect((await photos()).length).toBe(before);
    expect((await fetch(url)).status).toBe(200);
  });

  test.each([
    [
      'a form without its end',
      'multipart/form-data; boundary=b',
      '--b\r\nContent-Disposition: form-data; name="file"; filename="a"\r\n\r\nabc',
    ],
    ['a form of another kind', 'application/x-www-form-urlencoded', 'who=CD'],
    ['a form without a boundary', 'multipart/form-data', 'abc'],
  ])('%s is refused', async (_, type, body) => {
    const answer = await fetch(`${url}/jobs/${job.number}/photos`, {
      method: 'POST',
      headers: { 'Content-Type': type },
      body,
    });
    expect(answer.status).toBe(400);
    expect((await answer.text()).replaceAll('\u00a0', ' ')).toContain('can’t be read');
    expect(waiting()).toEqual([]);
  });

  test('is answered so where its job is not there', async () => {
    const answer = await fetch(`${url}/jobs/none/photos`, { method: 'POST', body: form() });
    expect(answer.status).toBe(404);
  });
});

describe('a picture handed out', () => {
  test('is a JPEG and can be nothing else, under a name of ours, and may be kept for good', async () => {
    await send(await jpegOnItsSide());
    const { hash } = (await photos()).at(-1)!;
    for (const [end, width] of [
      ['.jpg', 40],
      ['-small.jpg', 40],
    ] as const) {
      const answer = await fetch(`${url}/photos/${hash}${end}`);
      expect(answer.status).toBe(200);
      const header = (name: string) => answer.headers.get(name);
      expect(header('content-type')).toBe('image/jpeg');
      expect(header('x-content-type-options')).toBe('nosniff');
      expect(header('content-security-policy')).toBe("default-src 'none'; sandbox");
      expect(header('content-disposition')).toBe(
        `inline; filename="photo-${hash.slice(0, 12)}${end === '.jpg' ? '' : '-small'}.jpg"`,
      );
      expect(header('cache-control')).toBe('private, max-age=31536000, immutable');
      const bytes = Buffer.from(await answer.arrayBuffer());
      expect((await sharp(bytes).metadata()).width).toBe(width);
      expect(bytes.includes('nobody at all')).toBe(false);
    }
  });

  test.each([
    `${'ab'.repeat(32)}.jpg`,
    '..%2f..%2fcoverwright.sqlite',
    '%2e%2e/%2e%2e/coverwright.sqlite',
    'coverwright.sqlite',
  ])('is not to be had at %s', async (name) => {
    expect((await fetch(`${url}/photos/${name}`)).status).toBe(404);
  });
});

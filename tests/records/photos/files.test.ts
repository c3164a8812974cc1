import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { sql } from 'kysely';
import sharp from 'sharp';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { NewPhoto } from '../../../shared/words/photo.ts';
import type { Shop } from '../../../src/records/database/database.ts';
import { historyOf } from '../../../src/records/jobs/history.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { reviseJob } from '../../../src/records/jobs/reviseJob.ts';
import { fileOf, keep, receive, TooLarge } from '../../../src/records/photos/files.ts';
import { addPhoto, isPhoto, photosOf } from '../../../src/records/photos/photos.ts';
import { copyOf, lookAtPicture } from '../../../src/records/photos/picture.ts';
import { tell } from '../../faults/kit/tell.ts';
import { errorOf, refusalOf } from '../refusals.ts';
import { as, decision, measuredJob, signedJob } from '../samples.ts';
import { onEachDatabase } from '../shops.ts';
import { jpeg, jpegOnItsSide, png, stripes, webp } from './pictures.ts';

let dataDir: string;
beforeEach(() => {
  dataDir = mkdtempSync(join(tmpdir(), 'coverwright-test-'));
});
afterEach(() => rmSync(dataDir, { recursive: true }));

const arrive = (bytes: Buffer) => receive(dataDir, Readable.from([bytes]), 1_000_000);
const look = async (bytes: Buffer) => lookAtPicture(dataDir, await arrive(bytes));
const filesIn = (folder: string): string[] =>
  existsSync(join(dataDir, folder))
    ? readdirSync(join(dataDir, folder), { recursive: true, withFileTypes: true })
        .filter((one) => one.isFile())
        .map((one) => one.name)
    : [];

describe('a file', () => {
  test('a file is named by its content, for its owner alone, and sent twice is the same file', async () => {
    const bytes = await jpeg();
    const hash = createHash('sha256').update(bytes).digest('hex');
    for (let i = 0; i < 2; i++) await keep(dataDir, await arrive(bytes));
    expect(filesIn('files')).toEqual([hash]);
    const place = join(dataDir, 'files', hash.slice(0, 2), hash);
    expect(join(dataDir, fileOf(hash))).toBe(place);
    expect(readFileSync(place).equals(bytes)).toBe(true);
    expect(statSync(place).mode & 0o777).toBe(0o600);
  });

  test('a file damaged on the disk is repaired by the same content', async () => {
    const bytes = await jpeg();
    const arrived = await arrive(bytes);
    await keep(dataDir, arrived);
    writeFileSync(join(dataDir, fileOf(arrived.hash)), 'damaged');
    await keep(dataDir, await arrive(bytes));
    expect(readFileSync(join(dataDir, fileOf(arrived.hash))).equals(bytes)).toBe(true);
  });

  test('a file beyond the limit, or broken off, leaves nothing behind', async () => {
    expect(await errorOf(receive(dataDir, Readable.from([Buffer.alloc(60), Buffer.alloc(60)]), 100))).toEqual(
      expect.any(TooLarge),
    );
    const breaking = Readable.from(
      (async function* () {
        yield Buffer.alloc(10);
        throw new Error('the wire was cut');
      })(),
    );
    expect(await errorOf(receive(dataDir, breaking, 100))).toMatchObject({ message: 'the wire was cut' });
    expect(filesIn('files')).toEqual([]);
  });

  test.each(['../../etc/passwd', 'a'.repeat(63), `${'a'.repeat(64)}/..`, 'A'.repeat(64), ''])(
    'a file is never looked for under a name that is no hash: %j',
    (name) => {
      expect(() => fileOf(name)).toThrow('A file is named by its SHA-256 and by nothing else.');
    },
  );
});

describe('a picture is known by its content', () => {
  test.each([
    ['jpeg', jpeg],
    ['png', png],
    ['webp', webp],
  ])('a picture is known by its content: %s', async (kind, make) => {
    expect(await look(await make())).toEqual({ kind, width: 60, height: 40 });
  });

  test('a picture is shown upright as a JPEG without location or camera, and the file stays as sent', async () => {
    const bytes = await jpegOnItsSide();
    expect(bytes.includes('nobody at all')).toBe(true);
    const arrived = await arrive(bytes);
    expect(await lookAtPicture(dataDir, arrived)).toEqual({ kind: 'jpeg', width: 40, height: 60 });
    await keep(dataDir, arrived);
    for (const size of ['shown', 'small'] as const) {
      const shown = readFileSync(await copyOf(dataDir, arrived.hash, size));
      expect(shown.includes('nobody at all')).toBe(false);
      const { format, width, height, exif, orientation } = await sharp(shown).metadata();
      expect({ format, width, height, exif, orientation }).toEqual({
        format: 'jpeg',
        width: 40,
        height: 60,
        exif: undefined,
        orientation: undefined,
      });
    }
    expect(readFileSync(join(dataDir, fileOf(arrived.hash))).equals(bytes)).toBe(true);
  });

  test('copies of a picture that were lost are made again', async () => {
    const arrived = await arrive(await jpeg());
    await lookAtPicture(dataDir, arrived);
    await keep(dataDir, arrived);
    rmSync(join(dataDir, 'files-shown'), { recursive: true });
    expect((await sharp(await copyOf(dataDir, arrived.hash, 'small')).metadata()).width).toBe(60);
  });

  const end = (bytes: Buffer, tail: string | Buffer) => Buffer.concat([bytes, Buffer.from(tail)]);
  test.each<[string, () => Promise<Buffer>]>([
    [
      'an SVG',
      async () => Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>'),
    ],
    ['a page', async () => Buffer.from('<!doctype html><script>alert(1)</script>')],
    ['a GIF', () => stripes().gif().toBuffer()],
    ['a TIFF', () => stripes().tiff().toBuffer()],
    ['nothing but the first bytes', async () => (await jpeg()).subarray(0, 3)],
    ['half a JPEG', async () => (await jpeg(300, 200)).subarray(0, 900)],
    ['half a PNG', async () => (await png()).subarray(0, 90)],
    ['a JPEG that is a page too', async () => end(await jpeg(), '<html><script>alert(1)</script>')],
    ['a JPEG with a page in its comment', async () => commented(await jpeg(), '<script>alert(1)</script>')],
    [
      'a JPEG that is an archive too',
      async () => end(await jpeg(), Buffer.concat([Buffer.from('PK\x05\x06'), Buffer.alloc(18)])),
    ],
    ['a JPEG that is a document too', async () => commented(await jpeg(), '%PDF-1.7')],
    ['a PNG with something after its end', async () => end(await png(), 'more')],
    ['a WebP with something after its end', async () => end(await webp(), 'more')],
    [
      'a JPEG head on other bytes',
      async () => Buffer.concat([Buffer.from([0xff, 0xd8, 0xff, 0xe0]), Buffer.alloc(4000, 65)]),
    ],
  ])('a file that is %s is refused', async (_, make) => {
    expect(await refusalOf(look(await make()))).toEqual({
      code: 'no-picture',
      path: 'file',
      sentence:
        'This file is not a photo that can be read. Send a JPEG, PNG or WebP straight from the camera.',
    });
    expect(filesIn('files-shown')).toEqual([]);
  });

  test('a JPEG with a second picture behind it, as cameras write them, is a photo', async () => {
    expect(await look(end(await jpeg(), await jpeg(20, 20)))).toMatchObject({ kind: 'jpeg', width: 60 });
  });

  test('a small file that would unfold to an enormous picture is refused by its size', async () => {
    const bomb = await sharp({ create: { width: 16_000, height: 5000, channels: 3, background: '#fff' } })
      .png({ compressionLevel: 9 })
      .toBuffer();
    expect(await refusalOf(look(bomb))).toMatchObject({ code: 'too-many-pixels' });
  });

  test('a picture that can only be decoded whole is refused from fewer pixels on, and says why', async () => {
    const flat = (width: number) =>
      sharp({ create: { width, height: 8000, channels: 3, background: '#888' } });
    const interlaced = await flat(8000).png({ progressive: true }).toBuffer();
    expect((await refusalOf(look(interlaced))).sentence).toBe(
      'The photo has 8000 × 8000 pixels and is progressive or interlaced; at most 55 million pixels are allowed so. Send a plain JPEG, or a smaller one.',
    );
    const whole = { progressive: true, chromaSubsampling: '4:4:4' } as const;
    expect((await refusalOf(look(await flat(4000).jpeg(whole).toBuffer()))).sentence).toContain(
      'at most 27 million',
    );
    expect(await look(await flat(4000).jpeg({ progressive: true }).toBuffer())).toMatchObject({
      width: 4000,
    });
    tell(
      'Pictures that would take all the memory',
      '2 interlaced or progressive',
      'refused by their pixels before they are unfolded, with a sentence',
    );
  });
});

/** Puts a comment into a JPEG, behind its first two bytes. */
function commented(bytes: Buffer, comment: string): Buffer {
  const length = Buffer.alloc(2);
  length.writeUInt16BE(comment.length + 2);
  return Buffer.concat([
    bytes.subarray(0, 2),
    Buffer.from([0xff, 0xfe]),
    length,
    Buffer.from(comment),
    bytes.subarray(2),
  ]);
}

onEachDatabase((engine) => {
  describe('a photo of a job', () => {
    let shop: Shop;
    beforeEach(async () => {
      shop = await engine.openEmpty({ dataDir });
    });
    afterEach(() => shop.close());

    const photo = (id: string, changes: Partial<NewPhoto> = {}): NewPhoto => ({
      id,
      place: { spot: 'item', item: 'welds' },
      hash: 'ab'.repeat(32),
      kind: 'jpeg',
      bytes: 1234,
      width: 60,
      height: 40,
      note: ' the seam by stud 2 ',
      ...changes,
    });
    const add = (jobId: number, one: NewPhoto, ctx = as('CD'), keepFile = async () => {}) =>
      addPhoto(shop.db, ctx, { jobId, photo: one, keepFile });

    test('a photo is a revision of its job, and every revision has the photos it had', async () => {
      const job = await measuredJob(shop.db);
      await add(job.id, photo('p1'));
      await add(job.id, photo('p2', { place: { spot: 'station', angleDeg: 45, radiusMm: 110 } }));
      await add(job.id, photo('p3', { place: { spot: 'job' }, note: '' }));
      const now = await getJob(shop.db, job.id);
      expect(now?.revision).toBe(job.revision + 3);
      expect((await historyOf(shop.db, job.id)).slice(-3).map((line) => [line.what, line.who])).toEqual([
        ['photo', 'CD'],
        ['photo', 'CD'],
        ['photo', 'CD'],
      ]);
      const ids = async (revision: number) =>
        (await photosOf(shop.db, job.id, revision)).map((one) => one.id);
      expect(await ids(job.revision)).toEqual([]);
      expect(await ids(job.revision + 2)).toEqual(['p1', 'p2']);
      expect(await photosOf(shop.db, job.id, job.revision + 1)).toEqual([
        {
          ...photo('p1', { note: 'the seam by stud 2' }),
          revision: job.revision + 1,
          who: 'CD',
          at: expect.stringMatching(/^2026-.*Z$/),
        },
      ]);
      expect(await isPhoto(shop.db, 'ab'.repeat(32))).toBe(true);
      expect(await isPhoto(shop.db, 'cd'.repeat(32))).toBe(false);
    });

    test('a photo sent twice is there once, and another under the same id is refused', async () => {
      const job = await measuredJob(shop.db);
      expect(await add(job.id, photo('p1'))).toEqual({ added: true });
      expect(await add(job.id, photo('p1'))).toEqual({ added: false });
      expect((await getJob(shop.db, job.id))?.revision).toBe(job.revision + 1);
      expect(await refusalOf(add(job.id, photo('p1', { hash: 'cd'.repeat(32) })))).toMatchObject({
        code: 'photo-differs',
      });
      const other = await measuredJob(shop.db);
      expect(await refusalOf(add(other.id, photo('p1')))).toMatchObject({ code: 'photo-differs' });
    });

    test('a photo makes no decision stale and none outdated', async () => {
      const job = await measuredJob(shop.db);
      await add(job.id, photo('p1'));
      const decided = await reviseJob(shop.db, as('AB'), {
        jobId: job.id,
        fromRevision: job.revision,
        what: 'decision',
        body: decision(job.revision),
      });
      await add(job.id, photo('p2'));
      expect((await getJob(shop.db, job.id))?.outcome).toBe(decided.outcome);
      expect(decided.outcome).toBe('face');
    });

    test('a photo of a signed job is an amendment, and needs a reason', async () => {
      const job = await signedJob(shop.db);
      let kept = 0;
      const keeping = async () => {
        kept++;
      };
      expect(await refusalOf(add(job.id, photo('p1'), as('CD'), keeping))).toMatchObject({
        code: 'why-needed',
      });
      expect(kept).toBe(0);
      await add(job.id, photo('p1'), as('CD', 'it came back'), keeping);
      expect(kept).toBe(1);
      expect((await getJob(shop.db, job.id))?.stage).toBe('to-sign');
    });

    test('a photo whose file cannot be stored is not recorded', async () => {
      const job = await measuredJob(shop.db);
      const full = async () => {
        throw new Error('the disk is full');
      };
      expect(await errorOf(add(job.id, photo('p1'), as('CD'), full))).toMatchObject({
        message: 'the disk is full',
      });
      expect(await photosOf(shop.db, job.id, 99)).toEqual([]);
      expect((await getJob(shop.db, job.id))?.revision).toBe(job.revision);
    });

    test.each([
      ['nobody', photo('p'), as(' ')],
      ['an id of another shape', photo('../p'), as('CD')],
      ['a name that is no hash', photo('p', { hash: '../../etc/passwd' }), as('CD')],
      [
        'a place beyond a turn',
        photo('p', { place: { spot: 'station', angleDeg: 400, radiusMm: 1 } }),
        as('CD'),
      ],
      ['a radius of nothing', photo('p', { place: { spot: 'station', angleDeg: 4, radiusMm: 0 } }), as('CD')],
      [
        'a thing nobody looks at',
        photo('p', { place: { spot: 'item', item: 'radio' as 'welds' } }),
        as('CD'),
      ],
      ['a note without end', photo('p', { note: 'x'.repeat(501) }), as('CD')],
    ])('a photo with %s is refused', async (_, one, ctx) => {
      const job = await measuredJob(shop.db);
      await refusalOf(add(job.id, one, ctx));
      expect(await photosOf(shop.db, job.id, 99)).toEqual([]);
    });

    const AGAIN =
      "INTO photo SELECT id, job_id, revision, spot, angle_deg, radius_mm, item, hash, kind, bytes, width, height, 'another', who, at FROM photo WHERE true";
    test.each([
      "UPDATE photo SET note = 'another'",
      'DELETE FROM photo',
      `INSERT ${AGAIN} ON CONFLICT (id) DO UPDATE SET note = 'another'`,
      engine.name === 'SQLite' ? `INSERT OR REPLACE ${AGAIN}` : 'TRUNCATE photo',
      "INSERT INTO photo SELECT 'n', job_id, revision + 40, spot, angle_deg, radius_mm, item, hash, kind, bytes, width, height, note, who, at FROM photo",
    ])('the database refuses %s', async (statement) => {
      const job = await measuredJob(shop.db);
      await add(job.id, photo('p1'));
      const before = await photosOf(shop.db, job.id, 99);
      expect(await errorOf(sql.raw(statement).execute(shop.db))).toMatchObject({
        code: expect.stringMatching(engine.name === 'SQLite' ? /^SQLITE_CONSTRAINT/ : /^23/),
      });
      expect(await photosOf(shop.db, job.id, 99)).toEqual(before);
    });
  });
});

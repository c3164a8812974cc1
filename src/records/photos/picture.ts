import { existsSync } from 'node:fs';
import { readFile, rename, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { PHOTO_KINDS, type PhotoKind } from '../../../shared/words/photo.ts';
import { makeFolder } from '../database/database.ts';
import { refuse } from '../database/errors.ts';
import { type Arrived, fileOf, flush } from './files.ts';

const MOST_PIXELS = 64_000_000;
/** Of a picture that can only be decoded whole: with the program itself, under 350 MB of memory. */
const MOST_HELD_BYTES = 180_000_000;
const SHOWN_PIXELS = 2400;
const SMALL_PIXELS = 320;

export interface Picture {
  readonly kind: PhotoKind;
  /** Size turned upright. */
  readonly width: number;
  readonly height: number;
}

export type CopySize = 'shown' | 'small';

/** What a file of this kind begins with. */
const BEGINS: Readonly<Record<PhotoKind, (bytes: Buffer) => boolean>> = {
  jpeg: (b) => b[0] === 0xff && b[1] === 0xd8 && b[2] === 0xff,
  png: (b) => b.subarray(0, 8).equals(Buffer.from('\x89PNG\r\n\x1a\n', 'latin1')),
  webp: (b) => b.toString('latin1', 0, 4) === 'RIFF' && b.toString('latin1', 8, 12) === 'WEBP',
};

let loaded: ReturnType<typeof load> | null = null;

/** The decoder comes with the first picture, so that a program without any starts sooner. */
function decoder(): ReturnType<typeof load> {
  loaded ??= load();
  return loaded;
}

async function load() {
  const { default: sharp } = await import('sharp');
  // Of all formats the decoder knows only those of cameras are allowed; SVG and others are blocked.
  sharp.block({ operation: ['VipsForeignLoad'] });
  sharp.unblock({ operation: ['VipsForeignLoadJpeg', 'VipsForeignLoadPng', 'VipsForeignLoadWebp'] });
  sharp.cache(false);
  sharp.concurrency(1);
  return sharp;
}

/** Signs of a page, a script or a document hidden in a picture. */
const HIDDEN = /<script|<iframe|<!doctype|<!entity|<\?php|<svg[\s>][\t-~]{8}|<html[\s>]|%PDF-\d|javascript:/i;
/** Ends a ZIP archive, which can be hidden behind a picture because archives are read from their end. */
const ARCHIVE_END = Buffer.from('PK\x05\x06', 'latin1');
const LONGEST_ARCHIVE_END = 66_000;

/**
 * Reads a picture from its first byte to its last and makes the copies that are shown: upright, without place, camera
 * or anything else that is no picture. The file itself is kept as it was sent and never handed out. Throws Refusal.
 */
export async function lookAtPicture(dataDir: string, arrived: Arrived): Promise<Picture> {
  const bytes = await readFile(arrived.path);
  const kind = PHOTO_KINDS.find((one) => BEGINS[one](bytes));
  if (kind === undefined || endsElsewhere(kind, bytes) || hidesSomething(bytes)) throw noPicture();
  const sharp = await decoder();
  try {
    const found = await sharp(bytes, { limitInputPixels: false }).metadata();
    const { width, height } = found;
    if (found.format !== kind) throw noPicture();
    if (width * height > MOST_PIXELS) throw tooManyPixels(width, height);
    if (width * height * heldBytesPerPixel(found) > MOST_HELD_BYTES) throw heldWhole(found);
    const size = await makeCopies(dataDir, arrived.hash, bytes);
    return { kind, ...size };
  } catch (error) {
    if (error instanceof Error && error.name === 'Refusal') throw error;
    throw noPicture();
  }
}

/** The copy to be handed out; made anew where it is missing. */
export async function copyOf(dataDir: string, hash: string, size: CopySize): Promise<string> {
  const path = copyPath(dataDir, hash, size);
  if (!existsSync(path)) await makeCopies(dataDir, hash, await readFile(join(dataDir, fileOf(hash))));
  return path;
}

/** Copies can be made anew at any time, so they lie beside the files and belong to no backup. */
function copyPath(dataDir: string, hash: string, size: CopySize): string {
  return join(dataDir, 'files-shown', hash.slice(0, 2), `${hash}-${size}.jpg`);
}

/** Two large pictures at once would need twice the memory: one waits for the other. */
let working: Promise<unknown> = Promise.resolve();

async function makeCopies(dataDir: string, hash: string, bytes: Buffer) {
  const mine = working.then(
    () => copies(dataDir, hash, bytes),
    () => copies(dataDir, hash, bytes),
  );
  working = mine;
  return mine;
}

async function copies(dataDir: string, hash: string, bytes: Buffer) {
  const sharp = await decoder();
  const upright = sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn: 'error' }).autoOrient();
  const { data, info } = await upright
    .clone()
    .flatten({ background: '#fff' })
    .resize({ width: SHOWN_PIXELS, height: SHOWN_PIXELS, fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality: 82 })
    .toBuffer({ resolveWithObject: true });
  const small = await sharp(data)
    .resize({ width: SMALL_PIXELS, height: SMALL_PIXELS, fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality: 74 })
    .toBuffer();
  await put(copyPath(dataDir, hash, 'shown'), data);
  await put(copyPath(dataDir, hash, 'small'), small);
  const { autoOrient } = await sharp(bytes).metadata();
  return { width: autoOrient.width ?? info.width, height: autoOrient.height ?? info.height };
}

async function put(path: string, bytes: Buffer): Promise<void> {
  makeFolder(dirname(path));
  const unfinished = `${path}.${process.pid}.unfinished`;
  try {
    await writeFile(unfinished, bytes, { mode: 0o600 });
    await flush(unfinished);
    await rename(unfinished, path);
  } catch (error) {
    await rm(unfinished, { force: true });
    throw error;
  }
}

/**
 * Bytes that each pixel takes while the picture is decoded, where it has to be held whole: an interlaced PNG its
 * samples, a progressive JPEG two bytes for each coefficient (ITU-T T.81, G.1: a component's scans come one after
 * another). 0 where it is read from top to bottom.
 */
function heldBytesPerPixel(found: import('sharp').Metadata): number {
  if (found.isProgressive !== true) return 0;
  if (found.format !== 'jpeg') return found.channels * (found.depth === 'uchar' ? 1 : 2);
  const color = { '4:4:4': 2, '4:2:2': 1, '4:2:0': 0.5 }[found.chromaSubsampling ?? ''] ?? 2;
  return found.channels === 1 ? 2 : 2 * (found.channels - 2 + color);
}

/** A PNG and a WebP say where they end; cameras hang a second picture or a clip on a JPEG, which is no fault. */
function endsElsewhere(kind: PhotoKind, bytes: Buffer): boolean {
  if (kind === 'png') return bytes.toString('latin1', bytes.length - 8, bytes.length - 4) !== 'IEND';
  if (kind === 'webp') {
    const said = bytes.readUInt32LE(4) + 8;
    return bytes.length !== said + (said % 2);
  }
  return false;
}

function hidesSomething(bytes: Buffer): boolean {
  return (
    HIDDEN.test(bytes.toString('latin1')) ||
    bytes.subarray(Math.max(0, bytes.length - LONGEST_ARCHIVE_END)).includes(ARCHIVE_END)
  );
}

function noPicture() {
  return refuse(
    'no-picture',
    'file',
    'This file is not a photo that can be read. Send a JPEG, PNG or WebP straight from the camera.',
  );
}

function tooManyPixels(width: number, height: number) {
  return refuse(
    'too-many-pixels',
    'file',
    `The photo has ${width} × ${height} pixels; at most ${MOST_PIXELS / 1e6} million are allowed. Send a smaller one.`,
  );
}

function heldWhole(found: import('sharp').Metadata) {
  const most = Math.floor(MOST_HELD_BYTES / heldBytesPerPixel(found) / 1e6);
  return refuse(
    'too-many-pixels',
    'file',
    `The photo has ${found.width} × ${found.height} pixels and is progressive or interlaced; at most ${most} million pixels are allowed so. Send a plain JPEG, or a smaller one.`,
  );
}

import { readFile, rename, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { makeFolder } from '../database/database.ts';
import { refuse } from '../database/errors.ts';
import { flush } from './files.ts';

const MOST_PIXELS = 64_000_000;
/** Of a picture that can only be decoded whole: its process then takes under 350 MB of memory. */
const MOST_HELD_BYTES = 165_000_000;
const SHOWN_PIXELS = 2400;
const SMALL_PIXELS = 320;

export type CopySize = 'shown' | 'small';

/** What is asked of the process that decodes: to look at a picture and make its copies, or only to make them. */
export interface ToDecode {
  readonly dataDir: string;
  readonly hash: string;
  readonly path: string;
  /** What its first bytes say it is; null where it was looked at before. */
  readonly kind: string | null;
}

/** Size turned upright. */
export interface Decoded {
  readonly width: number;
  readonly height: number;
}

/** Decodes a picture and makes the copies that are shown. Throws a Refusal of one that is too large. */
export async function decode({ dataDir, hash, path, kind }: ToDecode): Promise<Decoded> {
  const bytes = await readFile(path);
  if (kind !== null) {
    const sharp = await decoder();
    const found = await sharp(bytes, { limitInputPixels: false }).metadata();
    const { width, height } = found;
    if (found.format !== kind) throw new Error(`It is ${found.format}, not ${kind}.`);
    if (width * height > MOST_PIXELS) throw tooManyPixels(width, height);
    if (width * height * heldBytesPerPixel(found) > MOST_HELD_BYTES) throw heldWhole(found);
  }
  return copies(dataDir, hash, bytes);
}

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

/** Copies can be made anew at any time, so they lie beside the files and belong to no backup. */
export function copyPath(dataDir: string, hash: string, size: CopySize): string {
  return join(dataDir, 'files-shown', hash.slice(0, 2), `${hash}-${size}.jpg`);
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

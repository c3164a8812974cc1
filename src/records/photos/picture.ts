import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { PHOTO_KINDS, type PhotoKind } from '../../../shared/words/photo.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import { refuse } from '../database/errors.ts';
import { decodeApart } from './decodeApart.ts';
import { type CopySize, copyPath } from './decoding.ts';
import { type Arrived, fileOf } from './files.ts';

export interface Picture {
  readonly kind: PhotoKind;
  /** Size turned upright. */
  readonly width: number;
  readonly height: number;
}

/** What a file of this kind begins with. */
const BEGINS: Readonly<Record<PhotoKind, (bytes: Buffer) => boolean>> = {
  jpeg: (b) => b[0] === 0xff && b[1] === 0xd8 && b[2] === 0xff,
  png: (b) => b.subarray(0, 8).equals(Buffer.from('\x89PNG\r\n\x1a\n', 'latin1')),
  webp: (b) => b.toString('latin1', 0, 4) === 'RIFF' && b.toString('latin1', 8, 12) === 'WEBP',
};

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
  try {
    const { hash, path } = arrived;
    return { kind, ...(await decodeApart({ dataDir, hash, path, kind })) };
  } catch (error) {
    if (error instanceof Refusal) throw error;
    throw noPicture();
  }
}

/** The copy to be handed out; made anew where it is missing. */
export async function copyOf(dataDir: string, hash: string, size: CopySize): Promise<string> {
  const path = copyPath(dataDir, hash, size);
  if (!existsSync(path)) await decodeApart({ dataDir, hash, path: join(dataDir, fileOf(hash)), kind: null });
  return path;
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

import { join } from 'node:path';
import type { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { Response } from 'express';
import { ZipFile } from 'yazl';

export interface Packed {
  /** Below the one folder everything lies in. */
  readonly name: string;
  readonly path: string;
  /** Photos are as small as they get. */
  readonly compress: boolean;
}

/** Sends files as one archive while it is made; nothing of it is written to the disk. */
export async function sendZip(res: Response, folder: string, files: readonly Packed[]): Promise<void> {
  const zip = new ZipFile();
  for (const { name, path, compress } of files) zip.addFile(path, join(folder, name), { compress });
  zip.end();
  zip.on('error', (error: Error) => (zip.outputStream as Readable).destroy(error));
  res.set({
    'Content-Type': 'application/zip',
    'Content-Disposition': `attachment; filename="${folder}.zip"`,
    'Cache-Control': 'no-store',
  });
  try {
    await pipeline(zip.outputStream as Readable, res);
  } catch (error) {
    // A person who goes away in the middle is no fault; anything else ends the line, so that half is not taken for whole.
    if (!res.destroyed) res.destroy(error instanceof Error ? error : undefined);
  }
}

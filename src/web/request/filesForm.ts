import type { IncomingMessage } from 'node:http';
import { pipeline } from 'node:stream/promises';
import busboy from 'busboy';
import { unavailable } from '../../records/database/database.ts';
import { type Arrived, discard, receive, TooLarge } from '../../records/photos/files.ts';
import type { Fields } from './typed.ts';

export const MOST_BYTES = 12 * 1024 * 1024;
/** Beyond it the rest is not even listened to, so that nobody is kept waiting by it. */
const PATIENCE_BYTES = 64 * 1024 * 1024;
const LIMITS = {
  fields: 20,
  fieldNameSize: 60,
  fieldSize: 8192,
  files: 1,
  fileSize: MOST_BYTES + 1,
  parts: 24,
  headerPairs: 20,
};

export interface FormWithFile {
  readonly fields: Fields;
  /** null when none was chosen, or it was refused on the way; then `tooLarge` says why. */
  readonly file: Arrived | null;
  readonly tooLarge: boolean;
}

/** The form was cut off or is none; what had arrived is gone. */
class FormUnreadable extends Error {
  readonly status = 400;
  constructor(cause: unknown) {
    super('The form did not arrive whole.', { cause });
    this.name = 'FormUnreadable';
  }
}

/** Reads a form with one file while it arrives. The file's own name is not looked at: we have no use for it. */
export async function readFormWithFile(req: IncomingMessage, dataDir: string): Promise<FormWithFile> {
  const fields: Record<string, string> = Object.create(null);
  const arriving: Promise<Arrived | null>[] = [];
  let tooLarge = false;
  try {
    if (!req.headers['content-type']?.startsWith('multipart/form-data'))
      throw new Error('no form with a file');
    const form = busboy({ headers: req.headers, limits: LIMITS });
    form.on('field', (name, value, { nameTruncated, valueTruncated }) => {
      if (!nameTruncated && !valueTruncated) fields[name] = value.replaceAll('\0', '');
    });
    form.on('file', (name, stream) => {
      // A form that breaks off destroys the stream, perhaps before anybody reads it; whoever reads it is told.
      stream.on('error', () => {});
      const one = receive(dataDir, stream, MOST_BYTES).catch((error: unknown) => {
        if (!(error instanceof TooLarge)) throw error;
        tooLarge = true;
        return null;
      });
      // What is not taken is still read, or the form would never end.
      one.catch(() => stream.resume());
      arriving.push(name === 'file' ? one : one.then(drop));
    });
    let heard = 0;
    req.on('data', (chunk: Buffer) => {
      heard += chunk.length;
      if (heard > PATIENCE_BYTES) req.destroy();
    });
    await pipeline(req, form);
    const file = (await Promise.all(arriving)).find((one) => one !== null) ?? null;
    if (file?.bytes === 0) await discard(file);
    return { fields, file: file?.bytes === 0 ? null : file, tooLarge };
  } catch (error) {
    for (const one of await Promise.allSettled(arriving)) {
      if (one.status === 'fulfilled' && one.value) await discard(one.value);
    }
    throw unavailable(error) === error ? new FormUnreadable(error) : error;
  }
}

async function drop(arrived: Arrived | null): Promise<null> {
  if (arrived) await discard(arrived);
  return null;
}

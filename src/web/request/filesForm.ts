import type { IncomingMessage } from 'node:http';
import type { Readable } from 'node:stream';
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
  parts: 24,
  headerPairs: 20,
};

export interface FormWith<File> {
  readonly fields: Fields;
  /** null when none was chosen, or it was refused on the way; then `tooLarge` says why. */
  readonly file: File | null;
  readonly tooLarge: boolean;
}

export type FormWithFile = FormWith<Arrived>;

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
  const form = await readFormWith(req, MOST_BYTES, {
    take: (stream) => receive(dataDir, stream, MOST_BYTES),
    drop: discard,
  });
  if (form.file?.bytes === 0) await discard(form.file);
  return form.file?.bytes === 0 ? { ...form, file: null } : form;
}

/** The same with a file small enough to be read as it arrives; an empty one is none. */
export async function readFormWithBytes(req: IncomingMessage, mostBytes: number): Promise<FormWith<Buffer>> {
  const form = await readFormWith<Buffer>(req, mostBytes, {
    take: async (stream) => {
      const chunks: Buffer[] = [];
      let bytes = 0;
      for await (const chunk of stream as AsyncIterable<Buffer>) {
        bytes += chunk.length;
        // The rest is read and dropped: a browser shows the answer only after it has sent everything.
        if (bytes <= mostBytes) chunks.push(chunk);
        else chunks.length = 0;
      }
      if (bytes > mostBytes) throw new TooLarge(mostBytes);
      return Buffer.concat(chunks);
    },
    drop: async () => undefined,
  });
  return form.file?.length === 0 ? { ...form, file: null } : form;
}

interface Taking<File> {
  readonly take: (stream: Readable) => Promise<File>;
  readonly drop: (file: File) => Promise<void>;
}

async function readFormWith<File>(
  req: IncomingMessage,
  mostBytes: number,
  { take, drop }: Taking<File>,
): Promise<FormWith<File>> {
  const fields: Record<string, string> = Object.create(null);
  const arriving: Promise<File | null>[] = [];
  const dropped = async (file: File | null): Promise<null> => {
    if (file !== null) await drop(file);
    return null;
  };
  let tooLarge = false;
  try {
    if (!req.headers['content-type']?.startsWith('multipart/form-data'))
      throw new Error('no form with a file');
    const form = busboy({ headers: req.headers, limits: { ...LIMITS, fileSize: mostBytes + 1 } });
    form.on('field', (name, value, { nameTruncated, valueTruncated }) => {
      if (!nameTruncated && !valueTruncated) fields[name] = value.replaceAll('\0', '');
    });
    form.on('file', (name, stream) => {
      // A form that breaks off destroys the stream, perhaps before anybody reads it; whoever reads it is told.
      stream.on('error', () => {});
      const one: Promise<File | null> = take(stream).catch((error: unknown) => {
        if (!(error instanceof TooLarge)) throw error;
        tooLarge = true;
        return null;
      });
      // What is not taken is still read, or the form would never end.
      one.catch(() => stream.resume());
      arriving.push(name === 'file' ? one : one.then(dropped));
    });
    let heard = 0;
    req.on('data', (chunk: Buffer) => {
      heard += chunk.length;
      if (heard > PATIENCE_BYTES) req.destroy();
    });
    await pipeline(req, form);
    const file = (await Promise.all(arriving)).find((one) => one !== null) ?? null;
    return { fields, file, tooLarge };
  } catch (error) {
    for (const one of await Promise.allSettled(arriving)) {
      if (one.status === 'fulfilled') await dropped(one.value);
    }
    throw unavailable(error) === error ? new FormUnreadable(error) : error;
  }
}

import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import * as z from 'zod';
import { fileOf } from '../photos/files.ts';

export const SHOP_FILE = 'shop.json';
const hash = z.string().regex(/^[0-9a-f]{64}$/);

const schema = z.object({
  what: z.literal('coverwright export'),
  form: z.literal(1),
  /** Version of the records' shape; an import needs the same. */
  version: z.number().int(),
  at: z.iso.datetime(),
  tables: z.record(z.string(), z.object({ rows: z.number().int(), sha256: hash })),
  photos: z.array(hash),
  /** Where each photo lies in the export, by its hash; older exports name them by the hash alone. */
  names: z.record(hash, z.string().regex(/^photos\/[\w-][\w.-]*$/)).optional(),
  /** Photos the records name that were missing or damaged. */
  missing: z.array(hash),
});

export type ExportManifest = z.infer<typeof schema>;

/** Where a photo lies in an export. */
export function photoIn({ names }: Pick<ExportManifest, 'names'>, hash: string): string {
  return names?.[hash] ?? fileOf(hash);
}

/** The manifest of an export; null when it is missing or cannot be read. */
export async function readExport(folder: string): Promise<ExportManifest | null> {
  try {
    const read = schema.safeParse(JSON.parse(await readFile(join(folder, SHOP_FILE), 'utf8')));
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}

import { readdir, readFile, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import * as z from 'zod';
import type { Step } from '../../progress.ts';
import { flush, hashOf } from '../photos/files.ts';

export const MANIFEST = 'manifest.json';
const NAMED = 'coverwright\\.sqlite|files/[0-9a-f]{2}/[0-9a-f]{64}';
/** A file of a backup at the end of a path. */
export const BACKUP_FILE = new RegExp(`(?<=^|/)(manifest\\.json|${NAMED})$`);
const FORM = 1;

/** Why a backup was made; only scheduled ones are ever removed by the program. */
const REASONS = ['asked', 'scheduled', 'before-upgrade', 'before-begin', 'replaced'] as const;
export type BackupReason = (typeof REASONS)[number];

const schema = z.object({
  what: z.literal('coverwright backup'),
  form: z.number().int(),
  at: z.iso.datetime(),
  // A reason that only a newer program knows is no reason to refuse its backup.
  reason: z.enum(REASONS).catch('asked'),
  counts: z.record(z.string(), z.number().int()),
  /** Photos the records name that were missing or damaged when this was made. */
  missing: z.array(z.string()),
  files: z.array(
    z.object({
      path: z.string().regex(new RegExp(`^(${NAMED})$`)),
      bytes: z.number().int(),
      sha256: z.string().regex(/^[0-9a-f]{64}$/),
    }),
  ),
});

/** What is in a backup, and the hash of every file of it. Written last: a folder without one is not finished. */
export type Manifest = z.infer<typeof schema>;

/** Looks at every file of a folder and writes down what is there. */
export async function writeManifest(
  folder: string,
  said: Pick<Manifest, 'at' | 'reason' | 'counts' | 'missing'>,
): Promise<Manifest> {
  const found = await readdir(folder, { recursive: true, withFileTypes: true });
  const paths = found
    .filter((one) => one.isFile())
    .map((one) =>
      join(one.parentPath, one.name)
        .slice(folder.length + 1)
        .replaceAll('\\', '/'),
    )
    .filter((path) => schema.shape.files.element.shape.path.safeParse(path).success)
    .sort();
  const files: Manifest['files'] = [];
  for (const path of paths) {
    const full = join(folder, path);
    files.push({ path, bytes: (await stat(full)).size, sha256: await hashOf(full) });
  }
  const manifest: Manifest = { what: 'coverwright backup', form: FORM, ...said, files };
  const path = join(folder, MANIFEST);
  await writeFile(path, `${JSON.stringify(manifest, null, 1)}\n`, { flag: 'wx', mode: 0o600 });
  await flush(path);
  return manifest;
}

/** The manifest of a backup; null when it is missing or cannot be read. */
export async function readManifest(folder: string): Promise<Manifest | null> {
  try {
    const read = schema.safeParse(JSON.parse(await readFile(join(folder, MANIFEST), 'utf8')));
    return read.success && read.data.form <= FORM ? read.data : null;
  } catch {
    return null;
  }
}

/** The first file that is not what the manifest says; null when all are. */
export async function brokenFile(folder: string, manifest: Manifest, step: Step): Promise<string | null> {
  for (const [i, { path, sha256 }] of manifest.files.entries()) {
    step('Checking files', i, manifest.files.length);
    const found = await hashOf(join(folder, path)).catch(() => '');
    if (found !== sha256) return path;
  }
  return null;
}

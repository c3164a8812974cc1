import { fork } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { type Row, under } from './rows.ts';

const DECODER = fileURLToPath(new URL('../../dist/src/records/photos/decoder.js', import.meta.url));

/** What the process that decodes pictures takes for the largest that has to be held whole; nothing where the system does not say. */
export async function pictureRow(): Promise<readonly Row[]> {
  const dataDir = mkdtempSync(join(tmpdir(), 'coverwright-bench-'));
  const path = join(dataDir, 'large.png');
  const flat = { create: { width: 7400, height: 7400, channels: 3, background: '#888' } } as const;
  await sharp(flat).png({ progressive: true }).toFile(path);
  const decoder = fork(DECODER, [], { env: { ...process.env, MALLOC_ARENA_MAX: '1' }, execArgv: [] });
  decoder.send({ dataDir, hash: 'large', path, kind: 'png' });
  const [said] = (await once(decoder, 'message')) as [{ decoded?: unknown }];
  if (said.decoded === undefined) throw new Error(`The picture was not decoded: ${JSON.stringify(said)}`);
  const peakMb = peakOf(decoder.pid);
  decoder.disconnect();
  rmSync(dataDir, { recursive: true, force: true });
  return peakMb === null
    ? []
    : [under('memory for an interlaced photo of 55 million pixels', [peakMb, 'MB'], 350)];
}

function peakOf(pid: number | undefined): number | null {
  try {
    const kilobytes = /VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
    return kilobytes === undefined ? null : Number(kilobytes) / 1024;
  } catch {
    return null;
  }
}

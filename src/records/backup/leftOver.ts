import { existsSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { type Held, holdAlone, UNDER_WAY } from '../database/restoreGuard.ts';
import { FILES, INCOMING } from '../photos/files.ts';

/**
 * Removes what a kill left half done in the data folder, none of it records: photos still arriving, exports and
 * restores under way. Gives back what was removed, relative to the folder. Nothing is touched while another program
 * runs there, after a restore that stopped halfway, or where nothing may be removed.
 */
export function sweepLeftOver(dataDir: string): readonly string[] {
  const found = [
    ...named(dataDir, '', /^(exporting|restoring)-/),
    ...named(dataDir, join(FILES, INCOMING), /./),
  ];
  if (found.length === 0 || existsSync(join(dataDir, UNDER_WAY))) return [];
  let held: Held | null = null;
  try {
    held = holdAlone(dataDir);
    for (const one of found) rmSync(join(dataDir, one), { recursive: true, force: true });
    return found;
  } catch {
    return [];
  } finally {
    held?.release();
  }
}

function named(dataDir: string, folder: string, name: RegExp): string[] {
  const place = join(dataDir, folder);
  if (!existsSync(place)) return [];
  return readdirSync(place)
    .filter((one) => name.test(one))
    .map((one) => join(folder, one))
    .sort();
}

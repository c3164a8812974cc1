import { existsSync, rmSync, statSync, writeFileSync } from 'node:fs';
import type { Database } from 'better-sqlite3';
import { ShopWillNotOpen } from './errors.ts';

/** Lies beside the records while a program has them open, and stays when it did not close them in order. */
export const OPEN_MARK = '-open';

/** Refuses records that were not closed in order and whose log has gone since: their newest changes lay in it. */
export function refuseLostLog(file: string): void {
  const mark = `${file}${OPEN_MARK}`;
  const log = `${file}-wal`;
  if (!existsSync(mark) || (existsSync(log) && statSync(log).size > 0)) return;
  throw new ShopWillNotOpen(
    'parted',
    `${log} is missing or empty: the program was not closed in order, and the newest records were in that file. Put it back beside ${file}, or restore a backup. If it is lost for good, or another program has put the records in order, delete ${mark} and start again with what is left. Nothing was changed.`,
  );
}

/** From here on the log is missed should it go. Where there is no room for that, records open all the same. */
export function markOpen(raw: Database, file: string): void {
  try {
    // Written as it was: a log that holds something is one that can be missed.
    raw.pragma(`user_version = ${raw.pragma('user_version', { simple: true })}`);
    writeFileSync(`${file}${OPEN_MARK}`, '', { mode: 0o600 });
  } catch {
    markClosed(file);
  }
}

/** Before the records are closed, which takes the log away. */
export function markClosed(file: string): void {
  rmSync(`${file}${OPEN_MARK}`, { force: true });
}

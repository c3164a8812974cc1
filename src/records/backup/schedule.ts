import { existsSync } from 'node:fs';
import { readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type DayTime, lastInstantIn } from '../../../shared/words/day.ts';
import type { Db } from '../database/database.ts';
import { BackupFailed } from '../database/errors.ts';
import { backUp } from './backup.ts';
import { BACKUPS, listBackups, removeOld } from './list.ts';

const LOOK_EVERY_MS = 60_000;
const AGAIN_AFTER_MS = 3_600_000;
const FAILED = 'last-one-failed.json';

/** When these records were created. */
export async function shopBegan(db: Db): Promise<Date> {
  const first = await db
    .selectFrom('schema_migration')
    .select((eb) => eb.fn.min('at').as('at'))
    .executeTakeFirstOrThrow();
  return new Date(first.at);
}

/** Makes the daily backup, at once if one was missed, and removes old ones by their number. Ends with `stop`. */
export function scheduleBackups(options: {
  readonly dataDir: string;
  readonly databaseUrl?: string | null;
  readonly at: DayTime;
  /** Time zone of that time of day, asked each time: the shop may choose another. */
  readonly timeZone: () => Promise<string>;
  readonly kept: number;
  /** When these records were created: no backup was due before. */
  readonly since: Date;
  readonly now: () => Date;
  readonly say?: (sentence: string) => void;
}): { look(): Promise<void>; stop(): void } {
  const { dataDir, databaseUrl = null, at, timeZone, kept, since, now, say = console.error } = options;
  const folder = join(dataDir, BACKUPS);
  let waitUntil = 0;
  let looking: Promise<void> | null = null;

  async function look(): Promise<void> {
    const time = now();
    const due = lastInstantIn(await timeZone(), at, time);
    if (since > due || time.getTime() < waitUntil) return;
    const made = (await listBackups(folder)).map((one) => new Date(one.manifest.at));
    // A backup dated in the future, from a wrong clock, does not count as made.
    if (made.some((one) => one >= due && one <= time)) return;
    try {
      await backUp({ dataDir, databaseUrl, reason: 'scheduled', now });
      await rm(join(folder, FAILED), { force: true });
      await removeOld(folder, kept, now);
    } catch (error) {
      waitUntil = time.getTime() + AGAIN_AFTER_MS;
      const message = error instanceof Error ? error.message : String(error);
      say(`The daily backup was not made. ${message}`);
      if (!(error instanceof BackupFailed)) say(String(error));
      const note = JSON.stringify({ at: time.toISOString(), message });
      if (existsSync(folder)) await writeFile(join(folder, FAILED), note, { mode: 0o600 }).catch(() => {});
    }
  }

  /** One at a time: while a slow backup runs, the next minute starts none. */
  function lookOnce(): Promise<void> {
    looking ??= look().finally(() => {
      looking = null;
    });
    return looking;
  }

  const timer = setInterval(() => void lookOnce(), LOOK_EVERY_MS);
  timer.unref();
  void lookOnce();
  return { look: lookOnce, stop: () => clearInterval(timer) };
}

/** Why the last scheduled backup was not made; null when it was. */
export async function lastFailure(dataDir: string): Promise<{ at: string; message: string } | null> {
  try {
    return JSON.parse(await readFile(join(dataDir, BACKUPS, FAILED), 'utf8')) as {
      at: string;
      message: string;
    };
  } catch {
    return null;
  }
}

import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { instantIn } from '../../../shared/words/day.ts';
import { backUp } from '../../../src/records/backup/backup.ts';
import { listBackups, removeOld } from '../../../src/records/backup/list.ts';
import { lastFailure, scheduleBackups } from '../../../src/records/backup/schedule.ts';
import { FILE_NAME, openShop } from '../../../src/records/database/database.ts';
import { backupsOf } from '../../../src/settings.ts';

let dataDir: string;
let backups: string;
let said: string[];
beforeEach(async () => {
  dataDir = mkdtempSync(join(tmpdir(), 'coverwright-test-'));
  backups = join(dataDir, 'backups');
  said = [];
  await openShop({ dataDir }).close();
  vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval', 'Date'] });
});
afterEach(() => {
  vi.useRealTimers();
  rmSync(dataDir, { recursive: true });
});

const ZONE = 'America/Chicago';
/** A day of March, before and after the night in which clocks go forward, on the clock of the shop. */
const local = (day: number, hour: number, minute = 0) =>
  instantIn(ZONE, `2026-03-${String(day).padStart(2, '0')}`, { hour, minute });
const LONG_AGO = new Date(2020, 0, 1);

function start(changes: { since?: Date; kept?: number } = {}) {
  return scheduleBackups({
    dataDir,
    at: { hour: 3, minute: 30 },
    timeZone: async () => ZONE,
    kept: changes.kept ?? 14,
    since: changes.since ?? LONG_AGO,
    now: () => new Date(),
    say: (sentence) => said.push(sentence),
  });
}
const made = async () => (await listBackups(backups)).map((one) => one.manifest.at).sort();

describe('the daily backup', () => {
  test('the daily backup is made when its minute comes, once a day', async () => {
    vi.setSystemTime(local(5, 2));
    const schedule = start({ since: local(5, 1) });
    await schedule.look();
    expect(await made()).toEqual([]);
    vi.setSystemTime(local(5, 3, 30));
    await schedule.look();
    for (const hour of [4, 12, 23]) {
      vi.setSystemTime(local(5, hour));
      await schedule.look();
    }
    expect(await made()).toEqual([local(5, 3, 30).toISOString()]);
    vi.setSystemTime(local(6, 3, 31));
    await schedule.look();
    expect(await made()).toEqual([local(5, 3, 30), local(6, 3, 31)].map((day) => day.toISOString()));
    expect((await listBackups(backups)).every((one) => one.manifest.reason === 'scheduled')).toBe(true);
    schedule.stop();
  });

  test('the daily backup goes by the shop’s clock, also in the night in which clocks go forward', async () => {
    vi.setSystemTime('2026-03-07T09:29:00Z');
    const schedule = start({ since: local(6, 12) });
    await schedule.look();
    expect(await made()).toEqual([]);
    for (const at of [
      '2026-03-07T09:30:00Z',
      // Half past three is an hour earlier from this day on.
      '2026-03-08T08:29:00Z',
      '2026-03-08T08:30:00Z',
      '2026-03-08T09:30:00Z',
      '2026-03-09T04:30:00Z',
      '2026-03-09T08:30:00Z',
    ]) {
      vi.setSystemTime(at);
      await schedule.look();
    }
    schedule.stop();
    expect(await made()).toEqual([
      '2026-03-07T09:30:00.000Z',
      '2026-03-08T08:30:00.000Z',
      '2026-03-09T08:30:00.000Z',
    ]);
  });

  test('the schedule looks every minute by itself', async () => {
    vi.setSystemTime(local(5, 3, 28));
    const schedule = start({ since: local(5, 1) });
    await vi.advanceTimersByTimeAsync(3 * 60_000);
    await schedule.look();
    expect(await made()).toHaveLength(1);
    schedule.stop();
    vi.setSystemTime(local(6, 3, 29));
    await vi.advanceTimersByTimeAsync(3 * 60_000);
    expect(await made()).toHaveLength(1);
  });

  test('a daily backup missed while the program was off is made at start, and a new shop has missed none', async () => {
    vi.setSystemTime(local(5, 9));
    const fresh = start({ since: local(5, 8) });
    await fresh.look();
    fresh.stop();
    expect(await made()).toEqual([]);
    const missed = start({ since: local(1, 8) });
    await missed.look();
    missed.stop();
    expect(await made()).toEqual([local(5, 9).toISOString()]);
  });

  test('daily backups go on when a clock that was ahead is set right', async () => {
    await backUp({ dataDir, reason: 'scheduled', now: () => local(25, 4) });
    vi.setSystemTime(local(5, 9));
    const schedule = start();
    await schedule.look();
    schedule.stop();
    expect(await made()).toContain(local(5, 9).toISOString());
  });

  test('a daily backup that cannot be made is reported once an hour and on the page, until one is made', async () => {
    vi.setSystemTime(local(5, 9));
    rmSync(join(dataDir, FILE_NAME));
    mkdirSync(backups);
    const schedule = start();
    await schedule.look();
    await schedule.look();
    const file = join(dataDir, FILE_NAME);
    expect(said).toEqual([
      `The daily backup was not made. There is no shop to back up: ${file} does not exist. Check DATA_DIR.`,
    ]);
    expect(await lastFailure(dataDir)).toMatchObject({ at: local(5, 9).toISOString() });
    await openShop({ dataDir }).close();
    vi.setSystemTime(local(5, 10, 1));
    await schedule.look();
    schedule.stop();
    expect(await made()).toHaveLength(1);
    expect(await lastFailure(dataDir)).toBeNull();
  });
});

describe('old backups', () => {
  test('scheduled backups beyond the number kept are removed, the oldest first, and none that a person asked for', async () => {
    await backUp({ dataDir, reason: 'asked', now: () => local(1, 1) });
    await backUp({ dataDir, reason: 'before-upgrade', now: () => local(1, 2) });
    for (const day of [2, 3, 4]) await backUp({ dataDir, reason: 'scheduled', now: () => local(day, 3) });
    vi.setSystemTime(local(5, 3, 30));
    const schedule = start({ kept: 2 });
    await schedule.look();
    schedule.stop();
    const left = (await listBackups(backups)).map((one) => [one.manifest.reason, new Date(one.manifest.at)]);
    expect(left).toEqual([
      ['scheduled', local(5, 3, 30)],
      ['scheduled', local(4, 3)],
      ['before-upgrade', local(1, 2)],
      ['asked', local(1, 1)],
    ]);
  });

  test('the newest backup stays whatever the number says', async () => {
    await backUp({ dataDir, reason: 'scheduled', now: () => local(1, 1) });
    expect(await removeOld(backups, 0, () => local(9, 9))).toEqual([]);
    expect(await made()).toHaveLength(1);
  });

  test('old backups are left alone when a new one could not be made', async () => {
    for (const day of [2, 3]) await backUp({ dataDir, reason: 'scheduled', now: () => local(day, 3) });
    rmSync(join(dataDir, FILE_NAME));
    vi.setSystemTime(local(5, 4));
    const schedule = start({ kept: 1 });
    await schedule.look();
    schedule.stop();
    expect(await made()).toHaveLength(2);
  });

  test('leftovers of an unfinished backup are removed after a day, and other files never', async () => {
    const leftover = join(backups, 'coverwright-20260301-000000.unfinished');
    for (const folder of [
      leftover,
      join(backups, 'keep.unfinished'),
      join(backups, 'coverwright-20200101-000000'),
    ]) {
      mkdirSync(folder, { recursive: true });
    }
    writeFileSync(join(leftover, 'x'), 'x');
    const day = (n: number) => () => new Date(2026, 2, n);
    utimesSync(leftover, day(1)(), day(1)());
    await removeOld(backups, 14, () => new Date(2026, 2, 1, 23));
    expect(existsSync(leftover)).toBe(true);
    await removeOld(backups, 14, day(3));
    expect(readdirSync(backups).sort()).toEqual(['coverwright-20200101-000000', 'keep.unfinished']);
  });
});

describe('the settings', () => {
  test('the settings left out mean every night at half past three, and fourteen kept', () => {
    expect(backupsOf({})).toEqual({ at: { hour: 3, minute: 30 }, kept: 14 });
    expect(backupsOf({ BACKUP_AT: '21:05', BACKUPS_KEPT: '3' })).toEqual({
      at: { hour: 21, minute: 5 },
      kept: 3,
    });
    expect(backupsOf({ BACKUP_AT: 'off' }).at).toBeNull();
  });

  test.each([
    ['BACKUP_AT', '24:00'],
    ['BACKUP_AT', '3:30'],
    ['BACKUP_AT', 'never'],
    ['BACKUPS_KEPT', '0'],
    ['BACKUPS_KEPT', '-1'],
    ['BACKUPS_KEPT', 'all'],
  ])('the setting %s=%j is refused in a sentence that names it', (name, value) => {
    expect(() => backupsOf({ [name]: value })).toThrow(`${name} is "${value}", which can't be used; use`);
  });
});

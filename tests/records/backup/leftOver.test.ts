import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { sweepLeftOver } from '../../../src/records/backup/leftOver.ts';
import { holdShop, UNDER_WAY } from '../../../src/records/database/restoreGuard.ts';

const HALF_DONE = [join('exporting-1', 'data'), 'restoring-20260302-170405', join('files', 'incoming')];
let dataDir: string;
beforeEach(() => {
  dataDir = mkdtempSync(join(tmpdir(), 'coverwright-test-'));
  for (const folder of [...HALF_DONE, join('files', 'ab'), 'backups', 'replaced-20260302-170405']) {
    mkdirSync(join(dataDir, folder), { recursive: true });
    writeFileSync(join(dataDir, folder, 'one'), 'x');
  }
});
afterEach(() => rmSync(dataDir, { recursive: true }));

const names = () =>
  readdirSync(dataDir)
    .filter((name) => name !== 'in-use.lock')
    .sort();

test('what a kill left half done is removed and named; photos, backups and what was set aside stay', () => {
  expect(sweepLeftOver(dataDir)).toEqual([
    'exporting-1',
    'restoring-20260302-170405',
    join('files', 'incoming', 'one'),
  ]);
  expect(names()).toEqual(['backups', 'files', 'replaced-20260302-170405']);
  expect(existsSync(join(dataDir, 'files', 'ab', 'one'))).toBe(true);
  expect(sweepLeftOver(dataDir)).toEqual([]);
});

test('nothing is removed under a program that runs, and after a restore that stopped halfway', () => {
  const before = names();
  const held = holdShop(dataDir);
  expect(sweepLeftOver(dataDir)).toEqual([]);
  held.release();
  writeFileSync(join(dataDir, UNDER_WAY), '{}');
  expect(sweepLeftOver(dataDir)).toEqual([]);
  expect(names()).toEqual([...before, UNDER_WAY].sort());
});

test('a folder that is not there yet is no fault', () => {
  expect(sweepLeftOver(join(dataDir, 'nowhere'))).toEqual([]);
});

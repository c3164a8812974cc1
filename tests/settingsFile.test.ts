import { existsSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { Readable } from 'node:stream';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { shopOfCommand } from '../src/records/carry/commandFolder.ts';
import { openShop } from '../src/records/database/database.ts';
import { readSettings, SettingsRefused } from '../src/settings.ts';
import { shopSettings } from '../src/settingsFile.ts';
import { askIn, setup } from '../src/setup.ts';

let dataDir: string;
beforeEach(() => {
  dataDir = mkdtempSync(join(tmpdir(), 'coverwright-test-'));
});
afterEach(() => rmSync(dataDir, { recursive: true }));

const write = (text: string) => writeFileSync(join(dataDir, 'settings.txt'), text);
const read = (env = {}) => readSettings(shopSettings({ DATA_DIR: dataDir, ...env }));

describe('the settings file of a shop', () => {
  test('counts where the environment says nothing, also as Windows writes it', () => {
    write('\uFEFF# ours\r\nHOST = 0.0.0.0\r\n\r\nPORT=4300\r\nDEMO=0\r\n');
    expect(read()).toMatchObject({ host: '0.0.0.0', port: 4300, demo: false, dataDir, accounts: true });
    expect(read({ PORT: '4400', HOST: '' })).toMatchObject({ host: '0.0.0.0', port: 4400 });
  });

  test('is not needed', () => {
    expect(read()).toMatchObject({ host: '127.0.0.1', port: 4180 });
  });

  test.each(['PORT', 'SHOP=1', 'DATA_DIR=/elsewhere'])(
    'with a line it cannot use, "%s", is refused by line',
    (line) => {
      write(`HOST=0.0.0.0\n${line}\n`);
      expect(() => read()).toThrow(/^Line 2 of .+settings\.txt can't be used\. Write NAME=value, .+\.$/);
    },
  );

  test('is written by the setup, which asks again for what cannot be used and proposes what was there', async () => {
    const answers = ['', 'eighty', '4300', 'http://shop.example:4300', 'America/Chicago', 'off', '0'];
    const said: string[] = [];
    const path = await setup(
      dataDir,
      async () => answers.shift() ?? '',
      (line) => said.push(line),
    );
    expect(said).toEqual([expect.stringContaining('PORT is "eighty"')]);
    expect(read()).toMatchObject({
      host: '0.0.0.0',
      port: 4300,
      publicUrl: 'http://shop.example:4300',
      demo: false,
    });
    if (process.platform !== 'win32') expect(statSync(path).mode & 0o077).toBe(0);
    const before = readFileSync(path, 'utf8');
    const asked: string[] = [];
    await setup(
      dataDir,
      async (question) => (asked.push(question) ? '' : ''),
      () => {},
    );
    expect(readFileSync(path, 'utf8')).toBe(before);
    expect(asked[2]).toContain('[http://shop.example:4300]');
  });

  test('is written from answers that are piped in all at once, and not where they end too soon', async () => {
    const piped = (text: string) => createInterface({ input: Readable.from([text]) });
    const asked: string[] = [];
    const ask = askIn(piped('0.0.0.0\n4300\n'), (question) => asked.push(question));
    await expect(setup(dataDir, ask, () => {})).rejects.toThrow('so nothing was saved.');
    expect([asked.length, existsSync(join(dataDir, 'settings.txt'))]).toEqual([3, false]);
    await setup(
      dataDir,
      askIn(piped('0.0.0.0\n4300\n\n\n\n\n'), () => {}),
      () => {},
    );
    expect(read()).toMatchObject({ host: '0.0.0.0', port: 4300 });
  });
});

describe('a command', () => {
  test('reads the file, and refuses a folder that holds no shop, where it does not make one', async () => {
    write('PORT=4300\n');
    const env = { DATA_DIR: dataDir };
    expect(() => shopOfCommand(env)).toThrow(SettingsRefused);
    expect(() => shopOfCommand(env)).toThrow(`There is no shop in ${dataDir}.`);
    expect(shopOfCommand(env, { makes: true })).toMatchObject({ dataDir, databaseUrl: null });
    await openShop({ dataDir }).close();
    expect(shopOfCommand({ ...env, TIME_ZONE: 'America/Chicago' })).toEqual({
      dataDir,
      databaseUrl: null,
      timeZone: 'America/Chicago',
    });
    write('DATABASE_URL=postgres://one@db.example/shop\n');
    expect(shopOfCommand(env).databaseUrl).toBe('postgres://one@db.example/shop');
  });
});

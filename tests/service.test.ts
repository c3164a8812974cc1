import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'parse5';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { answers, byHand, healthOf, install, notAnswering, onlyHere, servicePlan } from '../src/service.ts';
import { SettingsRefused } from '../src/settings.ts';

const LINUX = {
  platform: 'linux',
  node: '/opt/node 20/bin/node',
  program: '/srv/100% ours/coverwright',
  dataDir: '/srv/Kupplung größer/$shop',
  home: '/home/one',
  user: 'one',
} as const;
const WINDOWS = {
  platform: 'win32',
  node: 'C:\\Program Files\\nodejs\\node.exe',
  program: 'C:\\Cover & wright',
  dataDir: 'C:\\Shop data',
  home: 'C:\\Users\\one',
  user: 'PC\\one',
} as const;

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'coverwright-test-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

describe('what starts the program at boot', () => {
  test('is on Linux a unit of the user, with percent and dollar signs that mean themselves', () => {
    const { path, text, commands } = servicePlan(LINUX);
    expect(path).toBe('/home/one/.config/systemd/user/coverwright.service');
    expect(text.split('\n')).toEqual(
      expect.arrayContaining([
        'WorkingDirectory=/srv/100%% ours/coverwright',
        'Environment="DATA_DIR=/srv/Kupplung größer/$shop"',
        'ExecStart="/opt/node 20/bin/node" "/srv/100%% ours/coverwright/dist/src/main.js"',
        'Restart=on-failure',
        'WantedBy=default.target',
      ]),
    );
    expect(servicePlan({ ...LINUX, program: '/srv/$x' }).text).toContain('"/srv/$$x/dist/src/main.js"');
    expect(commands.map((words) => words.join(' '))).toEqual([
      'systemctl --user daemon-reload',
      'systemctl --user enable coverwright',
      'systemctl --user restart coverwright',
      'loginctl enable-linger',
    ]);
  });

  test('is on macOS a daemon that runs as the user', () => {
    const { text } = servicePlan({ ...LINUX, platform: 'darwin', program: '/Users/one/A & B' });
    expect(text).toContain('<key>UserName</key><string>one</string>');
    expect(text).toContain('<string>/Users/one/A &amp; B/dist/src/main.js</string>');
    expect(text).toContain('<key>DATA_DIR</key><string>/srv/Kupplung größer/$shop</string>');
  });

  test('is on Windows a task at boot, as the user and not as the system', () => {
    const plan = servicePlan(WINDOWS);
    expect(plan.text).toContain('<BootTrigger>');
    expect(plan.text).toContain('<UserId>PC\\one</UserId>');
    const words = JSON.stringify(parse(plan.text), (key, value) =>
      key === 'parentNode' ? undefined : value,
    );
    expect(words).toContain(
      JSON.stringify(
        '/d /s /c "set "DATA_DIR=C:\\Shop data"&& "C:\\Program Files\\nodejs\\node.exe" "C:\\Cover & wright\\dist\\src\\main.js""',
      ).slice(1, -1),
    );
    expect(plan.commands[0]?.slice(-4)).toEqual(['/RU', 'PC\\one', '/RP', '*']);
  });

  test('is refused on another system, and for a folder with a quote in its name', () => {
    expect(() => servicePlan({ ...LINUX, platform: 'aix' })).toThrow(SettingsRefused);
    expect(() => servicePlan({ ...LINUX, dataDir: '/srv/a"b' })).toThrow(/has a quote or a line break/);
  });
});

test('how to stop it, start it again and read what it printed is said for each system', () => {
  expect(byHand(servicePlan(LINUX))).toEqual([
    'To stop it, as for a restore: systemctl --user stop coverwright',
    'To start it again: systemctl --user start coverwright',
    'To see what it printed: journalctl --user -u coverwright',
    'To stop starting it at boot: systemctl --user disable --now coverwright',
  ]);
  const mac = byHand(servicePlan({ ...LINUX, platform: 'darwin', dataDir: '/Users/one/Our shop' }));
  expect(mac[0]).toMatch(/: sudo launchctl unload \/Library\/LaunchDaemons\/\S+\.plist$/);
  expect(mac[2]).toBe('To see what it printed: tail -n 50 "/Users/one/Our shop/program.log"');
  expect(byHand(servicePlan(WINDOWS))).toHaveLength(3);
});

describe('installing it', () => {
  const plan = () => servicePlan({ ...LINUX, home: folder });

  test('writes the file and runs the commands in order', () => {
    const ran: string[] = [];
    const failed = install(
      plan(),
      (words) => {
        ran.push(words.join(' '));
        return 0;
      },
      () => {},
    );
    expect(failed).toBeNull();
    expect(readFileSync(plan().path, 'utf8')).toBe(plan().text);
    expect(ran).toEqual(plan().commands.map((words) => words.join(' ')));
  });

  test('stops at a command that fails, in a sentence; one that stops what may not run yet may fail', () => {
    const said: string[] = [];
    const failed = install(
      plan(),
      (words) => (words.includes('enable') ? 5 : 0),
      (line) => said.push(line),
    );
    expect(failed).toMatch(/^That command failed \(5\), so the program may not start at boot\./);
    expect(said.at(-1)).toBe('systemctl --user enable coverwright');
    const task = { ...servicePlan(WINDOWS), path: join(folder, 'task.xml') };
    expect(
      install(
        task,
        (words) => (words.includes('/End') ? 1 : 0),
        () => {},
      ),
    ).toBeNull();
    expect(readFileSync(task.path).subarray(0, 2)).toEqual(Buffer.from([0xff, 0xfe]));
  });
});

test('a setting that only this window has is named, since the program would start without it', () => {
  expect(onlyHere({ PORT: '4300', HOST: '', DATA_DIR: folder }, folder)).toEqual(['PORT']);
});

describe('a program that was made to start at boot', () => {
  const never = async () => false;
  const atOnce = async () => {};

  test('is asked until it answers', async () => {
    let asked = 0;
    expect(await answers(async () => ++asked === 3, atOnce)).toBe(true);
    expect(asked).toBe(3);
  });
  test('that never answers is told of, with what to look at', async () => {
    expect(await answers(never, atOnce)).toBe(false);
    const said = notAnswering('http://127.0.0.1:4780/health', servicePlan(LINUX));
    expect(said).toContain('does not answer at http://127.0.0.1:4780/health');
    expect(said).toContain('journalctl --user -u coverwright');
    expect(notAnswering('x', servicePlan(WINDOWS))).toContain('Run npm start');
  });
  test('is asked where its saved settings make it answer, whatever this window has', () => {
    const file = (text: string) => writeFileSync(join(folder, 'settings.txt'), text);
    expect(healthOf(folder)).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/health$/);
    file('PORT=4791\nHOST=0.0.0.0\n');
    expect(healthOf(folder)).toBe('http://127.0.0.1:4791/health');
    file('PORT=4791\nHOST=192.168.7.20\n');
    expect(healthOf(folder)).toBe('http://192.168.7.20:4791/health');
  });
});

import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { homedir, userInfo } from 'node:os';
import { dirname, join, posix, win32 } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { ROOT, startedAs } from './root.ts';
import { dataDirOf, type Env, isLoopback, readSettings, SettingsRefused } from './settings.ts';
import { FILE_SETTINGS, fileSettings } from './settingsFile.ts';

interface Machine {
  readonly platform: NodeJS.Platform;
  /** The node program, the folder of this program, and the shop's folder, each in full. */
  readonly node: string;
  readonly program: string;
  readonly dataDir: string;
  readonly home: string;
  readonly user: string;
}

/** What the system needs to start the program at boot as an ordinary user. */
export interface ServicePlan {
  readonly path: string;
  readonly text: string;
  readonly encoding: 'utf8' | 'utf16le';
  /** Run in this order after the file is written. */
  readonly commands: readonly (readonly string[])[];
  readonly undo: string;
  readonly stop: string;
  readonly start: string;
  /** Shows what the program prints; null where the system keeps nothing of it. */
  readonly messages: string | null;
}

/** Throws SettingsRefused on a system that none of the three ways suits, or for a path that can't be written there. */
export function servicePlan(machine: Machine): ServicePlan {
  const paths = [machine.node, machine.program, machine.dataDir];
  const odd = paths.find((path) => /[\n\r"]/.test(path));
  if (odd !== undefined) {
    throw new SettingsRefused(
      'DATA_DIR',
      `The folder ${JSON.stringify(odd)} has a quote or a line break in its name. Rename it, then run this again.`,
    );
  }
  if (machine.platform === 'linux') return forSystemd(machine);
  if (machine.platform === 'darwin') return forLaunchd(machine);
  if (machine.platform === 'win32') return forTaskScheduler(machine);
  throw new SettingsRefused(
    'PLATFORM',
    `This command works on Linux, macOS and Windows, not on ${machine.platform}. Make the system run this at boot: ${machine.node} ${join(machine.program, 'dist/src/main.js')}`,
  );
}

/** A unit of the user's own, so that no administrator is needed; lingering starts it without anybody signing in. */
function forSystemd({ node, program, dataDir, home }: Machine): ServicePlan {
  const quoted = (path: string) => `"${path.replaceAll('\\', '\\\\').replaceAll('%', '%%')}"`;
  const command = [node, posix.join(program, 'dist/src/main.js')].map((path) =>
    quoted(path.replaceAll('$', '$$$$')),
  );
  return {
    path: posix.join(home, '.config/systemd/user/coverwright.service'),
    encoding: 'utf8',
    text: `[Unit]
Description=Coverwright, the shop's record of covers

[Service]
WorkingDirectory=${program.replaceAll('%', '%%')}
Environment=${quoted(`DATA_DIR=${dataDir}`)}
ExecStart=${command.join(' ')}
Restart=on-failure
RestartSec=5

[Install]
WantedBy=default.target
`,
    commands: [
      ['systemctl', '--user', 'daemon-reload'],
      ['systemctl', '--user', 'enable', 'coverwright'],
      ['systemctl', '--user', 'restart', 'coverwright'],
      ['loginctl', 'enable-linger'],
    ],
    undo: 'systemctl --user disable --now coverwright',
    stop: 'systemctl --user stop coverwright',
    start: 'systemctl --user start coverwright',
    messages: 'journalctl --user -u coverwright',
  };
}

/** A daemon that runs as the user: agents of a user start only once that user signs in. */
function forLaunchd({ node, program, dataDir, user }: Machine): ServicePlan {
  const label = 'local.coverwright';
  const path = posix.join(dataDir, `${label}.plist`);
  const there = `/Library/LaunchDaemons/${label}.plist`;
  const log = posix.join(dataDir, 'program.log');
  return {
    path,
    encoding: 'utf8',
    text: `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE plist PUBLIC "-//Apple//DTD PLIST 1.0//EN" "http://www.apple.com/DTDs/PropertyList-1.0.dtd">
<plist version="1.0"><dict>
  <key>Label</key><string>${label}</string>
  <key>UserName</key><string>${xml(user)}</string>
  <key>WorkingDirectory</key><string>${xml(program)}</string>
  <key>EnvironmentVariables</key><dict><key>DATA_DIR</key><string>${xml(dataDir)}</string></dict>
  <key>ProgramArguments</key><array>
    <string>${xml(node)}</string>
    <string>${xml(posix.join(program, 'dist/src/main.js'))}</string>
  </array>
  <key>RunAtLoad</key><true/>
  <key>KeepAlive</key><dict><key>SuccessfulExit</key><false/></dict>
  <key>StandardOutPath</key><string>${xml(log)}</string>
  <key>StandardErrorPath</key><string>${xml(log)}</string>
</dict></plist>
`,
    commands: [
      ['sudo', 'install', '-m', '644', '-o', 'root', '-g', 'wheel', path, there],
      ['sudo', 'launchctl', 'unload', there],
      ['sudo', 'launchctl', 'load', '-w', there],
    ],
    undo: `sudo launchctl unload -w ${there}`,
    stop: `sudo launchctl unload ${there}`,
    start: `sudo launchctl load ${there}`,
    messages: shown(['tail', '-n', '50', log]),
  };
}

/** A task at boot that runs whether somebody is signed in or not, which is why Windows asks for the password. */
function forTaskScheduler({ node, program, dataDir, user }: Machine): ServicePlan {
  const path = win32.join(dataDir, 'coverwright-task.xml');
  const line = `/d /s /c "set "DATA_DIR=${dataDir}"&& "${node}" "${win32.join(program, 'dist\\src\\main.js')}""`;
  return {
    path,
    encoding: 'utf16le',
    text: `<?xml version="1.0" encoding="UTF-16"?>
<Task version="1.2" xmlns="http://schemas.microsoft.com/windows/2004/02/mit/task">
  <Triggers><BootTrigger><Enabled>true</Enabled></BootTrigger></Triggers>
  <Principals><Principal id="Author">
    <UserId>${xml(user)}</UserId><LogonType>Password</LogonType><RunLevel>LeastPrivilege</RunLevel>
  </Principal></Principals>
  <Settings>
    <DisallowStartIfOnBatteries>false</DisallowStartIfOnBatteries>
    <StopIfGoingOnBatteries>false</StopIfGoingOnBatteries>
    <ExecutionTimeLimit>PT0S</ExecutionTimeLimit>
    <RestartOnFailure><Interval>PT1M</Interval><Count>999</Count></RestartOnFailure>
  </Settings>
  <Actions Context="Author"><Exec>
    <Command>cmd.exe</Command>
    <Arguments>${xml(line)}</Arguments>
    <WorkingDirectory>${xml(program)}</WorkingDirectory>
  </Exec></Actions>
</Task>
`,
    commands: [
      ['schtasks', '/Create', '/F', '/TN', 'Coverwright', '/XML', path, '/RU', user, '/RP', '*'],
      ['schtasks', '/End', '/TN', 'Coverwright'],
      ['schtasks', '/Run', '/TN', 'Coverwright'],
    ],
    undo: 'schtasks /Delete /TN Coverwright',
    stop: 'schtasks /End /TN Coverwright',
    start: 'schtasks /Run /TN Coverwright',
    messages: null,
  };
}

function xml(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}

/** Stopping what may not run yet is no failure. */
const MAY_FAIL = new Set(['unload', '/End']);

/** Writes the file and runs the commands; gives back the sentence about the first that failed, or null. */
export function install(
  plan: ServicePlan,
  run: (command: readonly string[]) => number,
  say: (line: string) => void,
): string | null {
  mkdirSync(dirname(plan.path), { recursive: true });
  writeFileSync(plan.path, plan.encoding === 'utf16le' ? `\uFEFF${plan.text}` : plan.text, {
    encoding: plan.encoding,
  });
  say(`Saved ${plan.path}`);
  for (const command of plan.commands) {
    say(shown(command));
    const status = run(command);
    if (status !== 0 && !command.some((word) => MAY_FAIL.has(word))) {
      return `That command failed (${status}), so the program may not start at boot. Fix what it says, then run npm run service -- install again.`;
    }
  }
  return null;
}

function shown(command: readonly string[]): string {
  return command.map((word) => (/[\s*$&;()']/.test(word) ? `"${word}"` : word)).join(' ');
}

/** How to stop the program that starts at boot, as for a restore, and the rest that is done to it by hand. */
export function byHand({ stop, start, messages, undo }: ServicePlan): string[] {
  return [
    `To stop it, as for a restore: ${stop}`,
    `To start it again: ${start}`,
    ...(messages === null ? [] : [`To see what it printed: ${messages}`]),
    `To stop starting it at boot: ${undo}`,
  ];
}

/** Settings that only this window has: at boot the program would not have them. */
export function onlyHere(env: Env, dataDir: string): string[] {
  const file = fileSettings(dataDir);
  return FILE_SETTINGS.filter((name) => env[name] && env[name] !== file[name]);
}

/** Where the program answers once it is started with the settings saved in a folder. */
export function healthOf(dataDir: string): string {
  const { host, port } = readSettings({ ...fileSettings(dataDir), DATA_DIR: dataDir });
  const reached = isLoopback(host) || host === '0.0.0.0' || host === '::' ? '127.0.0.1' : host;
  return `http://${reached.includes(':') ? `[${reached}]` : reached}:${port}/health`;
}

/** Asks again and again, up to a minute, whether what was started answers. */
export async function answers(ask: () => Promise<boolean>, wait: () => Promise<void>): Promise<boolean> {
  for (let tried = 0; tried < 60; tried++) {
    if (await ask()) return true;
    await wait();
  }
  return false;
}

async function isWell(health: string): Promise<boolean> {
  try {
    const answer = await fetch(health, { signal: AbortSignal.timeout(1000) });
    return answer.ok && (await answer.text()).startsWith('well');
  } catch {
    return false;
  }
}

/** Says whether the program that was just made to start at boot answers, and what to look at where it does not. */
async function sayWhetherItAnswers(plan: ServicePlan, dataDir: string): Promise<void> {
  const health = healthOf(dataDir);
  console.log(`Waiting for the program to answer at ${health}`);
  if (
    await answers(
      () => isWell(health),
      () => setTimeout(1000),
    )
  ) {
    console.log('The program was started, and starts at boot. It answers.');
    return;
  }
  console.error(notAnswering(health, plan));
  process.exitCode = 1;
}

export function notAnswering(health: string, { messages }: ServicePlan): string {
  const look =
    messages === null ? 'Run npm start in a window to see what it says.' : `See what it printed: ${messages}`;
  return `The program starts at boot, but does not answer at ${health}. ${look}`;
}

async function main(): Promise<void> {
  try {
    const dataDir = dataDirOf(process.env);
    const { platform, execPath: node } = process;
    const plan = servicePlan({
      platform,
      node,
      program: ROOT,
      dataDir,
      home: homedir(),
      user: userInfo().username,
    });
    console.log(`Shop in ${dataDir}`);
    const missing = onlyHere(process.env, dataDir);
    if (missing.length > 0) {
      console.log(
        `Set in this window only, so not at boot: ${missing.join(', ')}. Save them with npm run setup.`,
      );
    }
    if (process.argv[2] === 'install') {
      const failed = install(plan, (command) => runShown(command), console.log);
      if (failed !== null) {
        console.error(failed);
        process.exitCode = 1;
        return;
      }
      await sayWhetherItAnswers(plan, dataDir);
      for (const line of byHand(plan)) console.log(line);
      return;
    }
    console.log(`To start the program at boot, save this as ${plan.path}:\n\n${plan.text}\nThen run:`);
    for (const command of plan.commands) console.log(`  ${shown(command)}`);
    console.log('npm run service -- install does all of it. Once that is done:');
    for (const line of byHand(plan)) console.log(`  ${line}`);
  } catch (error) {
    if (!(error instanceof SettingsRefused)) throw error;
    console.error(error.message);
    process.exitCode = 1;
  }
}

function runShown([program = '', ...words]: readonly string[]): number {
  const done = spawnSync(program, words, { stdio: 'inherit' });
  if (done.error) console.error(`${program}: ${done.error.message}`);
  return done.status ?? 1;
}

if (startedAs('service')) await main();

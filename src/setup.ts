import { createInterface, type Interface } from 'node:readline';
import { makeFolder } from './records/database/database.ts';
import { startedAs } from './root.ts';
import { backupsOf, dataDirOf, readSettings, SettingsRefused } from './settings.ts';
import { type FILE_SETTINGS, fileSettings, writeSettings } from './settingsFile.ts';

type Name = (typeof FILE_SETTINGS)[number];

const QUESTIONS: readonly { readonly name: Name; readonly ask: string; readonly usual: string }[] = [
  {
    name: 'HOST',
    ask: 'Who uses it? 127.0.0.1 for this computer alone, 0.0.0.0 for tablets and other computers too',
    usual: '0.0.0.0',
  },
  { name: 'PORT', ask: 'Port', usual: '4180' },
  {
    name: 'PUBLIC_URL',
    ask: 'Address people type, if this computer has a name on the network, such as http://shop.example:4180 (or none)',
    usual: '',
  },
  { name: 'TIME_ZONE', ask: "Time zone, such as America/Chicago (or none for this computer's)", usual: '' },
  { name: 'BACKUP_AT', ask: 'Daily backup at (or off)', usual: '03:30' },
  { name: 'DEMO', ask: 'Start with the demo shop? 1 for yes, 0 for an empty shop', usual: '1' },
];

/** Asks for each setting, over again while the answer can't be used, and writes them beside the shop's data. */
export async function setup(
  dataDir: string,
  ask: (question: string) => Promise<string>,
  say: (line: string) => void,
): Promise<string> {
  const settings: Partial<Record<Name, string>> = { ...fileSettings(dataDir) };
  for (const { name, ask: question, usual } of QUESTIONS) {
    const before = settings[name] ?? usual;
    for (;;) {
      const typed = (await ask(`${question} [${before === '' ? 'none' : before}]: `)).trim();
      const answer = typed === '' ? before : typed === 'none' ? '' : typed;
      try {
        readSettings({ DATA_DIR: dataDir, [name]: answer });
        backupsOf({ [name]: answer });
        settings[name] = answer;
        break;
      } catch (error) {
        if (!(error instanceof SettingsRefused)) throw error;
        say(error.message);
      }
    }
  }
  makeFolder(dataDir);
  return writeSettings(dataDir, settings);
}

/** Asks in the terminal, or reads one line after the other of what is piped in; where the answers end, nothing is saved. */
export function askIn(lines: Interface, say: (text: string) => void): (question: string) => Promise<string> {
  const typed = lines[Symbol.asyncIterator]();
  return async (question) => {
    say(question);
    const { value, done } = await typed.next();
    if (done) throw new SettingsRefused('SETUP', '\nNot every question was answered, so nothing was saved.');
    return value;
  };
}

async function main(): Promise<void> {
  const lines = createInterface({ input: process.stdin });
  try {
    const ask = askIn(lines, (question) => process.stdout.write(question));
    const dataDir = dataDirOf(process.env);
    console.log(`Settings for the shop in ${dataDir}. Press Enter to take what is in brackets.`);
    console.log(
      `Saved in ${await setup(dataDir, ask, console.log)}. They take effect the next time the program starts.`,
    );
  } catch (error) {
    if (!(error instanceof SettingsRefused)) throw error;
    console.error(error.message);
    process.exitCode = 1;
  } finally {
    lines.close();
  }
}

if (startedAs('setup')) await main();

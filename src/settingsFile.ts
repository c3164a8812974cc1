import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { dataDirOf, type Env, SettingsRefused } from './settings.ts';

/** Settings of the shop, beside its data: one NAME=value on each line. */
const SETTINGS_FILE = 'settings.txt';

/** What the file may set; the folder it is in is not among them. */
export const FILE_SETTINGS = [
  'PORT',
  'HOST',
  'DATABASE_URL',
  'PUBLIC_URL',
  'DEMO',
  'TIME_ZONE',
  'BACKUP_AT',
  'BACKUPS_KEPT',
] as const;
type FileSetting = (typeof FILE_SETTINGS)[number];

/** The settings of the shop: those of its file, and over them those of the environment. */
export function shopSettings(env: Env): Env {
  const given = Object.entries(env).filter(([, value]) => value !== undefined && value !== '');
  return { ...fileSettings(dataDirOf(env)), ...Object.fromEntries(given) };
}

/** What stands in the settings file of a folder; nothing where there is none. */
export function fileSettings(dataDir: string): Partial<Record<FileSetting, string>> {
  const path = join(dataDir, SETTINGS_FILE);
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch (error) {
    if (error instanceof Error && 'code' in error && (error.code === 'ENOENT' || error.code === 'ENOTDIR'))
      return {};
    const why = error instanceof Error ? error.message : String(error);
    throw new SettingsRefused(SETTINGS_FILE, `The settings in ${path} can't be read (${why}).`);
  }
  const found: Partial<Record<FileSetting, string>> = {};
  for (const [index, line] of text
    .replace(/^\uFEFF/, '')
    .split(/\r?\n/)
    .entries()) {
    if (/^\s*(#|$)/.test(line)) continue;
    const [, name = '', value = ''] = /^\s*(\w+)\s*=\s*(.*?)\s*$/.exec(line) ?? [];
    const known = FILE_SETTINGS.find((one) => one === name);
    if (known === undefined) {
      throw new SettingsRefused(
        SETTINGS_FILE,
        `Line ${index + 1} of ${path} can't be used. Write NAME=value, with a name out of ${FILE_SETTINGS.join(', ')}.`,
      );
    }
    found[known] = value;
  }
  return found;
}

/** Writes the settings file of a folder, whole or not at all. It may hold a password: only its owner reads it. */
export function writeSettings(dataDir: string, settings: Partial<Record<FileSetting, string>>): string {
  const path = join(dataDir, SETTINGS_FILE);
  const lines = FILE_SETTINGS.filter((name) => settings[name]).map((name) => `${name}=${settings[name]}\n`);
  const text = `# Settings of this shop, made by npm run setup. An environment variable of the same name overrides the line here.\n${lines.join('')}`;
  writeFileSync(`${path}.new`, text, { mode: 0o600 });
  renameSync(`${path}.new`, path);
  return path;
}

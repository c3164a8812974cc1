import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { databaseUrlOf, dataDirOf, SettingsRefused, timeZoneOf } from '../../settings.ts';
import { shopSettings } from '../../settingsFile.ts';
import { FILE_NAME } from '../database/database.ts';

/**
 * The shop a command works on, told in its first line. One that needs a shop refuses a folder that holds none; one
 * that makes a shop says so. Throws SettingsRefused.
 */
export function shopOfCommand(
  env: Readonly<Record<string, string | undefined>>,
  { makes = false } = {},
): { readonly dataDir: string; readonly databaseUrl: string | null; readonly timeZone: string } {
  const settings = shopSettings(env);
  const dataDir = dataDirOf(settings);
  const databaseUrl = databaseUrlOf(settings);
  const holds = databaseUrl !== null || existsSync(join(dataDir, FILE_NAME));
  if (!holds && !makes) {
    throw new SettingsRefused(
      'DATA_DIR',
      `There is no shop in ${dataDir}. Set DATA_DIR to the folder the program uses; it prints it at start.`,
    );
  }
  const where = databaseUrl === null ? '' : ', with the database in DATABASE_URL';
  console.log(
    holds ? `Shop in ${dataDir}${where}` : `There is no shop in ${dataDir} yet: a new one is made there.`,
  );
  return { dataDir, databaseUrl, timeZone: timeZoneOf(settings) };
}

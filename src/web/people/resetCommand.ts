import { dataDirOf, type Settings } from '../../settings.ts';

/** The command that makes a new password, with the shop's folder where that is not the usual one. */
export function resetCommand({ dataDir }: Pick<Settings, 'dataDir'>): string {
  const folder = dataDir === dataDirOf({}) ? '' : `DATA_DIR=${dataDir} `;
  return `${folder}npm run people -- reset NAME`;
}

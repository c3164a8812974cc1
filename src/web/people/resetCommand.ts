import type { Request } from 'express';
import { dataDirOf, type Settings } from '../../settings.ts';
import { fromThisComputer } from '../request/atTheMachine.ts';

/**
 * The command that makes a new password, with the shop's folder where that is not the usual one. Whoever asks over the
 * network learns no folder of this computer, only that there is one to name.
 */
export function resetCommand(
  { dataDir }: Pick<Settings, 'dataDir'>,
  req: Request,
): { readonly command: string; readonly folderLeftOut: boolean } {
  const command = 'npm run people -- reset NAME';
  if (dataDir === dataDirOf({})) return { command, folderLeftOut: false };
  if (!fromThisComputer(req)) return { command, folderLeftOut: true };
  return { command: `DATA_DIR=${dataDir} ${command}`, folderLeftOut: false };
}

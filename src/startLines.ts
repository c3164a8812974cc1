import { isIP } from 'node:net';
import QRCode from 'qrcode';
import { isLoopback, type Settings } from './settings.ts';
import { addressesToType } from './web/request/addresses.ts';

interface Started {
  readonly settings: Pick<Settings, 'host' | 'publicUrl' | 'dataDir'>;
  readonly port: number;
  readonly addresses?: readonly string[];
  /** How many people have accounts. */
  readonly people: number;
  /** The code for the first keeper; null when there is one. */
  readonly code: string | null;
  readonly where: string;
  readonly inPostgres: boolean;
  /** Name of the backup made because this version changed the records; null when it did not. */
  readonly beforeUpgrade?: string | null;
  /** What an earlier stop left half done and was removed now. */
  readonly leftOver?: readonly string[];
}

/** What the program prints once it answers. */
export function startLines(started: Started): string[] {
  const { settings, port, people, code, where, inPostgres, beforeUpgrade = null, leftOver = [] } = started;
  const addresses = started.addresses ?? addressesToType(settings, port);
  const own = addresses.find((one) => one !== settings.publicUrl) ?? addresses[0];
  const others = addresses.filter((one) => !isLoopback(new URL(one).hostname));
  return [
    `Coverwright is ready: ${own}`,
    ...(others.length > 0 ? [`On tablets and other computers: ${others.join('  or  ')}`] : []),
    ...bareAddress(settings.publicUrl),
    ...(code === null
      ? []
      : [`Nobody has an account yet. Open /first there and enter this code to become the manager: ${code}`]),
    ...(people === 0
      ? []
      : [
          `${people} ${people === 1 ? 'person has an account' : 'people have accounts'}: everybody signs in, at this computer too.`,
        ]),
    `The shop is saved in ${where}`,
    ...(beforeUpgrade === null
      ? []
      : [
          `This version changed the records. Before that it made the backup ${beforeUpgrade}: to go back, restore it with the old version.`,
        ]),
    ...(leftOver.length > 0
      ? [`Removed what an earlier stop left half done, none of it records: ${leftOver.join(', ')}`]
      : []),
    ...(inPostgres ? [`Photos and backups are in ${settings.dataDir}`] : []),
  ];
}

function bareAddress(publicUrl: string | null): string[] {
  const name = publicUrl === null ? '' : new URL(publicUrl).hostname.replace(/^\[|\]$/g, '');
  if (isIP(name) === 0 || isLoopback(name)) return [];
  return [
    `PUBLIC_URL is the address ${name}. If this computer gets another one, QR codes on printed tags stop working: give it a fixed address, or use its name.`,
  ];
}

/** The best address as a QR code for a terminal; '' where nobody else can reach the program. */
export async function startCode(addresses: readonly string[]): Promise<string> {
  const best = addresses.find((one) => !isLoopback(new URL(one).hostname));
  return best === undefined ? '' : QRCode.toString(best, { type: 'terminal', small: true });
}

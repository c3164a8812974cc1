import { isIP } from 'node:net';
import { hostname, networkInterfaces } from 'node:os';
import { isLoopback, type Settings } from '../../settings.ts';

const EVERYWHERE = ['0.0.0.0', '::'];

/** What this computer is called and where it is on its network. */
export interface Machine {
  readonly name: string;
  /** Every address of it, IPv6 too. */
  readonly addresses: readonly string[];
}

/** As it is now: a computer may be given another address while the program runs. */
function machineNow(): Machine {
  const found = Object.values(networkInterfaces()).flatMap((some) => some ?? []);
  return { name: hostname(), addresses: found.map(({ address }) => address.replace(/%.*$/, '')) };
}

/** The names this program answers to: this computer, where it listens, and the address the shop gave it. */
export function ownNames(
  { host, publicUrl }: Pick<Settings, 'host' | 'publicUrl'>,
  machine: () => Machine = machineNow,
): () => ReadonlySet<string> {
  const given = publicUrl === null ? [] : [new URL(publicUrl).hostname];
  const fixed = ['localhost', '127.0.0.1', '[::1]', inHostHeader(host), ...given];
  return () => {
    const { name, addresses } = EVERYWHERE.includes(host) ? machine() : { name: '', addresses: [] };
    const named = name === '' ? [] : [name, `${name}.local`];
    return new Set([...fixed, ...addresses.map(inHostHeader), ...named].map((one) => one.toLowerCase()));
  };
}

/**
 * Addresses that can be typed on a tablet, the best first: the one the shop gave, then this computer’s addresses, then
 * its name. Where nobody else can reach the program, its own address alone.
 */
export function addressesToType(
  { host, publicUrl }: Pick<Settings, 'host' | 'publicUrl'>,
  port: number,
  { name, addresses }: Machine = machineNow(),
): readonly string[] {
  const at = (one: string) => `http://${inHostHeader(one)}${port === 80 ? '' : `:${port}`}`;
  const given = publicUrl === null ? [] : [publicUrl];
  if (!EVERYWHERE.includes(host)) return [...new Set([...given, at(host)])];
  const typed = addresses.filter((one) => isIP(one) === 4 && !isLoopback(one) && !one.startsWith('169.254.'));
  const named = name === '' || isLoopback(name) ? [] : [name.includes('.') ? name : `${name}.local`];
  const all = [...given, ...typed.map(at), ...named.map(at)];
  return all.length > 0 ? [...new Set(all)] : [at('127.0.0.1')];
}

function inHostHeader(address: string): string {
  return address.includes(':') ? `[${address}]` : address;
}

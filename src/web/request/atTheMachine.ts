import type { Request } from 'express';
import { isLoopback, type Settings } from '../../settings.ts';

/** What a proxy adds to a request it hands on. */
const HANDED_ON = [
  'forwarded',
  'via',
  'x-forwarded-for',
  'x-forwarded-host',
  'x-forwarded-proto',
  'x-real-ip',
];

/**
 * Whether somebody asks at this very machine, where nobody signs in: the program listens here alone, is called by
 * this machine's own name, and no proxy stands between. A proxy gives itself away by what it adds, by the old HTTP it
 * speaks, or by a page of another name that led here.
 */
export function atTheMachine(settings: Settings, req: Request): boolean {
  if (!isLoopback(settings.host) || !isLoopback(nameIn(req.headers.host))) return false;
  if (handedOn(req)) return false;
  return [req.headers.origin, req.headers.referer].every(
    (from) => from === undefined || isLoopback(hostOf(from)),
  );
}

/** Whether a request was made on this computer, whatever address the program listens on. */
export function fromThisComputer(req: Request): boolean {
  const from = (req.socket.remoteAddress ?? '').replace(/^::ffff:/, '');
  return isLoopback(from) && !handedOn(req);
}

function handedOn(req: Request): boolean {
  return req.httpVersion !== '1.1' || HANDED_ON.some((name) => req.headers[name] !== undefined);
}

function nameIn(host: string | undefined): string {
  return (host ?? '').replace(/:\d+$/, '');
}

function hostOf(address: string): string {
  try {
    return new URL(address).hostname;
  } catch {
    return '';
  }
}

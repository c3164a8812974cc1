import { networkInterfaces } from 'node:os';
import type { NextFunction, Request, Response } from 'express';
import helmet from 'helmet';
import type { Settings } from '../../settings.ts';

/**
 * Headers for a program that must also work over plain HTTP inside a shop: no upgrade to https, no HSTS, and
 * `same-origin` as referrer policy so that form posts carry an Origin to compare.
 */
export const headers = helmet({
  contentSecurityPolicy: {
    useDefaults: false,
    directives: {
      defaultSrc: ["'none'"],
      scriptSrc: ["'self'"],
      styleSrc: ["'self'"],
      imgSrc: ["'self'", 'data:'],
      fontSrc: ["'self'"],
      connectSrc: ["'self'"],
      formAction: ["'self'"],
      baseUri: ["'none'"],
      frameAncestors: ["'none'"],
    },
  },
  strictTransportSecurity: false,
  referrerPolicy: { policy: 'same-origin' },
  crossOriginOpenerPolicy: false,
  originAgentCluster: false,
});

const LOOPBACK = ['localhost', '127.0.0.1', '[::1]'];
const EVERYWHERE = ['0.0.0.0', '::'];

/** The names this program goes by: this machine, where it listens, and the address the shop gave it. */
export function ownNames(settings: Pick<Settings, 'host' | 'publicUrl'>): () => ReadonlySet<string> {
  const { host, publicUrl } = settings;
  const said = [
    ...LOOPBACK,
    inHostHeader(host),
    ...(publicUrl === null ? [] : [new URL(publicUrl).hostname]),
  ];
  const fixed = new Set(said.map((name) => name.toLowerCase()));
  if (!EVERYWHERE.includes(host)) return () => fixed;
  // A machine may be given another address while the program runs.
  return () => new Set([...fixed, ...addressesHere()]);
}

function addressesHere(): string[] {
  const addresses = Object.values(networkInterfaces()).flatMap((some) => some ?? []);
  return addresses.map(({ address }) => inHostHeader(address.replace(/%.*$/, '')));
}

function inHostHeader(address: string): string {
  return address.includes(':') ? `[${address}]` : address;
}

/** Answers only to names it knows as its own, so that a stranger's name pointed at this address reads nothing. */
export function onlyOwnNames(own: () => ReadonlySet<string>) {
  return (req: Request, res: Response, next: NextFunction): void => {
    const host = (req.headers.host ?? '').toLowerCase().replace(/:\d+$/, '');
    if (own().has(host)) {
      next();
      return;
    }
    res
      .status(421)
      .type('text')
      .send(`"${host.slice(0, 100)}" is not this shop's address. Use the one printed at start.\n`);
  };
}

/**
 * A write must come from a page of our own. Browsers send Origin with every post; a script sends none, and is
 * taken only when it carries no cookie.
 */
export function onlyOwnPagesWrite(req: Request, res: Response, next: NextFunction): void {
  const reads = req.method === 'GET' || req.method === 'HEAD';
  const origin = req.headers.origin;
  if (reads || (origin === undefined ? !req.headers.cookie : sameHost(origin, req.headers.host))) {
    next();
    return;
  }
  const message =
    'This change came from another site, so nothing was saved. Open the page from this program and try again.';
  if (req.path.startsWith('/api/')) {
    res.status(403).json({ error: { code: 'other-site', message, fields: [] } });
  } else {
    res.status(403).type('text').send(`${message}\n`);
  }
}

function sameHost(origin: string, host: string | undefined): boolean {
  try {
    return new URL(origin).host === host?.toLowerCase();
  } catch {
    return false;
  }
}

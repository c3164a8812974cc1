import type { NextFunction, Request, RequestHandler, Response } from 'express';
import { ipKeyGenerator, rateLimit } from 'express-rate-limit';
import { key } from '../../records/database/writing.ts';
import { fromThisComputer } from '../request/atTheMachine.ts';
import { TooManyTries } from '../request/pageErrors.ts';
import { fieldsOf } from '../request/typed.ts';

const WINDOW_MS = 15 * 60 * 1000;
const PER_ACCOUNT = 10;
const PER_ADDRESS = 30;

const KNOWN_MOST = 1000;

/**
 * How often a password or a code may be wrong, for one address and for one account. An address that signed in with an
 * account before, and the machine itself, are counted apart for that account, so that wrong tries from elsewhere shut
 * nobody out of his own place. Kept in memory.
 */
export function limitTries(): {
  readonly address: RequestHandler;
  readonly account: RequestHandler;
  readonly signedIn: (req: Request) => void;
} {
  const known = new Set<string>();
  const account = (req: Request) => `account ${key(fieldsOf(req.body).name ?? '').slice(0, 60)}`;
  const from = (req: Request) => (fromThisComputer(req) ? 'this computer' : addressOf(req));
  const at = (req: Request) => `${account(req)} from ${from(req)}`;
  return {
    address: limit(PER_ADDRESS, from),
    account: limit(PER_ACCOUNT, (req) =>
      fromThisComputer(req) || known.has(at(req)) ? at(req) : account(req),
    ),
    signedIn: (req) => {
      known.add(at(req));
      for (const oldest of known) {
        if (known.size <= KNOWN_MOST) return;
        known.delete(oldest);
      }
    },
  };
}

function limit(most: number, of: (req: Request) => string): RequestHandler {
  return rateLimit({
    windowMs: WINDOW_MS,
    limit: most,
    keyGenerator: of,
    skipSuccessfulRequests: true,
    standardHeaders: 'draft-6',
    legacyHeaders: false,
    handler: (_req: Request, res: Response, next: NextFunction) => {
      const seconds = Number(res.getHeader('Retry-After') ?? WINDOW_MS / 1000);
      const wait = Math.max(1, Math.ceil(seconds / 60));
      next(new TooManyTries({ most, within: WINDOW_MS / 60_000, wait }));
    },
  });
}

function addressOf(req: Request): string {
  return ipKeyGenerator(req.ip ?? 'unknown');
}

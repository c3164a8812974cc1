import type { NextFunction, Request, RequestHandler, Response } from 'express';
import { ipKeyGenerator, rateLimit } from 'express-rate-limit';
import { key } from '../../records/database/writing.ts';
import { TooManyTries } from '../request/errors.ts';
import { fieldsOf } from '../request/typed.ts';

const WINDOW_MS = 15 * 60 * 1000;
const PER_ACCOUNT = 10;
const PER_ADDRESS = 30;

/** How often a password or a code may be wrong, for one address and for one account. Kept in memory. */
export function limitTries(): { address: RequestHandler; account: RequestHandler } {
  return {
    address: limit(PER_ADDRESS, addressOf),
    account: limit(PER_ACCOUNT, (req) => `account ${key(fieldsOf(req.body).name ?? '').slice(0, 60)}`),
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
      next(new TooManyTries(Math.max(1, Math.ceil(seconds / 60))));
    },
  });
}

function addressOf(req: Request): string {
  return ipKeyGenerator(req.ip ?? 'unknown');
}

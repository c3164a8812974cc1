import { finished } from 'node:stream';
import type { NextFunction, Request, Response } from 'express';

/**
 * An answer given before its request was read, such as a sign-in page for a photo, ends once the rest has come: a
 * connection closed with bytes unread is reset, and whoever is still sending never sees the answer. How long a request
 * may take is the server’s limit.
 */
export function readToEnd(req: Request, res: Response, next: NextFunction): void {
  const end = res.end.bind(res) as (...args: unknown[]) => Response;
  res.end = (...args: unknown[]) => {
    if (req.complete || req.destroyed) return end(...args);
    finished(req, { writable: false }, () => end(...args));
    req.resume();
    return res;
  };
  next();
}

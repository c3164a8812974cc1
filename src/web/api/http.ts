import express, { type NextFunction, type Request, type RequestHandler, type Response } from 'express';
import { ApiError, BODY_LIMIT } from '../request/apiErrors.ts';

/** Reads a JSON body, and refuses what says it is anything else. */
export const jsonBody: RequestHandler[] = [onlyJson, express.json({ limit: BODY_LIMIT, strict: false })];

function onlyJson(req: Request, _res: Response, next: NextFunction): void {
  const { 'content-length': length, 'transfer-encoding': encoding } = req.headers;
  if (encoding === undefined && (length === undefined || length === '0')) {
    throw new ApiError(400, 'malformed-json', 'The body is empty; send a JSON object.');
  }
  if (!req.is('application/json')) {
    throw new ApiError(
      415,
      'not-json',
      'The body must be JSON; send it with Content-Type: application/json.',
    );
  }
  next();
}

/** The end of every path: what else could have been asked of it. */
export function onlyMethods(allowed: readonly string[]) {
  return (req: Request, res: Response): never => {
    res.set('Allow', allowed.join(', '));
    throw new ApiError(405, 'wrong-method', `${req.method} does nothing here; use ${allowed.join(' or ')}.`);
  };
}

/** An answer of the interface is never kept by a browser or anything on the way. */
export function notKept(_req: Request, res: Response, next: NextFunction): void {
  res.set('Cache-Control', 'no-store');
  next();
}

import type { CookieOptions, Request, Response } from 'express';
import { LIFE_MS } from '../../records/people/sessions.ts';
import { isLoopback, type Settings } from '../../settings.ts';

/** The cookie that carries a session. */
export const SESSION = 'coverwright-session';

export function giveSession(req: Request, res: Response, settings: Settings, secret: string): void {
  res.cookie(SESSION, secret, { ...shape(req, settings), maxAge: LIFE_MS });
}

export function takeSession(req: Request, res: Response, settings: Settings): void {
  res.clearCookie(SESSION, shape(req, settings));
}

/** Secure only where the shop's address is https: over plain http a browser would never send it back. */
function shape(req: Request, settings: Settings): CookieOptions {
  const secure = isHttps(settings) && !cameByHttpHere(req);
  return { httpOnly: true, sameSite: 'lax', path: '/', secure };
}

/**
 * Why somebody can't sign in from here; null where they can. The shop's address is https and this page was opened
 * over http: the browser would throw the session away without a word.
 */
export function httpsTrap(settings: Settings, req: Request): string | null {
  if (!isHttps(settings) || !/^http:/i.test(req.headers.origin ?? '') || cameByHttpHere(req)) return null;
  return `Signing in works only over https here. Open ${settings.publicUrl}, or set PUBLIC_URL to the http address people use.`;
}

const isHttps = ({ publicUrl }: Settings): boolean => publicUrl?.startsWith('https:') === true;

/** From a page of this computer itself, where no network is in between. */
function cameByHttpHere(req: Request): boolean {
  const origin = req.headers.origin ?? '';
  return URL.canParse(origin) && new URL(origin).protocol === 'http:' && isLoopback(new URL(origin).hostname);
}

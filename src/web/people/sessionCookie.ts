import type { CookieOptions, Response } from 'express';
import { LIFE_MS } from '../../records/people/sessions.ts';
import type { Settings } from '../../settings.ts';

/** The cookie that carries a session. */
export const SESSION = 'coverwright-session';

export function giveSession(res: Response, settings: Settings, secret: string): void {
  res.cookie(SESSION, secret, { ...shape(settings), maxAge: LIFE_MS });
}

export function takeSession(res: Response, settings: Settings): void {
  res.clearCookie(SESSION, shape(settings));
}

/** Secure only where the shop's address is https: over plain HTTP a browser would never send it back. */
function shape(settings: Settings): CookieOptions {
  const secure = settings.publicUrl?.startsWith('https:') === true;
  return { httpOnly: true, sameSite: 'lax', path: '/', secure };
}

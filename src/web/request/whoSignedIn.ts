import type { NextFunction, Request, Response } from 'express';
import type { Person } from '../../../shared/words/people.ts';

/** Whoever sent a request, where people sign in. */
export interface SignedIn {
  readonly person: Person;
  /** The password is still the one they were given; until it is their own they may do nothing else. */
  readonly mustChoosePassword: boolean;
  /** The secret of the session; null for a script with a token. */
  readonly session: string | null;
}

const signedIn = new WeakMap<Request, SignedIn>();

export function rememberSignedIn(req: Request, who: SignedIn): void {
  signedIn.set(req, who);
}

export function signedInOf(req: Request): SignedIn | null {
  return signedIn.get(req) ?? null;
}

/** Whoever signed in; null where nobody does. */
export function personOf(req: Request): Person | null {
  return signedIn.get(req)?.person ?? null;
}

/** Who signs a change: whoever signed in, whatever was typed; where nobody signs in, what was typed. */
export function whoOf(req: Request, typed: string | undefined): string {
  return personOf(req)?.initials ?? typed ?? '';
}

/** No form says who writes it, where people sign in: what it carries is replaced before anything reads it. */
export function signsAsWhoSignedIn(req: Request, _res: Response, next: NextFunction): void {
  const person = personOf(req);
  const body: unknown = req.body;
  if (person && typeof body === 'object' && body !== null) {
    Object.assign(body, { who: person.initials, initials: person.initials });
  }
  next();
}

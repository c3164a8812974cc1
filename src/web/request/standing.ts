import type { NextFunction, Request, Response } from 'express';
import type { Person } from '../../../shared/words/people.ts';

/** Whoever stands before the program with this request, where people sign in. */
export interface Standing {
  readonly person: Person;
  /** The password is still the one they were given; until it is their own they may do nothing else. */
  readonly mustChoosePassword: boolean;
  /** The secret of the session; null for a script with a token. */
  readonly session: string | null;
}

const standing = new WeakMap<Request, Standing>();

export function stands(req: Request, who: Standing): void {
  standing.set(req, who);
}

export function standingOf(req: Request): Standing | null {
  return standing.get(req) ?? null;
}

/** Whoever signed in; null where nobody does. */
export function personOf(req: Request): Person | null {
  return standing.get(req)?.person ?? null;
}

/** Who stands behind a change: whoever signed in, whatever was typed; where nobody signs in, what was typed. */
export function whoOf(req: Request, typed: string | undefined): string {
  return personOf(req)?.initials ?? typed ?? '';
}

/** No form says who writes it, where people sign in: what it carries is replaced before anything reads it. */
export function signsAsWhoStands(req: Request, _res: Response, next: NextFunction): void {
  const person = personOf(req);
  const body: unknown = req.body;
  if (person && typeof body === 'object' && body !== null) {
    Object.assign(body, { who: person.initials, initials: person.initials });
  }
  next();
}

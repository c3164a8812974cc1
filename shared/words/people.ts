/** What somebody may do; each may do what those before it may. */
export const ROLES = ['reader', 'recorder', 'keeper'] as const;
export type Role = (typeof ROLES)[number];

/** What screens and commands call a role. */
export const ROLE_WORD: Readonly<Record<Role, string>> = {
  reader: 'reader',
  recorder: 'recorder',
  keeper: 'manager',
};

/** One of several people with an account. */
export interface Person {
  readonly id: number;
  readonly revision: number;
  readonly name: string;
  /** Shown under every change this person makes. Never given to anybody else, so that an old signature keeps its meaning. */
  readonly initials: string;
  readonly role: Role;
  readonly retired: boolean;
}

export type PersonChange =
  | 'added'
  | 'changed'
  | 'retired'
  | 'reinstated'
  | 'start-password'
  | 'own-password'
  | 'token'
  | 'token-withdrawn';

/** One revision of a person, as the history shows it. */
export interface PersonLine {
  readonly personId: number;
  readonly name: string;
  readonly revision: number;
  readonly at: string;
  readonly who: string;
  readonly why: string;
  readonly what: PersonChange;
  readonly role: Role;
}

export type Device = 'computer' | 'tablet' | 'phone';

/** What somebody signed in on, from what its browser calls itself; older sessions have that kept. */
export function deviceWord(said: string): Device {
  if (/^(computer|tablet|phone)$/.test(said)) return said as Device;
  if (/iPad|Tablet|Android(?!.*Mobile)/i.test(said)) return 'tablet';
  return /Mobi|iPhone|Android/i.test(said) ? 'phone' : 'computer';
}

/** Where somebody is signed in. */
export interface SessionLine {
  readonly device: Device;
  readonly beganAt: string;
  readonly usedAt: string;
}

/** A token that lets a script call the program; the secret is shown once and not kept. */
export interface TokenLine {
  readonly id: number;
  readonly name: string;
  readonly personId: number;
  readonly role: Role;
  readonly issuedBy: string;
  readonly issuedAt: string;
  readonly usedAt: string | null;
  readonly withdrawnAt: string | null;
}

/** Whether a role is enough for what needs `least`. */
export function mayAs(role: Role, least: Role): boolean {
  return ROLES.indexOf(role) >= ROLES.indexOf(least);
}

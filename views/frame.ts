import type { Role } from '../shared/words/people.ts';
import { mayAs } from '../shared/words/people.ts';
import type { LengthUnit } from '../shared/words/print.ts';

/** What stands round every page: whose shop, which unit, who stands here. */
export interface Frame {
  readonly shopName: string;
  readonly demo: boolean;
  /** The demo was put away, and this of it stayed. */
  readonly demoKept?: boolean;
  readonly lengthUnit: LengthUnit;
  readonly decimalSign: 'point' | 'comma';
  /** Whose days and times are told. */
  readonly timeZone: string;
  /** '' until somebody has said who they are. */
  readonly initials: string;
  /** Who is signed in; null where nobody signs in, and while nobody has. */
  readonly person?: SignedInPerson | null;
  /** People sign in here, and nobody has: every way in leads back to the sign-in page. */
  readonly signedOut?: boolean;
  /** This page's own address, to come back to. */
  readonly address: string;
}

export interface SignedInPerson {
  readonly name: string;
  readonly initials: string;
  readonly role: Role;
}

/** Whether whoever stands here may do what needs this role; where nobody signs in, anybody may. */
export function may(frame: Pick<Frame, 'person' | 'signedOut'>, least: Role): boolean {
  if (frame.person) return mayAs(frame.person.role, least);
  return frame.signedOut !== true;
}

import { createContext } from 'preact';
import type { SignedInPerson } from '../frame.ts';

/** Whoever is signed in, for the fields that would otherwise ask who is writing. Set by the layout. */
export const SignedIn = createContext<SignedInPerson | null>(null);

/** What stands where initials are asked for, when it is known who is writing. */
export function SignedAs({ person }: { person: SignedInPerson }) {
  return (
    <p class="field who">
      Signed as {person.initials}, {person.name}.
    </p>
  );
}

import { createContext } from 'preact';

/** Where the page lives that is being shown: a working leads on with it. Set by the layout. */
export const PageAddress = createContext<string | null>(null);

/** A page of a cover with hundreds of stations has an address too long to be repeated in every working. */
const LONGEST = 3000;

/** Where the formula of one step is explained, with the values it has on the page at this address. */
export function formulaHref(formula: string, address: string | null): string | null {
  if (address === null || address.startsWith('/how')) return null;
  const from = address.length > LONGEST ? '' : address;
  const asked = new URLSearchParams({ step: formula, ...(from !== '' && { from }) });
  return `/how/formula?${`${asked}`.replaceAll(NEEDS_NO_ESCAPE, decodeURIComponent)}`;
}

/** Letters beyond ASCII, and ( ) , / =: an address may hold them as they are; the page of a job is shorter for it. */
const NEEDS_NO_ESCAPE = /(?:%[C-F][\dA-F](?:%[89AB][\dA-F])+)+|%(?:2[89CF]|3D)/g;

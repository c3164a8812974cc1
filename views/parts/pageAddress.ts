import { createContext } from 'preact';

/** Where the page lives that is being shown: a working leads on with it. Set by the layout. */
export const PageAddress = createContext<string | null>(null);

/** A page of a cover with hundreds of stations has an address too long to be repeated in every working. */
const LONGEST = 3000;

/** Where the formula of one step is explained, with the values it has on the page at this address. */
export function formulaHref(formula: string, address: string | null): string | null {
  if (address === null || address.startsWith('/how')) return null;
  const from = address.length > LONGEST ? '' : address;
  return `/how/formula?${new URLSearchParams({ step: formula, ...(from !== '' && { from }) })}`;
}

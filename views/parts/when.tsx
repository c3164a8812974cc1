import { createContext } from 'preact';
import { printDay, printInstant } from '../../shared/words/day.ts';

/** Whose days and times a page is told in; every page says it once, in its layout. */
export const ShopTimeZone = createContext('UTC');

/** `2026-11-24` as "Nov 24, 2026". */
export const day = printDay;

/** An instant, in the time zone of the shop. */
export function When({ at }: { at: string }) {
  return (
    <ShopTimeZone.Consumer>
      {(zone) => <time datetime={at}>{printInstant(zone, at)}</time>}
    </ShopTimeZone.Consumer>
  );
}

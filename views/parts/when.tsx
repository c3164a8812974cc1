import { printDay } from '../../shared/words/print.ts';

/** `2026-11-24T14:05:09Z` as "24 Nov 2026 14:05 UTC". */
function moment(at: string): string {
  return `${printDay(at)} ${at.slice(11, 16)} UTC`;
}

export const day = printDay;

/** A moment, kept in UTC. The page's script turns it into the tablet's own time and names the zone. */
export function When({ at }: { at: string }) {
  return <time datetime={at}>{moment(at)}</time>;
}

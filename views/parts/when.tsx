const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** `2026-11-24T14:05:09Z` as "24 Nov 2026 14:05 UTC". */
function moment(at: string): string {
  return `${day(at)} ${at.slice(11, 16)} UTC`;
}

/** `2026-11-24` as "24 Nov 2026". */
export function day(at: string): string {
  const [year, month, date] = at.slice(0, 10).split('-');
  return `${Number(date)} ${MONTHS[Number(month) - 1] ?? month} ${year}`;
}

/** A moment, kept in UTC. The page's script turns it into the tablet's own time and names the zone. */
export function When({ at }: { at: string }) {
  return <time datetime={at}>{moment(at)}</time>;
}

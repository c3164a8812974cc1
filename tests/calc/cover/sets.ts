import type { Station } from '../../../shared/words/cover.ts';

export * from '../../../data/examples/coverSets.ts';

/** The same stations as if the indicator had not been used. */
export function unread(stations: readonly Station[]): Station[] {
  return stations.map((station) => ({ ...station, faceMm: null }));
}

import { type KeptStudy, stationOf } from '../../../shared/words/gauges/gaugeStudies.ts';

/** "Cover 3, 90° from stud 1"; of covers read at one station alone, "Cover 3". */
export function stationInWords({ plan }: Pick<KeptStudy, 'plan'>, station: number): string {
  const { cover, angleDeg } = stationOf(plan, station);
  return `Cover ${cover}${plan.stations === 1 ? '' : `, ${angleInWords(angleDeg)}`}`;
}

function angleInWords(angleDeg: number): string {
  return angleDeg === 0 ? 'at stud 1' : `${angleDeg}° from stud 1`;
}

/** "10 covers at stud 1 each, read by AA, BB and CC in 3 rounds: 90 readings". */
export function planInWords({ plan, order }: Pick<KeptStudy, 'plan' | 'order'>): string {
  const { covers, stations, people, rounds } = plan;
  const where = stations === 1 ? 'at stud 1' : `at ${stations} stations`;
  const names = `${people.slice(0, -1).join(', ')} and ${people.at(-1)}`;
  return `${covers} covers, each ${where}; ${names}; ${rounds} rounds: ${order.length} readings`;
}

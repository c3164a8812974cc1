import { thanNew } from '../../../shared/words/bending/thanNew.ts';
import type { TrendPart } from './trendPart.ts';
import { count, TwinTable } from './twinTable.tsx';

/** Fewer than this say nothing (common practice, no source). */
const ENOUGH = 5;

/** How the bending of covers that came back compares with that of the others; of those it was worked out for. */
export function BendingTrend({ trends, csv }: TrendPart) {
  const { back, stayed } = trends.bending;
  const times = (value: number | null) => (value === null ? '—' : thanNew(value));
  const row = (name: string, { n, mean, most }: typeof back) => [name, count(n), times(mean), times(most)];
  return (
    <section id="trend-bending">
      <h2>Bending and comebacks</h2>
      <p class="hint">
        Peak lining pressure after the cut, compared with the new cover, as worked out when each was decided.
        Advice: it shows what went together, not what caused what.
        {back.n + stayed.n === 0
          ? ' Bending was not worked out for any cover released yet; it needs its figures in the shop limits and the cover type.'
          : Math.min(back.n, stayed.n) < ENOUGH && ' With fewer than 5 covers in a row it tells nothing yet.'}
      </p>
      <TwinTable
        caption="Bending and comebacks"
        heads={['Covers released', 'Bending worked out', 'Mean peak', 'Highest peak']}
        rows={[row('Came back', back), row('Did not come back', stayed)]}
        csv={csv('bending')}
      />
    </section>
  );
}

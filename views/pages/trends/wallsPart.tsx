import { briefLength, printLength, printShare } from '../../../shared/words/print.ts';
import type { WallsReceived } from '../../../shared/words/trends/trendsShown.ts';
import { HistogramDrawn } from '../../drawings/trends/histogramDrawn.tsx';
import type { TrendPart } from './trendPart.ts';
import { count, TwinTable } from './twinTable.tsx';

/** More types than this are drawn folded; the table has them all. */
const MOST_DRAWN = 4;

/** Thinnest wall of each cover as it came in, by cover type, beside the minimum of today and the new wall. */
export function Walls({ frame, trends, csv }: TrendPart) {
  const unit = frame.lengthUnit;
  const walls = [...trends.walls].sort((a, b) => b.measured - a.measured || (a.name < b.name ? -1 : 1));
  const drawn = (one: WallsReceived) => (
    <figure class="drawing">
      <p class="view-caption">
        {one.name}: {count(one.measured)} {one.measured === 1 ? 'cover' : 'covers'} <small>{unit}</small>
      </p>
      <HistogramDrawn
        id={`wall-${one.familyId}`}
        title={`Wall as received, ${one.name}`}
        histogram={one.histogram}
        unit={unit}
        minimumMm={one.minimumMm}
        newMm={one.nominalMm}
      />
      <figcaption>{underInWords(one)}</figcaption>
    </figure>
  );
  return (
    <section id="walls">
      <h2>Wall as received</h2>
      {walls.length === 0 ? (
        <p>No wall is measured.</p>
      ) : (
        <>
          <p class="hint">Thinnest station of each cover before any cut. The minimum is today’s.</p>
          <div class="drawing">
            <div class="views">{walls.slice(0, MOST_DRAWN).map(drawn)}</div>
          </div>
          {walls.length > MOST_DRAWN && (
            <details class="more-findings">
              <summary>{count(walls.length - MOST_DRAWN)} more cover types, drawn</summary>
              <div class="drawing">
                <div class="views">{walls.slice(MOST_DRAWN, MOST_DRAWN + 40).map(drawn)}</div>
              </div>
              {walls.length > MOST_DRAWN + 40 && <p>Choose a cover type above to see one of the others.</p>}
            </details>
          )}
          <TwinTable
            caption="Wall as received"
            heads={['Cover type', 'Measured', 'New wall', 'Minimum', 'Below the minimum']}
            rows={walls.map((one) => [
              one.name,
              count(one.measured),
              one.nominalMm === null ? '' : printLength(one.nominalMm, unit),
              one.minimumMm === null ? 'none set' : briefLength(one.minimumMm, unit),
              one.under === null ? '' : `${count(one.under)}, ${printShare(one.under / one.measured, 0)}`,
            ])}
            csv={csv('walls')}
          />
        </>
      )}
    </section>
  );
}

function underInWords({ measured, under }: WallsReceived): string {
  if (under === null) return 'No minimum is set for this cover type.';
  if (under === 0) return 'None came in below the minimum.';
  return `${count(under)} of ${count(measured)}, ${printShare(under / measured, 0)}, came in below the minimum.`;
}

import { MARK_PATTERN_WORD } from '../../../shared/words/heatMarks.ts';
import { briefLength, printShare } from '../../../shared/words/print.ts';
import { type ComebackShare, tooFew } from '../../../shared/words/trends/trendsShown.ts';
import { OUTCOME_WORD } from '../../drawings/trends/intakeDrawn.tsx';
import { IntervalsDrawn } from '../../drawings/trends/intervalsDrawn.tsx';
import type { TrendPart } from './trendPart.ts';
import { count, TwinTable } from './twinTable.tsx';

type Named = ComebackShare & { readonly label: string };

/** Of the covers released, how many came back: by what was decided, and by the wall left. */
export function Comebacks({ frame, trends, csv }: TrendPart) {
  const unit = frame.lengthUnit;
  const { byDecision, byWallLeft } = trends.comebacks;
  const released = byDecision.reduce((sum, one) => sum + one.released, 0);
  return (
    <section id="comebacks">
      <h2>Comebacks</h2>
      {released === 0 ? (
        <p>No cover is released yet: none could come back.</p>
      ) : (
        <>
          <p class="hint">
            A comeback is a job that names an earlier one when it is received. The line is where the share
            lies with 95 % confidence, the dot what was counted. Dashed: too few to tell. Covers released
            lately have had little time to come back.
          </p>
          <div class="drawing">
            <div class="views">
              <Shares
                id="by-decision"
                caption="by decision"
                rows={byDecision.map((one) => ({ ...one, label: OUTCOME_WORD[one.decision] }))}
              />
              <Shares
                id="by-wall-left"
                caption="by wall left after the cut"
                rows={byWallLeft.map((one) => ({
                  ...one,
                  label: `${briefLength(one.fromMm, unit)} to ${briefLength(one.toMm, unit)}`,
                }))}
              />
            </div>
          </div>
          <TwinTable
            caption="Comebacks"
            heads={SHARE_HEADS}
            rows={[
              ...byDecision.map((one) => shareCells({ ...one, label: OUTCOME_WORD[one.decision] })),
              ...byWallLeft.map((one) =>
                shareCells({
                  ...one,
                  label: `${briefLength(one.fromMm, unit)} to ${briefLength(one.toMm, unit)} left`,
                }),
              ),
            ]}
            csv={csv('comebacks')}
          />
          <p class="hint">
            Interval: Wilson 1927, as method 3 of Newcombe 1998. One wider than 20 points is too wide to tell
            anything (common practice, no source).{' '}
            <a href="/how/measuring/wilsonInterval">How it is worked out</a>
          </p>
        </>
      )}
    </section>
  );
}

/** More rows than this make no picture. */
const MOST_ROWS = 12;

export function Shares({
  id,
  caption,
  rows,
}: {
  readonly id: string;
  readonly caption: string;
  readonly rows: readonly Named[];
}) {
  const drawn = rows.flatMap(({ label, interval }) => (interval === null ? [] : [{ label, interval }]));
  if (drawn.length === 0 || drawn.length > MOST_ROWS) return null;
  return (
    <figure class="drawing">
      <p class="view-caption">{caption}</p>
      <IntervalsDrawn id={`${id}-drawn`} title={`Share that came back, ${caption}`} rows={drawn} />
    </figure>
  );
}

export const SHARE_HEADS = ['Covers', 'Released', 'Came back', 'Share', '95 % interval', 'Enough to tell'];

export function shareCells({ label, released, back, interval }: Named) {
  return [
    label,
    count(released),
    count(back),
    interval === null ? '' : printShare(interval.share),
    interval === null ? '' : `${printShare(interval.low)} to ${printShare(interval.high)}`,
    interval === null || tooFew(interval) ? 'too few' : 'yes',
  ];
}

/** By what the heat marks of the cover said before it was released. */
export function patternShares(trends: TrendPart['trends']): readonly Named[] {
  return trends.comebacks.byPattern.map((one) => ({ ...one, label: MARK_PATTERN_WORD[one.pattern] }));
}

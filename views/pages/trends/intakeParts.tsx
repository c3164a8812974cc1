import { briefLength } from '../../../shared/words/print.ts';
import { SCRAP_WORD } from '../../../shared/words/trends/trends.ts';
import { type DaysBin, DaysDrawn } from '../../drawings/trends/daysDrawn.tsx';
import { HistogramDrawn } from '../../drawings/trends/histogramDrawn.tsx';
import {
  IntakeDrawn,
  IntakeKey,
  OUTCOME_WORD,
  OUTCOMES,
  periodWord,
} from '../../drawings/trends/intakeDrawn.tsx';
import { RowBars } from '../../drawings/trends/rowBars.tsx';
import { sharesRunning } from './shares.ts';
import type { TrendPart } from './trendPart.ts';
import { count, TwinTable } from './twinTable.tsx';

/** What came in, month by month, and what became of it. */
export function Intakes({ trends, csv }: TrendPart) {
  const { intake, byYear } = trends;
  return (
    <section id="intake">
      <h2>What came in, and what became of it</h2>
      <figure class="drawing">
        <p class="view-caption">covers by {byYear ? 'year' : 'month'} of receipt</p>
        <IntakeDrawn intake={intake} />
        <IntakeKey />
      </figure>
      <TwinTable
        caption="Intake and outcome"
        heads={[byYear ? 'Year' : 'Month', ...OUTCOMES.map((kind) => OUTCOME_WORD[kind]), 'All']}
        rows={intake.map(({ period, outcomes }) => [
          periodWord(period),
          ...OUTCOMES.map((kind) => count(outcomes[kind])),
          count(OUTCOMES.reduce((sum, kind) => sum + outcomes[kind], 0)),
        ])}
        csv={csv('intake')}
      />
    </section>
  );
}

/** Why covers were replaced, the most frequent reason first. */
export function Scrapped({ trends, csv }: TrendPart) {
  const rows = trends.scrapped.map(({ reason, n }) => ({ label: SCRAP_WORD[reason], n }));
  return (
    <section id="scrapped">
      <h2>Why covers were replaced</h2>
      {rows.length === 0 ? (
        <p>No cover was replaced.</p>
      ) : (
        <>
          <figure class="drawing">
            <p class="view-caption">reasons, the most frequent first; figures add up</p>
            <RowBars id="scrapped-drawn" title="Reasons for replacing" rows={rows} running />
          </figure>
          <TwinTable
            caption="Reasons for replacing"
            heads={['Reason', 'Covers', 'Share', 'Added up']}
            rows={sharesRunning(rows).map(({ label, n, share, running }) => [
              label,
              count(n),
              share,
              running,
            ])}
            csv={csv('scrapped')}
          />
        </>
      )}
    </section>
  );
}

/** How deep covers were cut. */
export function CutDepths({ frame, trends, csv }: TrendPart) {
  const { cuts } = trends;
  const unit = frame.lengthUnit;
  return (
    <section id="cuts">
      <h2>Depth of cut</h2>
      {cuts.bins.length === 0 ? (
        <p>No cut is recorded.</p>
      ) : (
        <>
          <figure class="drawing">
            <p class="view-caption">
              covers by depth of cut, all passes <small>{unit}</small>
            </p>
            <HistogramDrawn id="cuts-drawn" title="Depth of cut" histogram={cuts} unit={unit} />
          </figure>
          <TwinTable
            caption="Depth of cut"
            heads={['From', 'Less than', 'Covers']}
            rows={cuts.bins.map(({ fromMm, n }) => [
              briefLength(fromMm, unit),
              briefLength(fromMm + cuts.widthMm, unit),
              count(n),
            ])}
            csv={csv('cuts')}
          />
        </>
      )}
    </section>
  );
}

/** Longer times than this are counted in weeks, then in months of 30 days. */
const SPANS = [
  { upTo: 20, days: 1 },
  { upTo: 140, days: 7 },
  { upTo: Number.POSITIVE_INFINITY, days: 30 },
];

export function TimesToSign({ trends, csv }: TrendPart) {
  const bins = daysBins(trends.days);
  const days = ({ from, to }: DaysBin) => (from === to ? `${from}` : `${from} to ${to}`);
  return (
    <section id="times">
      <h2>Time from receiving to signing</h2>
      {bins.length === 0 ? (
        <p>No job is signed.</p>
      ) : (
        <>
          <figure class="drawing">
            <p class="view-caption">jobs by whole days from entry to first signature</p>
            <DaysDrawn bins={bins} />
          </figure>
          <TwinTable
            caption="Time to sign"
            heads={['Days', 'Jobs']}
            rows={bins.map((bin) => [days(bin), count(bin.n)])}
            csv={csv('times')}
          />
        </>
      )}
    </section>
  );
}

/** Days in bins of a day, a week or a month, with the empty ones between. */
function daysBins(days: readonly { readonly days: number; readonly n: number }[]): readonly DaysBin[] {
  const most = days.at(-1)?.days ?? -1;
  const span = SPANS.find(({ upTo }) => most <= upTo)!.days;
  return Array.from({ length: Math.floor(most / span) + 1 }, (_, i) => {
    const [from, to] = [i * span, (i + 1) * span - 1];
    const within = days.filter((one) => one.days >= from && one.days <= to);
    return { from, to, n: within.reduce((sum, { n }) => sum + n, 0) };
  });
}

import { MARK_PATTERN_WORD, MARK_PATTERNS } from '../../../shared/words/heatMarks.ts';
import { RowBars } from '../../drawings/trends/rowBars.tsx';
import { patternShares, SHARE_HEADS, Shares, shareCells } from './comebacksPart.tsx';
import type { TrendPart } from './trendPart.ts';
import { count, TwinTable } from './twinTable.tsx';

/** What the heat marks say, by cover type, and of covers that came back. */
export function Patterns({ trends, csv }: TrendPart) {
  const { patterns, patternsBack } = trends;
  const all = MARK_PATTERNS.map((pattern) => ({
    pattern,
    label: MARK_PATTERN_WORD[pattern],
    n: patterns.reduce((sum, { counts }) => sum + (counts[pattern] ?? 0), 0),
  })).filter(({ n }) => n > 0);
  const shares = patternShares(trends);
  return (
    <section id="patterns">
      <h2>What the heat marks say</h2>
      {all.length === 0 ? (
        <p>No heat marks are read on a cover that is decided.</p>
      ) : (
        <>
          <p class="hint">
            Where the marks of a cover are deepest, as kept with its decision. Advice (common practice, no
            source).
          </p>
          <div class="drawing">
            <div class="views">
              <figure class="drawing">
                <p class="view-caption">covers by where the marks lie</p>
                <RowBars
                  id="patterns-drawn"
                  title="Where the heat marks lie"
                  rows={[...all].sort((a, b) => b.n - a.n)}
                />
              </figure>
              <Shares id="by-pattern" caption="share that came back, by where the marks lay" rows={shares} />
            </div>
          </div>
          <TwinTable
            caption="Heat marks by cover type"
            heads={['Cover type', ...all.map(({ label }) => label)]}
            rows={patterns.map(({ name, counts }) => [
              name,
              ...all.map(({ pattern }) => count(counts[pattern] ?? 0)),
            ])}
            csv={csv('patterns')}
          />
          {shares.length > 0 && (
            <TwinTable
              caption="Comebacks by heat marks"
              heads={SHARE_HEADS}
              rows={shares.map(shareCells)}
              csv={csv('pattern-comebacks')}
            />
          )}
          {patternsBack.length > 0 && (
            <p id="patterns-back">
              Covers that came back, by where their marks lay then:{' '}
              {patternsBack.map(({ pattern, n }) => `${MARK_PATTERN_WORD[pattern]} ${count(n)}`).join(', ')}.
            </p>
          )}
        </>
      )}
    </section>
  );
}

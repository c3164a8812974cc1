import type { DecisionKind } from '../../../shared/words/job.ts';
import type { Intake } from '../../../shared/words/trends/trendsShown.ts';
import { DECISION_WORD } from '../../../shared/words/verdicts.ts';
import { Hatch } from '../hatch.tsx';
import { at } from '../lettering.ts';
import { COLUMNS, CountAxis, heightOf } from './countAxis.tsx';

/** From the foot of a column up. */
export const OUTCOMES: readonly (DecisionKind | 'open')[] = ['face', 'face-and-ring', 'replace', 'open'];

/** Told apart by their filling, so that a black and white print tells them too. */
const FILLED: Readonly<Record<DecisionKind | 'open', { readonly class: string; readonly hatch?: string }>> = {
  face: { class: 'bar-plain' },
  'face-and-ring': { class: 'bar-plain', hatch: 'bar-ring' },
  replace: { class: 'bar-lost', hatch: 'bar-cross' },
  open: { class: 'bar-open' },
};

function Hatches() {
  return (
    <defs>
      <Hatch id="bar-ring" size={5} />
      <Hatch id="bar-cross" size={4} turn={135} line="thin" />
    </defs>
  );
}

function Part({
  x,
  y,
  width,
  height,
  kind,
}: {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly kind: DecisionKind | 'open';
}) {
  if (height <= 0) return null;
  const { class: own, hatch } = FILLED[kind];
  const box = { x: at(x), y: at(y), width: at(width), height: at(height) };
  return (
    <>
      <rect {...box} class={own} />
      {hatch && <rect {...box} fill={`url(#${hatch})`} />}
    </>
  );
}

/** What came in by month or year, and what became of it. */
export function IntakeDrawn({ intake }: { readonly intake: readonly Intake[] }) {
  const { width, left, right, bottom, height } = COLUMNS;
  const totals = intake.map(({ outcomes }) => OUTCOMES.reduce((sum, kind) => sum + outcomes[kind], 0));
  const most = Math.max(1, ...totals);
  const up = heightOf(most);
  const step = (right - left) / Math.max(1, intake.length);
  const bar = Math.min(28, step * 0.72);
  const every = Math.max(1, Math.ceil(52 / step));
  return (
    <svg
      viewBox={`0 0 ${width} ${height}`}
      class="trend"
      role="img"
      aria-labelledby="intake-title intake-desc"
    >
      <title id="intake-title">What came in, and what became of it</title>
      <desc id="intake-desc">
        {`${intake.length} columns from ${periodWord(intake[0]?.period ?? '')} to ${periodWord(intake.at(-1)?.period ?? '')}; the most in one is ${most}. The table has the figures.`}
      </desc>
      <Hatches />
      <CountAxis most={most} />
      {intake.map(({ period, outcomes }, i) => {
        const middle = left + step * (i + 0.5);
        let y = bottom;
        return (
          <>
            {OUTCOMES.map((kind) => {
              const high = up(outcomes[kind]);
              y -= high;
              return <Part x={middle - bar / 2} y={y} width={bar} height={high} kind={kind} />;
            })}
            {i % every === 0 && (
              <>
                <path d={`M${at(middle)} ${bottom}v4`} class="thin" />
                <text x={at(middle)} y={bottom + 18} class="label mid">
                  {periodWord(period)}
                </text>
              </>
            )}
          </>
        );
      })}
    </svg>
  );
}

export const OUTCOME_WORD: Readonly<Record<DecisionKind | 'open', string>> = {
  ...DECISION_WORD,
  'face-and-ring': 'Ring, then face',
  open: 'Not decided',
};

/** What each filling means. */
export function IntakeKey() {
  return (
    <ul class="plan-key bar-key">
      {OUTCOMES.map((kind) => (
        <li>
          <svg viewBox="0 0 26 16" width="26" height="16" aria-hidden="true">
            <Part x={1} y={1} width={24} height={14} kind={kind} />
          </svg>
          {OUTCOME_WORD[kind]}
        </li>
      ))}
    </ul>
  );
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** "Nov 2026", or "2026". */
export function periodWord(period: string): string {
  const [year = '', month] = period.split('-');
  return month === undefined ? year : `${MONTHS[Number(month) - 1] ?? month} ${year}`;
}

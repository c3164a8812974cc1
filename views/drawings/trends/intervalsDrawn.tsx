import { printShare } from '../../../shared/words/print.ts';
import type { ShareInterval } from '../../../shared/words/trends/trends.ts';
import { tooFew } from '../../../shared/words/trends/trendsShown.ts';
import { at, fitText, LETTER } from '../lettering.ts';

export interface IntervalRow {
  readonly label: string;
  readonly interval: ShareInterval;
}

const WIDTH = 352;
const LEFT = 6;
const RIGHT = 346;
const ROW = 40;
const STEPS = [0.01, 0.02, 0.05, 0.1, 0.2, 0.25];

/** Shares with how far they may be off, one under another on one axis. What is counted on too few is drawn dashed. */
export function IntervalsDrawn({
  id,
  title,
  rows,
}: {
  readonly id: string;
  readonly title: string;
  readonly rows: readonly IntervalRow[];
}) {
  const most = Math.max(0.02, ...rows.map(({ interval }) => interval.high));
  const step = STEPS.find((one) => most / one <= 5) ?? 0.25;
  const end = Math.ceil(most / step - 1e-9) * step;
  const x = (share: number) => LEFT + ((RIGHT - LEFT) * share) / end;
  const bottom = rows.length * ROW + 6;
  const ticks = Array.from({ length: Math.round(end / step) + 1 }, (_, i) => i * step);
  return (
    <svg
      viewBox={`0 0 ${WIDTH} ${bottom + 24}`}
      class="trend"
      role="img"
      aria-labelledby={`${id}-title ${id}-desc`}
    >
      <title id={`${id}-title`}>{title}</title>
      <desc id={`${id}-desc`}>
        {rows
          .map(
            ({ label, interval }) =>
              `${label}: ${printShare(interval.low)} to ${printShare(interval.high)}${tooFew(interval) ? ', too few to tell' : ''}.`,
          )
          .join(' ')}
      </desc>
      {ticks.map((share, i) => (
        <>
          <path d={`M${at(x(share))} 0V${bottom}`} class="hair" />
          <text
            x={at(x(share))}
            y={bottom + 18}
            class={`label ${i === 0 ? '' : i === ticks.length - 1 ? 'end' : 'mid'}`}
          >
            {printShare(share, 0)}
          </text>
        </>
      ))}
      <path d={`M${LEFT} ${bottom}H${RIGHT}`} class="thin" />
      {rows.map(({ label, interval }, i) => {
        const y = i * ROW + 28;
        const dashed = tooFew(interval) ? ' dash' : '';
        return (
          <>
            <text x={LEFT + 2} y={y - 12} class="halo">
              {fitText(label, LETTER, RIGHT - LEFT - 4)}
            </text>
            <path d={`M${at(x(interval.low))} ${y}H${at(x(interval.high))}`} class={`thick${dashed}`} />
            <path
              d={`M${at(x(interval.low))} ${y - 5}v10M${at(x(interval.high))} ${y - 5}v10`}
              class="thick"
            />
            <circle cx={at(x(interval.share))} cy={y} r={4} class="st-measured" />
          </>
        );
      })}
    </svg>
  );
}

import { printShare } from '../../../shared/words/print.ts';
import { at, fitText, LETTER } from '../lettering.ts';

export interface RowBar {
  readonly label: string;
  readonly n: number;
}

const WIDTH = 352;
const LEFT = 2;
const RIGHT = 292;
const ROW = 40;

/** Counts as bars under each other, the most first, each with its share of all; `running` adds them up. */
export function RowBars({
  id,
  title,
  rows,
  running = false,
}: {
  readonly id: string;
  readonly title: string;
  readonly rows: readonly RowBar[];
  readonly running?: boolean;
}) {
  const total = rows.reduce((sum, { n }) => sum + n, 0);
  const most = Math.max(1, ...rows.map(({ n }) => n));
  let before = 0;
  return (
    <svg
      viewBox={`0 0 ${WIDTH} ${rows.length * ROW + 8}`}
      class="trend"
      role="img"
      aria-labelledby={`${id}-title ${id}-desc`}
    >
      <title id={`${id}-title`}>{title}</title>
      <desc id={`${id}-desc`}>{rows.map(({ label, n }) => `${label}: ${n} of ${total}.`).join(' ')}</desc>
      {rows.map(({ label, n }, i) => {
        const y = i * ROW + 14;
        before += n;
        return (
          <>
            <text x={LEFT} y={y}>
              {fitText(label, LETTER, RIGHT - LEFT)}
            </text>
            <rect
              x={LEFT}
              y={y + 5}
              width={at(Math.max(1, ((RIGHT - LEFT) * n) / most))}
              height={14}
              class="bar-plain"
            />
            <text x={WIDTH - 2} y={y + 17} class="end strong">
              {printShare(running ? before / total : n / total, 0)}
            </text>
          </>
        );
      })}
    </svg>
  );
}

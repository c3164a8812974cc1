import { at } from './lettering.ts';

export interface SpreadSharesProps {
  /** Shares of the variance, which add up to one. */
  readonly shares: readonly { readonly name: string; readonly share: number }[];
}

const WIDTH = 352;
const LEFT = 128;
const RIGHT = WIDTH - 52;
const ROW = 30;

/** What the spread of readings is made of: a bar for each source, as long as its share of the variance. */
export function SpreadShares({ shares }: SpreadSharesProps) {
  return (
    <svg
      viewBox={`0 0 ${WIDTH} ${ROW * shares.length + 8}`}
      class="stud-drawing"
      role="img"
      aria-labelledby="spread-title spread-desc"
    >
      <title id="spread-title">What the spread is made of</title>
      <desc id="spread-desc">
        {shares.map(({ name, share }) => `${name} ${percent(share)} of the variance`).join('; ')}.
      </desc>
      {shares.map(({ name, share }, i) => {
        const y = 4 + ROW * i;
        const long = (RIGHT - LEFT) * share;
        return (
          <>
            <text x={LEFT - 8} y={y + 18} class="end">
              {name}
            </text>
            <rect x={LEFT} y={y + 5} width={at(long)} height={17} class="st-core" />
            <text x={at(LEFT + long + 6)} y={y + 18} class="strong">
              {percent(share)}
            </text>
          </>
        );
      })}
      <path d={`M${LEFT} 2V${ROW * shares.length + 6}`} class="thin" />
    </svg>
  );
}

const percent = (share: number) => `${(100 * share).toFixed(1)} %`;

import { at } from '../lettering.ts';
import { countScale } from './countScale.ts';

/** Everything the columns of a count are drawn in. */
export const COLUMNS = { width: 352, left: 52, right: 342, top: 14, bottom: 168, height: 196 } as const;

/** How high so many stand. */
export function heightOf(most: number): (n: number) => number {
  const scale = countScale(most);
  return (n) => ((COLUMNS.bottom - COLUMNS.top) * n) / scale.most;
}

/** The counts up the left side, each with a hair line across. */
export function CountAxis({ most }: { readonly most: number }) {
  const { left, right, bottom } = COLUMNS;
  const height = heightOf(most);
  return (
    <>
      {countScale(most).ticks.map(({ n, text }) => (
        <>
          <path
            d={`M${left - 5} ${at(bottom - height(n))}H${n === 0 ? right : left}`}
            class={n === 0 ? 'thick' : 'thin'}
          />
          {n > 0 && <path d={`M${left} ${at(bottom - height(n))}H${right}`} class="hair" />}
          <text x={left - 9} y={at(bottom - height(n) + 4)} class="label end">
            {text}
          </text>
        </>
      ))}
    </>
  );
}

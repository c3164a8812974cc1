import { arrowHead } from '../dimension.tsx';
import { at } from '../lettering.ts';

/** What a symbol of a drawing stands for: `r_o` is set as r with a small o below. */
export type Named = readonly [symbol: string, words: string];

export interface SymbolDrawing {
  readonly title: string;
  readonly names: readonly Named[];
  readonly height: number;
  readonly Draw: (props: { hatch: string }) => preact.JSX.Element;
}

const halves = (symbol: string) => {
  const [base = '', below] = symbol.split('_');
  return { base, below };
};

/** A symbol in a drawing. */
export function Sign({
  x,
  y,
  of,
  to = 'mid',
}: {
  x: number;
  y: number;
  of: string;
  to?: 'mid' | 'end' | '';
}) {
  const { base, below } = halves(of);
  return (
    <text x={at(x)} y={at(y)} class={`symbol halo ${to}`}>
      {base}
      {below && (
        <tspan dy="3" class="symbol-below">
          {below}
        </tspan>
      )}
    </text>
  );
}

/** The same in words beside a drawing. */
export function SignInWords({ of }: { of: string }) {
  const { base, below } = halves(of);
  return (
    <i>
      {base}
      {below && <sub>{below}</sub>}
    </i>
  );
}

interface Dimensioned {
  readonly of: string;
  /** Where its extension lines leave the part. */
  readonly from?: readonly [number, number];
  /** The arrows point at it from outside. */
  readonly outside?: boolean;
}

/** A length along the drawing. */
export function Across({
  a,
  b,
  y,
  of,
  from,
  outside = false,
}: Dimensioned & { a: number; b: number; y: number }) {
  const past = y + (from !== undefined && from[0] > y ? -5 : 5);
  return (
    <g>
      {from && (
        <path
          d={`M${at(a)} ${at(from[0])}V${at(past)}M${at(b)} ${at(from[1])}V${at(past)}`}
          class="extension"
        />
      )}
      <path
        d={outside ? `M${at(a - 15)} ${at(y)}H${at(b + 15)}` : `M${at(a)} ${at(y)}H${at(b)}`}
        class="dim"
      />
      <path
        d={
          outside
            ? arrowHead(a, y, 'right') + arrowHead(b, y, 'left')
            : arrowHead(a, y, 'left') + arrowHead(b, y, 'right')
        }
        class="arrow"
      />
      <Sign x={(a + b) / 2} y={y - 5} of={of} />
    </g>
  );
}

/** A length up the drawing; its symbol stands to the right of it. */
export function Upward({
  top,
  bottom,
  x,
  of,
  from,
  outside = false,
}: Dimensioned & { top: number; bottom: number; x: number }) {
  const past = x + (from !== undefined && from[0] > x ? -5 : 5);
  return (
    <g>
      {from && (
        <path
          d={`M${at(from[0])} ${at(top)}H${at(past)}M${at(from[1])} ${at(bottom)}H${at(past)}`}
          class="extension"
        />
      )}
      <path
        d={outside ? `M${at(x)} ${at(top - 15)}V${at(bottom + 15)}` : `M${at(x)} ${at(top)}V${at(bottom)}`}
        class="dim"
      />
      <path
        d={
          outside
            ? arrowHead(x, top, 'down') + arrowHead(x, bottom, 'up')
            : arrowHead(x, top, 'up') + arrowHead(x, bottom, 'down')
        }
        class="arrow"
      />
      <Sign x={x + 6} y={outside ? top - 7 : (top + bottom) / 2 + 5} of={of} to="" />
    </g>
  );
}

/** A word in a drawing, for a place that is no symbol. */
export function Word({
  x,
  y,
  to = 'mid',
  children,
}: {
  x: number;
  y: number;
  to?: 'mid' | 'end' | '';
  children: string;
}) {
  return (
    <text x={at(x)} y={at(y)} class={`label halo ${to}`}>
      {children}
    </text>
  );
}

import { at, type Box, LETTER, overlaps, textWidth } from './lettering.ts';

type Way = 'left' | 'right' | 'up' | 'down';
const LONG = 8;
const HALF = 2.6;

/** A filled arrowhead with its tip at a place. */
export function arrowHead(x: number, y: number, points: Way): string {
  switch (points) {
    case 'left':
      return `M${at(x)} ${at(y)}l${LONG} ${-HALF}v${2 * HALF}Z`;
    case 'right':
      return `M${at(x)} ${at(y)}l${-LONG} ${-HALF}v${2 * HALF}Z`;
    case 'up':
      return `M${at(x)} ${at(y)}l${-HALF} ${LONG}h${2 * HALF}Z`;
    case 'down':
      return `M${at(x)} ${at(y)}l${-HALF} ${-LONG}h${2 * HALF}Z`;
  }
}

/** A length along the drawing: its two ends, its figure, and the word that says which length it is. */
export interface Length {
  readonly from: number;
  readonly to: number;
  readonly figure: string;
  readonly word: string;
  /** The length decides against the part. */
  readonly bad?: boolean;
  /** Where the extension lines start: the part's edge. */
  readonly partFrom: number;
  readonly partTo: number;
}

export interface PlacedLength extends Length {
  readonly row: number;
  readonly arrows: 'inside' | 'outside';
  /** Where the figure stands: between the arrows, or outside at one side. */
  readonly lettering: 'between' | 'left' | 'right';
  readonly box: Box;
}

export const ROW = 36;
const FIGURE = 15;
const TAIL = 14;

/**
 * Puts lengths into as few rows as keep them apart. A figure that has no room between its arrows stands outside
 * them, on the side that stays within the drawing (ISO 129-1).
 */
export function placeLengths(lengths: readonly Length[], left: number, right: number): PlacedLength[] {
  const placed: PlacedLength[] = [];
  for (const length of lengths) {
    const [a, b] = [Math.min(length.from, length.to), Math.max(length.from, length.to)];
    const width = Math.max(textWidth(length.figure, FIGURE), textWidth(length.word, LETTER));
    const fits = b - a >= width + 6;
    const arrows = b - a >= 2 * LONG + 6 ? 'inside' : 'outside';
    const reach = width + 6 + (arrows === 'outside' ? TAIL : 4);
    const sides: readonly PlacedLength['lettering'][] = fits ? ['between'] : ['left', 'right'];
    let best: PlacedLength | null = null;
    for (let row = 0; best === null && row < Math.max(6, lengths.length); row++) {
      for (const lettering of sides) {
        const spare = arrows === 'outside' ? TAIL : 0;
        const box = {
          left: lettering === 'left' ? a - reach : a - spare,
          right: lettering === 'right' ? b + reach : b + spare,
          top: row,
          bottom: row + 1,
        };
        const within = box.left >= left && box.right <= right;
        if (within && !placed.some((other) => overlaps(box, other.box, 0))) {
          best = { ...length, row, arrows, lettering, box };
          break;
        }
      }
    }
    placed.push(
      best ?? {
        ...length,
        row: placed.length,
        arrows,
        lettering: 'right',
        box: { left: a, right: b, top: placed.length, bottom: placed.length + 1 },
      },
    );
  }
  return placed;
}

/** One placed length. Rows go away from the part: downward from `y` below it, upward above it. */
export function Dimension({ length, y, away }: { length: PlacedLength; y: number; away: 'down' | 'up' }) {
  const sign = away === 'down' ? 1 : -1;
  const line = y + sign * ROW * length.row;
  const beyond = line + sign * 5;
  const [a, b] = [Math.min(length.from, length.to), Math.max(length.from, length.to)];
  const [partA, partB] =
    length.from <= length.to ? [length.partFrom, length.partTo] : [length.partTo, length.partFrom];
  const spare = length.arrows === 'outside' ? TAIL : 0;
  const lineLeft = length.lettering === 'left' ? length.box.left : a - spare;
  const lineRight = length.lettering === 'right' ? length.box.right : b + spare;
  const textX =
    length.lettering === 'between' ? (a + b) / 2 : length.lettering === 'left' ? lineLeft + 2 : lineRight - 2;
  const anchor = length.lettering === 'between' ? 'mid' : length.lettering === 'left' ? '' : 'end';
  const bad = length.bad ? ' dim-bad' : '';
  return (
    <g class="dimension">
      <path
        d={`M${at(a)} ${at(partA)}V${at(beyond)}M${at(b)} ${at(partB)}V${at(beyond)}`}
        class="extension"
      />
      <path d={`M${at(lineLeft)} ${at(line)}H${at(lineRight)}`} class="dim" />
      <path
        d={
          length.arrows === 'inside'
            ? arrowHead(a, line, 'left') + arrowHead(b, line, 'right')
            : arrowHead(a, line, 'right') + arrowHead(b, line, 'left')
        }
        class="arrow"
      />
      <text x={at(textX)} y={at(line - 4)} class={`dim-figure halo ${anchor}${bad}`}>
        {length.figure}
      </text>
      <text x={at(textX)} y={at(line + LETTER)} class={`label halo ${anchor}${bad}`}>
        {length.word}
      </text>
    </g>
  );
}

import { type LengthUnit, lengthFigure, printLength } from '../../shared/words/print.ts';
import { arrowHead } from './dimension.tsx';
import { at, LETTER, textWidth } from './lettering.ts';

// Dimensions that carry the letter of a box beside the drawing, and its figure once it is typed.

export const LETTERED_WIDTH = 352;
/** How far a dimension line goes past what it measures where its arrows point inward from outside. */
export const TAIL = 15;
const ARROWS = 24;

/** As a shop letters it: a drawing needs no ends of nothing. */
export function letteredFigure(mm: number | null, unit: LengthUnit): string {
  return mm === null ? '' : lengthFigure(mm, unit).replace(/(\.\d{2,}?)0+$/, '$1');
}

export function letteredDiameter(mm: number | null, unit: LengthUnit): string {
  return mm === null ? '' : `Ø ${letteredFigure(mm, unit)}`;
}

export const letteredWidth = (letter: string, text: string) => textWidth(`${letter}  ${text}`, LETTER);

export interface LetteredText {
  readonly letter: string;
  readonly text: string;
}

export function Lettered({ letter, text, x, y }: LetteredText & { x: number; y: number }) {
  const half = letteredWidth(letter, text) / 2;
  const middle = Math.max(1 + half, Math.min(x, LETTERED_WIDTH - 1 - half));
  return (
    <text x={at(middle)} y={at(y)} class="label lettered halo mid">
      <tspan class="letter-drawn">{letter}</tspan>
      {text && `\u00a0\u00a0${text}`}
    </text>
  );
}

/** A thin thing measured upright: its arrows point at it from outside. */
export function Upright({ x, top, bottom }: { x: number; top: number; bottom: number }) {
  return (
    <>
      <path
        d={`M${at(x)} ${at(top - TAIL)}V${at(top)}M${at(x)} ${at(bottom)}V${at(bottom + TAIL)}`}
        class="dim"
      />
      <path d={arrowHead(x, top, 'down') + arrowHead(x, bottom, 'up')} class="arrow" />
    </>
  );
}

/** A length along the drawing, its extension lines from the part; lettered at its right where there is no room between. */
export function LetteredLength(props: LetteredText & { from: number; to: number; part: number; y: number }) {
  const { letter, text, from, to, part, y } = props;
  const wide = letteredWidth(letter, text);
  const inside = to - from >= ARROWS;
  const between = to - from >= wide + 6;
  const beyond = y > part ? y + 5 : y - 5;
  const end = between ? to : to + (inside ? 4 : TAIL) + wide + 4;
  return (
    <g class="dimension">
      <path
        d={`M${at(from)} ${at(part)}V${at(beyond)}M${at(to)} ${at(part)}V${at(beyond)}`}
        class="extension"
      />
      <path d={`M${at(inside ? from : from - TAIL)} ${at(y)}H${at(end)}`} class="dim" />
      <path
        d={
          inside
            ? arrowHead(from, y, 'left') + arrowHead(to, y, 'right')
            : arrowHead(from, y, 'right') + arrowHead(to, y, 'left')
        }
        class="arrow"
      />
      <Lettered letter={letter} text={text} x={between ? (from + to) / 2 : end - wide / 2 - 2} y={y - 5} />
    </g>
  );
}

/** The sentence a listener gets instead of the drawing: what is entered, letter by letter. */
export function lettersInWords<Key extends string>(
  fields: Readonly<Record<NoInfer<Key>, { readonly letter: string; readonly label: string }>>,
  figures: Readonly<Record<Key, number | null>>,
  { unit, thread = null }: { readonly unit: LengthUnit; readonly thread?: string | null },
): string {
  const entered = (Object.keys(figures) as Key[]).flatMap((key) => {
    const mm = figures[key];
    return mm === null ? [] : [`${fields[key].letter}, ${fields[key].label}: ${printLength(mm, unit)}`];
  });
  const all = thread === null ? entered : [`Thread ${thread}`, ...entered];
  return all.length === 0 ? 'No figure is entered yet.' : `${all.join('; ')}.`;
}

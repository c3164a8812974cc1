/** Everything a drawing needs to keep its lettering apart. Sizes and places are in the drawing's own units. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Never less: a drawing 352 wide is shown at 328 px or more, so this stays above 12 px on screen. */
export const LETTER = 13;

/** Widths of the letters as shares of their size, measured on the typeface and rounded up. */
function advance(letter: string): number {
  if ('.,:;il|j’·I'.includes(letter)) return 0.25;
  if (letter === ' ') return 0.21;
  if ('frt°()/-×'.includes(letter)) return 0.42;
  if ('mwMW%—'.includes(letter)) return 0.8;
  if (letter >= 'A' && letter <= 'Z') return 0.59;
  return 0.52;
}

export function textWidth(text: string, size: number): number {
  return [...text].reduce((sum, letter) => sum + advance(letter), 0) * size;
}

/** Cuts a text to a width, with an ellipsis. */
export function fitText(text: string, size: number, width: number): string {
  if (textWidth(text, size) <= width) return text;
  const letters = [...text];
  while (letters.length > 1 && textWidth(`${letters.join('')}…`, size) > width) letters.pop();
  return `${letters.join('').trimEnd()}…`;
}

export function boxRound(centre: Point, width: number, height: number): Box {
  return {
    left: centre.x - width / 2,
    right: centre.x + width / 2,
    top: centre.y - height / 2,
    bottom: centre.y + height / 2,
  };
}

export function overlaps(a: Box, b: Box, apart = 0): boolean {
  return (
    a.left < b.right + apart &&
    b.left < a.right + apart &&
    a.top < b.bottom + apart &&
    b.top < a.bottom + apart
  );
}

export function inside(inner: Box, outer: Box): boolean {
  return (
    inner.left >= outer.left &&
    inner.right <= outer.right &&
    inner.top >= outer.top &&
    inner.bottom <= outer.bottom
  );
}

/** Shortest way from a point to a straight piece of line. */
export function pointToSegment(point: Point, from: Point, to: Point): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const along =
    dx === 0 && dy === 0 ? 0 : ((point.x - from.x) * dx + (point.y - from.y) * dy) / (dx * dx + dy * dy);
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(point.x - from.x - t * dx, point.y - from.y - t * dy);
}

/** Whether a straight piece of line enters a box, tried at every unit of its length. */
export function segmentEnters(from: Point, to: Point, box: Box): boolean {
  const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y)));
  for (let i = 0; i <= steps; i++) {
    const x = from.x + ((to.x - from.x) * i) / steps;
    const y = from.y + ((to.y - from.y) * i) / steps;
    if (x > box.left && x < box.right && y > box.top && y < box.bottom) return true;
  }
  return false;
}

/** A coordinate as it is written into a drawing: to a hundredth, no minus before nothing. */
export function at(value: number): string {
  const rounded = Math.round(value * 100) / 100;
  return Object.is(rounded, -0) ? '0' : String(rounded);
}

/** Moves apart what stands too close in one direction, keeping the order and staying within the ends. */
export function spread(wanted: readonly number[], apart: number, least: number, most: number): number[] {
  const order = wanted.map((value, index) => ({ value, index })).sort((a, b) => a.value - b.value);
  const placed: number[] = [];
  for (const { value } of order) {
    const before = placed.at(-1);
    placed.push(Math.max(value, before === undefined ? least : before + apart));
  }
  for (let i = placed.length - 1; i >= 0; i--) {
    const after = placed[i + 1];
    placed[i] = Math.min(placed[i] ?? most, after === undefined ? most : after - apart);
  }
  const result = new Array<number>(wanted.length).fill(0);
  order.forEach(({ index }, i) => {
    result[index] = placed[i] ?? 0;
  });
  return result;
}

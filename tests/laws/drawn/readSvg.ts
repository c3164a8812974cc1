import { readdirSync, readFileSync } from 'node:fs';
import { type DefaultTreeAdapterTypes, parseFragment } from 'parse5';
import { expect } from 'vitest';
import { LETTER, textWidth } from '../../../views/drawings/lettering.ts';

/** A drawing read back from its markup, in its own units: what a person sees, not what the code meant. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Shape {
  readonly tag: string;
  readonly classes: readonly string[];
  readonly fill: string;
  readonly text: string;
  readonly attribute: (name: string) => number;
  readonly raw: (name: string) => string;
  /** Of a path: every line it is made of, ends of curves only; of a rectangle: its four corners. */
  readonly lines: readonly (readonly Point[])[];
  /** The dimension it belongs to, counted in the drawing; -1 for none. */
  readonly dimension: number;
}

export interface Drawing {
  readonly name: string;
  readonly shapes: readonly Shape[];
  readonly texts: readonly string[];
  readonly of: (tag: string, className?: string) => readonly Shape[];
}

type Element = DefaultTreeAdapterTypes.Element;
const isElement = (node: DefaultTreeAdapterTypes.Node): node is Element => 'tagName' in node;

/** Every drawing of a page, in order; patterns and clips, which draw nothing by themselves, are left out. */
export function readDrawings(html: string): Drawing[] {
  const found: Drawing[] = [];
  const seek = (node: DefaultTreeAdapterTypes.Node) => {
    if (isElement(node) && node.tagName === 'svg') found.push(drawingOf(node));
    else if ('childNodes' in node) node.childNodes.forEach(seek);
  };
  seek(parseFragment(html));
  return found;
}

export function readDrawing(html: string): Drawing {
  const [drawing, ...more] = readDrawings(html);
  expect(more).toEqual([]);
  return drawing!;
}

const attributeOf = (element: Element, name: string) =>
  element.attrs.find((one) => one.name === name)?.value ?? '';

function textOf(node: DefaultTreeAdapterTypes.Node): string {
  if ('value' in node) return node.value;
  return 'childNodes' in node ? node.childNodes.map(textOf).join('') : '';
}

function drawingOf(svg: Element): Drawing {
  const shapes: Shape[] = [];
  let dimensions = -1;
  const walk = (element: Element, within: number) => {
    for (const child of element.childNodes.filter(isElement)) {
      if (['defs', 'title', 'desc'].includes(child.tagName)) continue;
      const classes = attributeOf(child, 'class').split(' ').filter(Boolean);
      const dimension = child.tagName === 'g' && classes.includes('dimension') ? ++dimensions : within;
      if (child.tagName !== 'g') shapes.push(shapeOf(child, classes, dimension));
      walk(child, dimension);
    }
  };
  walk(svg, -1);
  return {
    name: attributeOf(svg, 'class'),
    shapes,
    texts: shapes.filter(({ tag }) => tag === 'text').map(({ text }) => text),
    of: (tag, className) =>
      shapes.filter((one) => one.tag === tag && (className === undefined || one.classes.includes(className))),
  };
}

function shapeOf(element: Element, classes: readonly string[], dimension: number): Shape {
  const raw = (name: string) => attributeOf(element, name);
  const attribute = (name: string) => {
    expect(raw(name), `${name} of a ${element.tagName}`).toMatch(/^-?[\d.]+$/);
    return Number(raw(name));
  };
  const box = () => {
    const [x, y] = ['x', 'y'].map((name) => (raw(name) === '' ? 0 : attribute(name))) as [number, number];
    const [width, height] = ['width', 'height'].map(attribute) as [number, number];
    expect(Math.min(width, height), 'a rectangle has no less than no width').toBeGreaterThanOrEqual(0);
    return [
      { x, y },
      { x: x + width, y },
      { x: x + width, y: y + height },
      { x, y: y + height },
    ];
  };
  return {
    tag: element.tagName,
    classes,
    fill: raw('fill'),
    text: element.tagName === 'text' ? textOf(element) : '',
    attribute,
    raw,
    lines: element.tagName === 'path' ? linesOf(raw('d')) : element.tagName === 'rect' ? [box()] : [],
    dimension,
  };
}

/** A path's lines with absolute places. */
function linesOf(d: string): Point[][] {
  const steps = [...d.matchAll(/([a-zA-Z])|(-?\d*\.?\d+(?:e-?\d+)?)/g)];
  const lines: Point[][] = [];
  let [x, y, startX, startY] = [0, 0, 0, 0];
  let command = '';
  let i = 0;
  const next = () => Number(steps[i++]![0]);
  while (i < steps.length) {
    if (steps[i]![1] !== undefined) command = steps[i++]![0];
    const relative = command === command.toLowerCase();
    const [fromX, fromY] = relative ? [x, y] : [0, 0];
    switch (command.toUpperCase()) {
      case 'M':
        [x, y] = [fromX + next(), fromY + next()];
        [startX, startY] = [x, y];
        lines.push([]);
        command = relative ? 'l' : 'L';
        break;
      case 'L':
      case 'T':
        [x, y] = [fromX + next(), fromY + next()];
        break;
      case 'H':
        x = fromX + next();
        break;
      case 'V':
        y = fromY + next();
        break;
      case 'Q':
        i += 2;
        [x, y] = [fromX + next(), fromY + next()];
        break;
      case 'A':
        i += 5;
        [x, y] = [fromX + next(), fromY + next()];
        break;
      case 'Z':
        [x, y] = [startX, startY];
        break;
      default:
        throw new Error(`A path with ${command} is not read yet: ${d}`);
    }
    lines.at(-1)!.push({ x, y });
  }
  return lines;
}

export const pointsOf = (shape: Shape) => shape.lines.flat();
export const xsOf = (shape: Shape) => pointsOf(shape).map(({ x }) => x);
export const ysOf = (shape: Shape) => pointsOf(shape).map(({ y }) => y);
export const extent = (values: readonly number[]) => ({ from: Math.min(...values), to: Math.max(...values) });

export interface Dimensioned {
  readonly word: string;
  /** In mm, and how far the print may be from the truth. */
  readonly mm: number;
  readonly withinMm: number;
  /** Where the two arrows point, the lesser first. */
  readonly from: number;
  readonly to: number;
  /** Which way the arrows point, and whether they are beyond each other as they must. */
  readonly bad: boolean;
}

/** Every length dimensioned along a drawing: the places its arrows point at, its figure and its word. */
export function dimensionsIn(drawing: Drawing, unit: 'mm' | 'in'): Dimensioned[] {
  const count = Math.max(-1, ...drawing.shapes.map(({ dimension }) => dimension)) + 1;
  return Array.from({ length: count }, (_, index) => {
    const own = drawing.shapes.filter(({ dimension }) => dimension === index);
    const tips = own
      .filter((one) => one.classes.includes('arrow'))
      .flatMap(({ lines }) => lines.map((line) => line[0]!));
    expect(tips, 'a dimension has two arrows').toHaveLength(2);
    for (const one of own.filter(({ classes }) => classes.includes('arrow'))) one.lines.forEach(expectArrow);
    const [a, b] = [...tips].sort((one, other) => one.x - other.x) as [Point, Point];
    expect(a.y, 'both arrows lie on one line').toBe(b.y);
    // The lines it is measured from run through the places its arrows point at.
    const extensions = own.filter((one) => one.classes.includes('extension')).flatMap(({ lines }) => lines);
    for (const tip of [a, b]) {
      const through = extensions.filter((line) => line.every(({ x }) => x === tip.x));
      expect(through.length, 'an arrow ends at a line of its own').toBeGreaterThan(0);
      expect(through.some((line) => crosses(line, tip.y))).toBe(true);
    }
    const figure = own.find((one) => one.classes.includes('dim-figure'));
    const word = own.find((one) => one.classes.includes('label'));
    expect([figure?.text, word?.text], 'a dimension has a figure and a word').not.toContain(undefined);
    return {
      word: word!.text,
      ...lengthIn(figure!.text, unit),
      from: a.x,
      to: b.x,
      bad: figure!.classes.includes('dim-bad'),
    };
  });
}

/** A slim head, as long to either side of its line: 8 long and 5.2 wide in every drawing. */
function expectArrow([tip, a, b]: readonly Point[]): void {
  expect(a!.x, 'a head ends square').toBe(b!.x);
  expect(Math.abs(a!.x - tip!.x)).toBeCloseTo(8, 6);
  expect([Math.abs(a!.y - tip!.y), Math.abs(b!.y - tip!.y)].map((half) => half.toFixed(6))).toEqual([
    '2.600000',
    '2.600000',
  ]);
  expect(a!.y).not.toBeCloseTo(b!.y, 6);
}

function crosses(line: readonly Point[], y: number): boolean {
  const { from, to } = extent(line.map((point) => point.y));
  return from <= y && y <= to;
}

/** A printed length in mm, with half its last digit and a hundredth of a unit of the drawing beside. */
export function lengthIn(text: string, unit: 'mm' | 'in'): { mm: number; withinMm: number } {
  const found = /-?\d+(?:\.(\d+))?/.exec(text.replace('−', '-'));
  expect(found, `a figure in ${text}`).not.toBeNull();
  const perUnit = unit === 'in' ? 25.4 : 1;
  return {
    mm: Number(found![0]) * perUnit,
    withinMm: 0.5001 * 10 ** -(found![1]?.length ?? 0) * perUnit,
  };
}

/** Two lengths of a drawing that are the same but for the hundredth to which places are written. */
export function expectNear(actual: number, wanted: number, within: number, what: string): void {
  expect(Math.abs(actual - wanted), `${what}: ${actual} is drawn, ${wanted} is meant`).toBeLessThanOrEqual(
    within,
  );
}

const STYLES = readdirSync('views/assets')
  .filter((name) => name.endsWith('.css'))
  .map((name) => readFileSync(`views/assets/${name}`, 'utf8'))
  .join('\n');
const STYLED = new Set([...STYLES.matchAll(/\.([a-z][\w-]*)/g)].map(([, name]) => name!));

interface Box extends Readonly<Record<'left' | 'top' | 'right' | 'bottom', number>> {}

/** Where a piece of lettering lies: as wide as it is at most, as high as its capitals. */
function lettered(text: Shape): Box {
  const size = text.classes.includes('figure-text') ? 17 : text.classes.includes('dim-figure') ? 15 : LETTER;
  const width = textWidth(text.text, size);
  const [x, y] = [text.attribute('x'), text.attribute('y')];
  const left = text.classes.includes('mid') ? x - width / 2 : text.classes.includes('end') ? x - width : x;
  return { left, right: left + width, top: y - 0.7 * size, bottom: y };
}

/**
 * What holds for every drawing: it is named and described, everything in it is on its paper and has a style, no
 * lettering lies on other lettering, and the paper is no larger than what is on it.
 */
export function expectOrderly(html: string, { blank = 24, crowded = false } = {}): void {
  for (const svg of html.match(/<svg.*?<\/svg>/gs) ?? []) {
    const [drawing] = readDrawings(svg);
    if (!drawing || !svg.includes('role="img"')) continue;
    const box = /viewBox="(-?[\d.]+) (-?[\d.]+) ([\d.]+) ([\d.]+)"/.exec(svg);
    expect(box, 'a drawing has its paper').not.toBeNull();
    const [left, top, width, height] = box!.slice(1).map(Number) as [number, number, number, number];
    const [, titleId, descId] = /aria-labelledby="(\S+) (\S+)"/.exec(svg) ?? [];
    expect(svg).toMatch(new RegExp(`<title id="${titleId}">[^<]{12,}</title>`));
    expect(svg).toMatch(new RegExp(`<desc id="${descId}">[^<]{8,}</desc>`));
    for (const [, id] of svg.matchAll(/url\(#([^)]+)\)/g)) expect(svg).toContain(` id="${id}"`);
    for (const one of drawing.shapes) {
      const what = `${one.tag} ${one.raw('class')} ${one.raw('d').slice(0, 60)}${one.text}`;
      if (one.tag === 'use') continue;
      expect(one.classes.length > 0 || one.fill !== '', `${what} has a style`).toBe(true);
      for (const name of one.classes)
        expect(STYLED.has(name), `${what}: ${name} is in the style sheets`).toBe(true);
      if (one.tag === 'path') expect(one.lines.length + Number(one.raw('d') === ''), what).toBeGreaterThan(0);
      if (one.tag === 'text') expect(one.text.trim(), 'lettering says something').not.toBe('');
    }
    const letters = drawing.of('text').map((one) => ({ text: one.text, ...lettered(one) }));
    for (const one of letters) {
      expect(one.left, `${one.text} begins on the paper`).toBeGreaterThanOrEqual(left - 2);
      expect(one.right, `${one.text} ends on the paper`).toBeLessThanOrEqual(left + width + 2);
      expect(one.top, `${one.text} is below the upper edge`).toBeGreaterThanOrEqual(top - 3);
      expect(one.bottom, `${one.text} is above the lower edge`).toBeLessThanOrEqual(top + height + 1);
    }
    if (!crowded) {
      letters.forEach((one, index) => {
        for (const other of letters.slice(index + 1)) {
          const apart =
            one.right <= other.left + 2 ||
            other.right <= one.left + 2 ||
            one.bottom <= other.top + 2 ||
            other.bottom <= one.top + 2;
          expect(apart, `${one.text} lies on ${other.text}`).toBe(true);
        }
      });
    }
    const ys = [
      ...drawing.shapes.flatMap((one) => pointsOf(one).map(({ y }) => y)),
      ...drawing.of('circle').flatMap((one) => (one.raw('r') && one.raw('cy') ? [one.attribute('cy')] : [])),
      ...letters.flatMap((one) => [one.top, one.bottom]),
    ];
    const drawn = extent(ys);
    expect(drawn.to, 'the paper ends with the drawing').toBeGreaterThanOrEqual(top + height - blank);
    expect(drawn.from, 'and begins with it').toBeLessThanOrEqual(top + blank);
  }
}

import fc from 'fast-check';
import { expect } from 'vitest';
import type { Nut } from '../../../shared/words/stud/stud.ts';
import { type Dimensioned, type Drawing, expectNear, extent, type Shape, xsOf, ysOf } from './readSvg.ts';

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });

export const anyNut: fc.Arbitrary<Nut> = fc
  .record({
    heightMm: mm(3, 14),
    countersinkMm: mm(0, 0.9),
    bearingOuterDiameterMm: fc.option(mm(14, 30)),
    washerMm: fc.constantFrom(0, 1.5, 2.5),
  })
  .map((changes) => ({
    toleranceMm: 0.2,
    thread: null,
    proofMPa: 827,
    tensileMPa: 827,
    prevailing: false,
    ...changes,
  }));

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

/** Hatched pieces that lie above the axis, from the left: the layers' upper halves. */
function upperHalves(drawing: Drawing): Shape[] {
  return drawing
    .of('rect')
    .filter((one) => one.fill.startsWith('url(') && extent(ysOf(one)).to < 0)
    .sort((a, b) => extent(xsOf(a)).from - extent(xsOf(b)).from);
}

export interface Read {
  readonly drawing: Drawing;
  /** Units of the drawing to a millimeter, along the axis, read from the layers. */
  readonly k: number;
  /** A place along the axis in mm from the face the pads come to. */
  readonly along: (x: number) => number;
  readonly within: number;
}

/** The scale is read from the layers, which are then held to it one by one. */
export function readStack(drawing: Drawing, layersMm: readonly number[]): Read & { layers: Shape[] } {
  const layers = upperHalves(drawing);
  expect(layers, 'every layer is drawn').toHaveLength(layersMm.length);
  const left = extent(xsOf(layers[0]!)).from;
  const k = (extent(xsOf(layers.at(-1)!)).to - left) / sum(layersMm);
  // Places are written to a hundredth; the scale read from two of them is as exact as they are far apart.
  const within = 0.02 / k + (0.02 / (k * sum(layersMm))) * 60;
  let from = 0;
  layers.forEach((layer, index) => {
    const { from: a, to: b } = extent(xsOf(layer));
    expectNear((a - left) / k, from, within, `where layer ${index + 1} begins`);
    from += layersMm[index]!;
    expectNear((b - left) / k, from, within, `where layer ${index + 1} ends`);
    // Its outline goes round what is hatched, above the axis and below.
    const y = extent(ysOf(layer));
    for (const side of [-1, 1]) {
      const outline = drawing.of('path', 'thick').filter((one) => {
        const [x, ys] = [extent(xsOf(one)), extent(ysOf(one).map((place) => -side * place))];
        const ends = [x.from - a, x.to - b, ys.from - y.from, ys.to - y.to];
        return ends.every((off) => Math.abs(off) < 0.03);
      });
      expect(outline, `the outline of layer ${index + 1}`).toHaveLength(1);
    }
  });
  return { drawing, k, along: (x) => (x - left) / k, within, layers };
}

/** What a dimension says is how far its arrows are apart, and it stands where that length is. */
export function expectLength(
  read: Read,
  dimensions: readonly Dimensioned[],
  word: string,
  from: number,
  to: number,
) {
  const [found, ...more] = dimensions.filter((one) => one.word === word);
  expect(more, `one dimension only says ${word}`).toEqual([]);
  expect(found, `the drawing has ${word}`).toBeDefined();
  const [a, b] = [Math.min(from, to), Math.max(from, to)];
  expectNear(read.along(found!.from), a, read.within, `where ${word} begins`);
  expectNear(read.along(found!.to), b, read.within, `where ${word} ends`);
  expectNear(
    (found!.to - found!.from) / read.k,
    found!.mm,
    read.within + found!.withinMm,
    `the figure of ${word}`,
  );
  expectNear(found!.mm, b - a, found!.withinMm, `the figure of ${word}`);
}

export const bounds = (shape: Shape, { along, k }: Read) => ({
  left: along(extent(xsOf(shape)).from),
  right: along(extent(xsOf(shape)).to),
  top: extent(ysOf(shape)).from / k,
  bottom: extent(ysOf(shape)).to / k,
});

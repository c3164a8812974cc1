import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LayerKind, Nut, Stack, Stud } from '../../../shared/words/stud/stud.ts';
import { PullForwardPicture } from '../../../views/drawings/pullForwardPicture.tsx';
import { StackDrawn } from '../../../views/drawings/stackDrawn.tsx';
import { StudInStack } from '../../../views/drawings/studInStack.tsx';
import { renderPart } from '../../../views/render.ts';
import { metric, unified } from '../../calc/stud/example.ts';
import { expectSound } from '../../views/markup.ts';
import {
  type Dimensioned,
  type Drawing,
  dimensionsIn,
  expectNear,
  expectOrderly,
  extent,
  pointsOf,
  readDrawing,
  readDrawings,
  type Shape,
  xsOf,
  ysOf,
} from './readSvg.ts';

const RUNS = { numRuns: 40 };
const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const unit = fc.constantFrom('mm' as const, 'in' as const);
const THREADS = [
  unified(0.375, 24, '2A'),
  unified(0.4375, 20, '2A'),
  unified(0.3125, 18, '3A', 'UNC'),
  metric(10, 1.25, '6g'),
  metric(12, 1.75, '6g'),
] as const;

const anyNut: fc.Arbitrary<Nut> = fc
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

/** Any stud in any stack, with or without nut and gap: short ones, long ones, without a pilot. */
const anyStud = fc
  .record({
    thread: fc.constantFrom(...THREADS),
    start: mm(0, 8),
    threadLong: mm(4, 30),
    pilotLong: mm(0, 15),
    pilotDiameterMm: fc.option(mm(5, 8)),
    layers: fc.array(fc.record({ thicknessMm: mm(1, 12), holeDiameterMm: fc.option(mm(13, 20)) }), {
      minLength: 1,
      maxLength: 4,
    }),
    nut: fc.option(anyNut),
    gap: fc.option(mm(0.5, 8)),
    padThicknessMm: fc.option(mm(6, 14)),
    padDiameterMm: fc.option(mm(30, 40)),
    unit,
    onPaper: fc.boolean(),
  })
  .map((one) => {
    const stud: Stud = {
      thread: one.thread,
      threadStartMm: one.start,
      threadEndMm: one.start + one.threadLong,
      projectionMm: one.start + one.threadLong + one.pilotLong,
      lengthToleranceMm: 0.25,
      pilotDiameterMm: one.pilotDiameterMm,
      tensileMPa: 827,
      proofMPa: 586,
      filletMm: null,
    };
    const stack: Stack = {
      style: 'two-piece',
      layers: one.layers.map((layer, index) => ({
        name: `layer ${index + 1}`,
        toleranceMm: 0.1,
        chamferMm: null,
        ...layer,
      })),
      holeCount: 4,
      holeCircleDiameterMm: 286,
      tipRoomMm: 40,
    };
    const { nut, gap, unit: read, padThicknessMm, padDiameterMm, onPaper } = one;
    return { stud, stack, nut, pullForwardMm: gap, unit: read, padThicknessMm, padDiameterMm, onPaper };
  });

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
const majorMm = ({ thread }: Stud) =>
  thread.system === 'unified' ? thread.majorInch * 25.4 : thread.majorMm;
const pitchMm = ({ thread }: Stud) =>
  thread.system === 'unified' ? 25.4 / thread.threadsPerInch : thread.pitchMm;

/** Hatched pieces that lie above the axis, from the left: the layers' upper halves. */
function upperHalves(drawing: Drawing): Shape[] {
  return drawing
    .of('rect')
    .filter((one) => one.fill.startsWith('url(') && extent(ysOf(one)).to < 0)
    .sort((a, b) => extent(xsOf(a)).from - extent(xsOf(b)).from);
}

interface Read {
  readonly drawing: Drawing;
  /** Units of the drawing to a millimeter, along the axis, read from the layers. */
  readonly k: number;
  /** A place along the axis in mm from the face the pads come to. */
  readonly along: (x: number) => number;
  readonly within: number;
}

/** The scale is read from the layers, which are then held to it one by one. */
function readStack(drawing: Drawing, layersMm: readonly number[]): Read & { layers: Shape[] } {
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
function expectLength(
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

const bounds = (shape: Shape, { along, k }: Read) => ({
  left: along(extent(xsOf(shape)).from),
  right: along(extent(xsOf(shape)).to),
  top: extent(ysOf(shape)).from / k,
  bottom: extent(ysOf(shape)).to / k,
});

describe('a stud in its stack, read back in mm', () => {
  const views = (props: ReturnType<typeof anyStud.generate>['value']) => {
    const html = renderPart(<StudInStack id="s" check={null} {...props} />);
    expectSound(html);
    expectOrderly(html, { blank: 60 });
    return readDrawings(html);
  };

  it('has pad, layers, stud and nut where they are, seated and pushed back', () => {
    fc.assert(
      fc.property(anyStud, (props) => {
        const drawings = views(props);
        expect(drawings).toHaveLength(props.pullForwardMm === null ? 1 : 2);
        drawings.forEach((drawing, index) => {
          const gap = index === 1 ? props.pullForwardMm! : 0;
          const { stud, stack, nut } = props;
          const layersMm = stack.layers.map(({ thicknessMm }) => thicknessMm);
          const stackMm = sum(layersMm);
          const read = readStack(drawing, layersMm);
          const { within, layers } = read;
          const near = (actual: number, wanted: number, what: string) =>
            expectNear(actual, wanted, within, what);
          const major = majorMm(stud);

          layers.forEach((layer, at) => {
            const hole = (stack.layers[at]!.holeDiameterMm ?? major + 0.8) / 2;
            near(bounds(layer, read).bottom, -hole, `the hole of layer ${at + 1}`);
          });
          const pads = drawing.of('rect', 'metal');
          expect(pads).toHaveLength(1);
          const pad = bounds(pads[0]!, read);
          near(pad.right, -gap, 'the face of the pad');
          near(pad.right - pad.left, props.padThicknessMm ?? 10, 'the thickness of the pad');
          near(pad.bottom, Math.max(props.padDiameterMm ?? 0, 2.3 * major) / 2, 'the radius of the pad');
          near(pad.top, -pad.bottom, 'the other half of the pad');

          const bodies = drawing.of('path', 'stud-body');
          expect(bodies).toHaveLength(1);
          const body = bounds(bodies[0]!, read);
          near(body.left, -gap, 'where the stud begins');
          near(body.right, stud.projectionMm - gap, "the stud's tip");
          near(body.bottom, Math.max(major, stud.pilotDiameterMm ?? 0) / 2, 'the radius of the stud');
          near(body.top, -body.bottom, 'the other half of the stud');
          // Ends of full thread thick and across the crests, roots thin and along it (ISO 6410-1).
          const ends = drawing
            .of('path', 'thick')
            .filter((one) => one.lines.length === 2 && one.lines.every((line) => line[0]!.x === line[1]!.x));
          expect(ends).toHaveLength(1);
          const thread = bounds(ends[0]!, read);
          near(thread.left, stud.threadStartMm - gap, 'where the thread begins');
          near(thread.right, stud.threadEndMm - gap, 'where the thread ends');
          near(thread.bottom, major / 2, 'the crest');
          near(thread.top, -major / 2, 'the crest on the other side');
          const roots = drawing
            .of('path', 'thin')
            .filter((one) => one.lines.length === 2 && one.lines.every((line) => line[0]!.y === line[1]!.y));
          const root = bounds(roots[0]!, read);
          near(root.left, thread.left, 'where the roots begin');
          near(root.right, thread.right, 'where the roots end');
          near(root.bottom, major / 2 - 0.6 * pitchMm(stud), 'the root');
          near(root.top, -root.bottom, 'the root on the other side');

          const washers = drawing.of('rect', 'washer');
          const outsides = drawing.of('path', 'nut-outside');
          const phantoms = drawing.of('path', 'phantom');
          const sections = drawing
            .of('path')
            .filter((one) => one.fill.startsWith('url(') && bounds(one, read).left >= stackMm - within);
          const engaged = drawing.of('path', 'engaged');
          const seated = index === 0;
          expect(outsides).toHaveLength(nut && seated ? 1 : 0);
          expect(sections, 'the nut in section').toHaveLength(nut && seated ? 1 : 0);
          expect(phantoms).toHaveLength(nut && !seated ? 1 : 0);
          expect(washers).toHaveLength(nut && seated && nut.washerMm > 0 ? 1 : 0);
          const words = dimensionsIn(drawing, props.unit).map(({ word }) => word);
          if (nut === null) {
            expect(words).not.toContain('engaged');
            expect(engaged).toHaveLength(0);
            return;
          }
          const from = stackMm + nut.washerMm;
          const to = from + nut.heightMm;
          const radius = Math.max(nut.bearingOuterDiameterMm ?? 0, 1.55 * major) / 2;
          for (const [shape, top, bottom] of [
            ...sections.map((one) => [one, -radius, -major / 2] as const),
            ...outsides.map((one) => [one, 0, radius] as const),
            ...phantoms.map((one) => [one, -radius, radius] as const),
          ]) {
            const drawn = bounds(shape, read);
            near(drawn.left, from, 'where the nut begins');
            near(drawn.right, to, 'where the nut ends');
            near(drawn.top, top, 'the outside of the nut');
            near(drawn.bottom, bottom, 'the inside of the nut');
          }
          for (const washer of washers) {
            const drawn = bounds(washer, read);
            near(drawn.left, stackMm, 'where the washer begins');
            near(drawn.right, from, 'where the washer ends');
          }
          // Countersunk at both ends: the crest is narrower than the nut by it, on either side.
          for (const section of sections) {
            const crest = pointsOf(section).filter(({ y }) => Math.abs(y / read.k + major / 2) <= within);
            near(
              extent(crest.map(({ x }) => read.along(x))).from,
              from + nut.countersinkMm,
              'the countersink',
            );
            near(
              extent(crest.map(({ x }) => read.along(x))).to,
              to - nut.countersinkMm,
              'the other countersink',
            );
          }
          const start = Math.max(stud.threadStartMm, from + nut.countersinkMm);
          const end = Math.min(stud.threadEndMm, to - nut.countersinkMm);
          expect(engaged).toHaveLength(seated && end > start ? 1 : 0);
          for (const line of engaged) {
            const drawn = bounds(line, read);
            near(drawn.left, start, 'where thread is engaged');
            near(drawn.right, end, 'where it ceases to be');
            near(drawn.top, -major / 2, 'on the crest');
          }
        });
      }),
      RUNS,
    );
  });

  it('has dimensions whose figures are the distances of their arrows: engaged, stack, beyond or short, gap, thread', () => {
    fc.assert(
      fc.property(anyStud, (props) => {
        views(props).forEach((drawing, index) => {
          const { stud, stack, nut } = props;
          const back = index === 1;
          const gap = back ? props.pullForwardMm! : 0;
          const layersMm = stack.layers.map(({ thicknessMm }) => thicknessMm);
          const stackMm = sum(layersMm);
          const read = readStack(drawing, layersMm);
          const dimensions = dimensionsIn(drawing, props.unit);
          const wanted = new Map<string, readonly [number, number]>();
          const tip = stud.projectionMm - gap;
          wanted.set(tip < stackMm ? 'short' : 'beyond', [stackMm, tip]);
          if (!(back && props.onPaper)) wanted.set('stack', [0, stackMm]);
          if (back) {
            wanted.set('gap', [-gap, 0]);
            const [from, to] = [Math.max(stackMm, stud.threadStartMm - gap), stud.threadEndMm - gap];
            if (to > from) wanted.set('thread', [from, to]);
          } else if (nut) {
            const nutFrom = stackMm + nut.washerMm;
            const from = Math.max(stud.threadStartMm, nutFrom + nut.countersinkMm);
            const to = Math.min(stud.threadEndMm, nutFrom + nut.heightMm - nut.countersinkMm);
            if (to > from) wanted.set('engaged', [from, to]);
          }
          expect(dimensions.map(({ word }) => word).sort()).toEqual([...wanted.keys()].sort());
          for (const [word, [from, to]] of wanted) expectLength(read, dimensions, word, from, to);
          for (const { word, bad } of dimensions) expect(bad, word).toBe(word === 'short');
        });
      }),
      RUNS,
    );
  });

  it('going in, shows how far the pilot is in the last piece, or how far it is short of it', () => {
    fc.assert(
      fc.property(anyStud, mm(-6, 6), (props, into) => {
        const nominal = Math.abs(into) < 0.05 ? 0.05 : into;
        const check = {
          reach: {},
          engagement: null,
          pilot: { intoLastPieceMm: { nominal }, outOfLineMm: null },
        } as unknown as NonNullable<Parameters<typeof StudInStack>[0]['check']>;
        const html = renderPart(<StudInStack id="s" {...props} check={check} onPaper={false} />);
        const drawing = readDrawings(html).at(-1)!;
        const layersMm = props.stack.layers.map(({ thicknessMm }) => thicknessMm);
        const read = readStack(drawing, layersMm);
        const body = bounds(drawing.of('path', 'stud-body')[0]!, read);
        // The thread is about to enter: it ends where the first piece begins.
        const threadEnds = props.stud.projectionMm - props.stud.threadEndMm;
        expectNear(body.right, threadEnds, read.within, "the pilot's end past the first face");
        const face = sum(layersMm.slice(0, -1));
        const dimensions = dimensionsIn(drawing, props.unit);
        expect(dimensions.map(({ word, bad }) => [word, bad])).toEqual([
          nominal < 0 ? ['short', true] : ['pilot in', false],
        ]);
        expectLength(read, dimensions, nominal < 0 ? 'short' : 'pilot in', face, face + nominal);
      }),
      { numRuns: 15 },
    );
  });
});

describe('a flexplate stack as typed, read back in mm', () => {
  const anyStack = fc.record({
    layers: fc.array(
      fc.record({
        name: fc.constantFrom('ring', 'plate', 'casting'),
        kind: fc.constantFrom<LayerKind>('plate', 'casting', 'shim'),
        thicknessMm: mm(1, 12),
        holeDiameterMm: fc.option(mm(9, 16)),
      }),
      { minLength: 1, maxLength: 5 },
    ),
    whole: fc.boolean(),
    nut: fc.option(anyNut),
    gapMm: fc.option(mm(0, 8)),
    unit,
  });

  it('has every layer, its hole, the pad at its gap and the nut, each with its dimension', () => {
    fc.assert(
      fc.property(anyStack, (props) => {
        const html = renderPart(<StackDrawn id="d" usualHoleMm={10.3} {...props} />);
        expectSound(html);
        expectOrderly(html, { blank: 60 });
        const drawing = readDrawing(html);
        const layersMm = props.layers.map(({ thicknessMm }) => thicknessMm);
        const stackMm = sum(layersMm);
        const read = readStack(drawing, layersMm);
        const dimensions = dimensionsIn(drawing, props.unit);
        const { gapMm, nut } = props;
        read.layers.forEach((layer, at) => {
          const given = props.layers[at]!.holeDiameterMm;
          expectNear(
            bounds(layer, read).bottom,
            -(given ?? 10.3) / 2,
            read.within,
            `the hole of layer ${at + 1}`,
          );
        });
        const dashed = drawing.of('path', 'hidden-line').length;
        expect(dashed).toBe(2 * props.layers.filter(({ holeDiameterMm }) => holeDiameterMm === null).length);
        const pads = drawing.of('rect', 'metal');
        expect(pads).toHaveLength(gapMm === null ? 0 : 1);
        for (const pad of pads)
          expectNear(bounds(pad, read).right, -gapMm!, read.within, 'the face of the pad');
        expect(drawing.of('path', 'nut-outside')).toHaveLength(nut === null ? 0 : 1);
        const said = (word: string) => dimensions.filter((one) => one.word === word);
        if (nut !== null) {
          const from = stackMm + nut.washerMm;
          expectLength(read, dimensions, 'nut', from, from + nut.heightMm);
          const section = drawing.of('path').filter((one) => one.fill.startsWith('url('));
          expect(section).toHaveLength(1);
          expectNear(bounds(section[0]!, read).left, from, read.within, 'where the nut begins');
          expectNear(bounds(section[0]!, read).right, from + nut.heightMm, read.within, 'where it ends');
        } else expect(said('nut')).toEqual([]);
        if (gapMm !== null && gapMm > 0) expectLength(read, dimensions, 'gap', -gapMm, 0);
        else expect(said('gap')).toEqual([]);
        if (props.whole && layersMm.length > 1) expectLength(read, dimensions, 'stack', 0, stackMm);
        else expect(said('stack')).toEqual([]);
        // Several layers may be of one kind: each has a dimension of its own, where it lies.
        const ofLayers = dimensions.filter(({ word }) => ['plate', 'casting', 'shim'].includes(word));
        expect(ofLayers).toHaveLength(layersMm.length);
        const inOrder = [...ofLayers].sort((a, b) => a.from - b.from);
        let from = 0;
        inOrder.forEach((one, at) => {
          const layer = props.layers[at]!;
          expect(one.word).toBe(layer.kind);
          expectNear(
            read.along(one.from),
            from,
            read.within,
            `where the dimension of layer ${at + 1} begins`,
          );
          from += layer.thicknessMm;
          expectNear(read.along(one.to), from, read.within, `where the dimension of layer ${at + 1} ends`);
          expectNear(one.mm, layer.thicknessMm, one.withinMm, `the figure of layer ${at + 1}`);
        });
      }),
      RUNS,
    );
  });
});

describe('the pull-forward gap, read back in mm', () => {
  const anyGap = fc.record({
    bareGapMm: mm(1, 12),
    shimMm: fc.oneof(fc.constant(0), mm(0.5, 4)),
    stackMm: fc.option(mm(2, 12)),
    hubEngagementMm: fc.option(mm(5, 30)),
    unit,
  });

  it('goes from pump to hub, converter, pad, shim, gap and flexplate, each length with its own figure', () => {
    fc.assert(
      fc.property(anyGap, (props) => {
        const html = renderPart(<PullForwardPicture id="g" {...props} />);
        expectSound(html);
        expectOrderly(html, { blank: 60 });
        const drawings = readDrawings(html);
        const gapMm = props.bareGapMm - props.shimMm;
        expect(drawings).toHaveLength(gapMm > 0 ? 2 : 1);
        const plates = drawings.map((drawing, index) => {
          const forward = index === 1 ? gapMm : 0;
          const left = Math.max(0, gapMm - forward);
          const sections = drawing.of('rect').filter((one) => one.fill.startsWith('url('));
          expect(sections, 'the pump above and below, and the flexplate').toHaveLength(3);
          const [pump, below, plate] = sections.map((one) => extent(xsOf(one)));
          expect(below).toEqual(pump);
          const k = (plate!.to - plate!.from) / (props.stackMm ?? 5);
          const within = 0.03 / k + (0.03 / (k * (props.stackMm ?? 5))) * 30;
          const read: Read = { drawing, k, along: (x) => (x - plate!.from) / k, within };
          const [hub, converter] = drawing.of('rect', 'metal').map((one) => extent(xsOf(one)));
          const shims = drawing.of('rect', 'st-measured').map((one) => extent(xsOf(one)));
          const shimFaces = props.shimMm > 0 ? shims : [];
          expect(shims).toHaveLength(props.shimMm > 0 ? 2 : 0);
          for (const shim of shimFaces) {
            expectNear(shim.to - shim.from, k * props.shimMm, 0.03, 'the thickness of a shim');
            expectNear(read.along(shim.to), -left, within, 'the gap that is left');
          }
          expectNear(
            (pump!.to - hub!.from) / k,
            (props.hubEngagementMm ?? 15) - forward,
            within,
            'the hub in the pump',
          );
          expectNear(hub!.to, converter!.from, 0.02, 'the hub ends in the converter');
          expect(converter!.from).toBeGreaterThan(pump!.to);
          const dimensions = dimensionsIn(drawing, props.unit);
          const wanted = new Map<string, readonly [number, number]>();
          if (props.hubEngagementMm !== null)
            wanted.set('hub in pump', [read.along(hub!.from), read.along(pump!.to)]);
          if (props.shimMm > 0) wanted.set('shim', [-left - props.shimMm, -left]);
          if (left > 0) wanted.set('gap', [-left, 0]);
          if (props.stackMm !== null) wanted.set('flexplate', [0, props.stackMm]);
          expect(dimensions.map(({ word }) => word).sort()).toEqual([...wanted.keys()].sort());
          for (const [word, [from, to]] of wanted) {
            const found = dimensions.find((one) => one.word === word)!;
            expectNear(read.along(found.from), Math.min(from, to), within, `where ${word} begins`);
            expectNear(read.along(found.to), Math.max(from, to), within, `where ${word} ends`);
            const meant = word === 'hub in pump' ? props.hubEngagementMm! - forward : to - from;
            expectNear(Math.abs(found.mm), Math.abs(meant), found.withinMm + 1e-9, `the figure of ${word}`);
            expect(found.bad, word).toBe(word === 'hub in pump' && meant <= 0);
          }
          return plate!.from;
        });
        // The flexplate stays where it is: what moves is the converter.
        if (plates.length === 2) expectNear(plates[1]!, plates[0]!, 0.03, 'the flexplate');
      }),
      RUNS,
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Stack, Stud } from '../../../shared/words/stud/stud.ts';
import { StudInStack } from '../../../views/drawings/studInStack.tsx';
import { renderPart } from '../../../views/render.ts';
import { metric, unified } from '../../calc/stud/example.ts';
import { expectSound } from '../../views/markup.ts';
import { anyNut, bounds, expectLength, readStack } from './anyStackDrawn.ts';
import { dimensionsIn, expectNear, expectOrderly, extent, pointsOf, readDrawings } from './readSvg.ts';

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

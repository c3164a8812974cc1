import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PullForwardPicture } from '../../../views/drawings/pullForwardPicture.tsx';
import { renderPart } from '../../../views/render.ts';
import { expectSound } from '../../views/markup.ts';
import type { Read } from './anyStackDrawn.ts';
import { dimensionsIn, expectNear, expectOrderly, extent, readDrawings, xsOf } from './readSvg.ts';

const RUNS = { numRuns: 40 };
const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const unit = fc.constantFrom('mm' as const, 'in' as const);

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

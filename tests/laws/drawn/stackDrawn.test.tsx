import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LayerKind } from '../../../shared/words/stud/stud.ts';
import { StackDrawn } from '../../../views/drawings/stackDrawn.tsx';
import { renderPart } from '../../../views/render.ts';
import { expectSound } from '../../views/markup.ts';
import { anyNut, bounds, expectLength, readStack } from './anyStackDrawn.ts';
import { dimensionsIn, expectNear, expectOrderly, readDrawing } from './readSvg.ts';

const RUNS = { numRuns: 40 };
const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const unit = fc.constantFrom('mm' as const, 'in' as const);

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

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

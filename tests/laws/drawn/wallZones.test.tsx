import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { WallZones } from '../../../views/drawings/wallZones.tsx';
import { renderPart } from '../../../views/render.ts';
import { expectSound } from '../../views/markup.ts';
import { middle, upright } from './anyCoverDrawn.ts';
import { expectNear, expectOrderly, extent, lengthIn, pointsOf, readDrawing, xsOf, ysOf } from './readSvg.ts';

const RUNS = { numRuns: 40 };
const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const unit = fc.constantFrom('mm' as const, 'in' as const);

describe('the zones of the wall, read back in mm', () => {
  const anyZones = fc.record({
    minimum: mm(3, 5),
    sure: fc.option(fc.oneof(fc.constant(0), mm(0.002, 0.06))),
    off: mm(-0.3, 0.3),
    both: fc.option(mm(-0.2, 0.2)),
    unit,
  });

  it('has minimum, sure from and every wall left on one scale, each in the zone its words say', () => {
    fc.assert(
      fc.property(anyZones, ({ minimum, sure, off, both, unit: read }) => {
        const [padSide, face] = [minimum + off, minimum + (both ?? 0)];
        const check = {
          leastWall: {
            beforeMm: 6,
            afterMm: minimum + off,
            station: 0,
            standardUncertaintyMm: null,
            expandedUncertaintyMm: null,
            degreesOfFreedom: null,
            sureFromMm: sure === null ? null : minimum + sure,
          },
          minimumWall: { mm: minimum, source: 'the shop', from: 'shop' as const },
          bounds:
            both === null
              ? null
              : {
                  padSideFlat: { dialledMm: 0.4, leastWallMm: padSide },
                  faceFlat: { dialledMm: 0.3, leastWallMm: face },
                },
        };
        const html = renderPart(<WallZones id="z" check={check} unit={read} />);
        expectSound(html);
        expectOrderly(html);
        const drawing = readDrawing(html);
        const sureFrom = minimum + (sure ?? 0);
        const limits = upright(drawing, 'limit');
        const surely = upright(drawing, 'thick');
        expect(limits).toHaveLength(1);
        expect(surely).toHaveLength(sureFrom > minimum ? 1 : 0);
        const marks = drawing.of('path', 'st-core').map((one) => middle(pointsOf(one)));
        const walls = both === null ? [minimum + off] : [padSide, face];
        expect(marks).toHaveLength(walls.length);
        const zone = (name: string) => extent(xsOf(drawing.of('rect', name)[0]!));
        const [thin, unsure, enough] = ['zone-thin', 'zone-unsure', 'zone-enough'].map(zone);
        expectNear(thin!.to, limits[0]!, 0.02, 'too thin ends at the minimum');
        expectNear(unsure!.from, limits[0]!, 0.02, 'not sure enough begins at the minimum');
        expectNear(unsure!.to, surely[0] ?? limits[0]!, 0.02, 'and ends where it is sure');
        expectNear(enough!.from, surely[0] ?? limits[0]!, 0.02, 'where enough begins');
        const frame = drawing.of('rect', 'thin').map((one) => extent(xsOf(one)))[0]!;
        expect([thin!.from, frame.from]).toEqual([6, 6]);
        expectNear(enough!.to, frame.to, 0.02, 'enough ends with the scale');
        expect(frame.to).toBe(346);
        // One scale: the span shown is 1.6 times what lies farthest apart, at least 0.032 mm.
        const all = extent([minimum, sureFrom, ...walls]);
        const span = Math.max(all.to - all.from, 0.02);
        const perMm = 340 / (all.to + 0.3 * span - (all.from - 0.3 * span));
        walls.forEach((wall, index) => {
          expectNear(marks[index]!.x, limits[0]! + perMm * (wall - minimum), 0.03, `wall ${index + 1}`);
          const text = drawing.of('text', 'strong').filter((one) => / left$| runs true$/.test(one.text))[
            index
          ]!;
          const said = lengthIn(text.text, read);
          expectNear(said.mm, wall, said.withinMm, text.text);
          const says =
            wall < minimum - 1e-9 ? 'too thin' : wall < sureFrom - 1e-5 ? 'not sure enough' : 'enough';
          expect(html).toContain(`${text.text}: ${says}.`);
        });
        if (surely.length > 0)
          expectNear(surely[0]!, limits[0]! + perMm * (sureFrom - minimum), 0.03, 'sure from');
        expect(drawing.texts.filter((one) => one.startsWith('sure from'))).toHaveLength(surely.length);
        expect(drawing.texts.filter((one) => one.startsWith('minimum'))).toHaveLength(1);
        // Lines cross the bar, and each wall's line comes down to its mark.
        const bar = extent(ysOf(drawing.of('rect', 'thin')[0]!));
        expect(bar.to - bar.from).toBe(26);
        for (const line of [...drawing.of('path', 'limit'), ...drawing.of('path', 'thick')]) {
          expect(extent(ysOf(line)).from).toBeLessThan(bar.from);
          expect(extent(ysOf(line)).to).toBeGreaterThan(bar.to);
        }
        for (const [index, mark] of marks.entries()) {
          expectNear(mark.y, (bar.from + bar.to) / 2, 0.02, 'a mark lies in the bar');
          const line = drawing.of('path', 'extension')[index]!;
          expect(xsOf(line)).toEqual([mark.x, mark.x]);
          expectNear(extent(ysOf(line)).to, mark.y, 0.02, 'its line comes down to it');
          expect(extent(ysOf(line)).from).toBeLessThan(bar.from);
        }
        for (const [name, word] of [
          ['zone-thin', 'too thin'],
          ['zone-unsure', 'not sure enough'],
          ['zone-enough', 'enough'],
        ] as const) {
          const { from, to } = zone(name);
          const middleX = (from + to) / 2;
          const roomy = to - from > 150 && marks.every(({ x }) => Math.abs(x - middleX) > 80);
          const here = drawing.of('text', 'label').filter((one) => one.text === word);
          if (roomy) expect(here, `${word} stands in its zone`).toHaveLength(1);
          for (const text of here)
            expectNear(text.attribute('x'), middleX, 0.02, `${word} in the middle of its zone`);
        }
      }),
      RUNS,
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TiltPlan } from '../../../views/drawings/tiltPlan.tsx';
import { renderPart } from '../../../views/render.ts';
import { expectSound } from '../../views/markup.ts';
import { anyCover, polar } from './anyCoverDrawn.ts';
import { expectNear, expectOrderly, extent, lengthIn, type Point, readDrawing, ysOf } from './readSvg.ts';

const RUNS = { numRuns: 40 };
const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const unit = fc.constantFrom('mm' as const, 'in' as const);
const near = (points: readonly Point[], place: Point, within = 0.02) =>
  points.filter(({ x, y }) => Math.hypot(x - place.x, y - place.y) <= within);

describe('the shims under the pads, read back', () => {
  it('stand each at its own stud, as large in area as they are thick, the arrow toward the tilt', () => {
    fc.assert(
      fc.property(
        anyCover,
        fc.array(fc.oneof(fc.constant(0), mm(0.01, 0.3)), { minLength: 6, maxLength: 6 }),
        fc.option(fc.integer({ min: 0, max: 359 })),
        unit,
        (cover, shims, direction, read) => {
          const shimsMm = shims.slice(0, cover.studCount);
          const dialledIn = {
            wallGainedMm: 0.02,
            leastWallMm: 4.5,
            tiltMm: 0.1,
            tiltDirectionDeg: direction,
            shimsMm,
            dialledMm: 0.4,
          };
          const html = renderPart(<TiltPlan id="t" shape={cover} dialledIn={dialledIn} unit={read} />);
          expectSound(html);
          expectOrderly(html, { blank: 60 });
          const drawing = readDrawing(html);
          const pads = drawing.of('circle', 'st-missing');
          expect(pads).toHaveLength(cover.studCount);
          const most = Math.max(...shimsMm);
          pads.forEach((pad, index) => {
            const at = { x: pad.attribute('cx'), y: pad.attribute('cy') };
            expect(near([at], polar((360 * index) / cover.studCount, 84))).toHaveLength(1);
            const core = drawing
              .of('circle', 'st-core')
              .filter((one) => one.attribute('cx') === at.x && one.attribute('cy') === at.y);
            expect(core).toHaveLength(shimsMm[index]! > 0 ? 1 : 0);
            for (const one of core)
              expectNear(
                (one.attribute('r') / pad.attribute('r')) ** 2,
                shimsMm[index]! / most,
                0.005,
                'area',
              );
            const name = drawing.of('text', 'label')[index]!;
            const figure = drawing.of('text', 'strong')[index]!;
            expect(name.text).toBe(`stud ${index + 1}`);
            expect(figure.raw('x')).toBe(name.raw('x'));
            expect(Math.sign(Math.round(name.attribute('x')))).toBe(Math.sign(Math.round(at.x)));
            if (shimsMm[index]! === 0) expect(figure.text).toBe('no shim');
            else {
              const said = lengthIn(figure.text, read);
              expectNear(said.mm, shimsMm[index]!, said.withinMm, name.text);
            }
          });
          expect(drawing.of('path', 'tilt-arrow')).toHaveLength(direction === null ? 0 : 1);
          if (direction !== null) {
            expect(html).toContain(`<g transform="rotate(${direction})">`);
            // Drawn toward the top and turned as a whole, clockwise as the angles go.
            const tip = drawing.of('path', 'tilt-arrow')[0]!.lines[0]![0]!;
            expect(tip).toEqual({ x: 0, y: -62 });
            expect(extent(ysOf(drawing.of('path', 'tilt-arrow')[0]!)).from).toBe(-62);
          }
        },
      ),
      RUNS,
    );
  });
});

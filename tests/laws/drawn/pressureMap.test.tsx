import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PressureMap } from '../../../views/drawings/pressureMap.tsx';
import { renderPart } from '../../../views/render.ts';
import { expectSound } from '../../views/markup.ts';
import { anyBent } from './anyChartDrawn.ts';
import { expectNear, type Point, readDrawings } from './readSvg.ts';

const RUNS = { numRuns: 40 };
const number = (text: string) => Number(/-?[\d.]+/.exec(text.replace('−', '-'))![0]);

describe('the map of pressure, read back in mm', () => {
  it('has surface, studs, the peak in every sector and the marks where they are', () => {
    fc.assert(
      fc.property(
        anyBent,
        ({
          marks,
          studCount,
          peakAt,
          unit: read,
          bend: _bend,
          ripple: _ripple,
          curves: _curves,
          ...cover
        }) => {
          const [inner, outer] = [cover.trackInnerDiameterMm / 2, cover.trackOuterDiameterMm / 2];
          const radiiMm = Array.from({ length: 6 }, (_, i) => inner + ((outer - inner) * i) / 5);
          const anglesDeg = Array.from({ length: 9 }, (_, i) => (180 / studCount) * (i / 8));
          const map = {
            radiiMm,
            anglesDeg,
            pressureMPa: radiiMm.map((_, i) => anglesDeg.map((__, j) => 1 + 0.2 * i - 0.1 * j)),
          };
          const placed = marks.map(({ share, ...mark }) => ({
            ...mark,
            radiusMm: inner + share * (outer - inner),
          }));
          const html = renderPart(
            <PressureMap
              id="m"
              map={map}
              meanPressureMPa={1.2}
              peakAt={peakAt}
              studCount={studCount}
              marks={placed}
              unit={read}
              {...cover}
            />,
          );
          expectSound(html);
          const drawing = readDrawings(html)[0]!;
          const k = 312 / cover.studCircleDiameterMm;
          const at = (angleDeg: number, radiusMm: number): Point => ({
            x: k * radiusMm * Math.sin((angleDeg * Math.PI) / 180),
            y: -k * radiusMm * Math.cos((angleDeg * Math.PI) / 180),
          });
          const close = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y) < 0.15;
          const round = drawing.of('circle', 'thick').map((one) => one.attribute('r'));
          expectNear(round[0]!, k * outer, 0.06, 'the surface, outside');
          expectNear(round[1]!, k * inner, 0.06, 'the surface, inside');
          expectNear(drawing.of('circle', 'chain')[0]!.attribute('r'), 156, 0.06, 'the stud circle');
          const studs = drawing
            .of('circle', 'stud-body')
            .map((one) => ({ x: one.attribute('cx'), y: one.attribute('cy') }));
          expect(studs).toHaveLength(studCount);
          studs.forEach((stud, index) => {
            expect(
              close(stud, at((360 * index) / studCount, cover.studCircleDiameterMm / 2)),
              `stud ${index + 1}`,
            ).toBe(true);
          });
          const turns = drawing.of('use').map((one) => number(one.raw('transform') || '0'));
          expect(turns.length).toBe(studCount);
          for (const [index, turn] of turns.entries())
            expectNear(turn, (360 * index) / studCount, 0.001, 'a sector');
          // The peak, in every sector, on both sides of its stud where it is neither behind it nor midway.
          const crosses = drawing.of('path', 'press-over').map((one) => {
            const [across, down] = one.lines;
            return { x: (across![0]!.x + across![1]!.x) / 2, y: (down![0]!.y + down![1]!.y) / 2 };
          });
          const half = 180 / studCount;
          const alone = peakAt.angleDeg < 0.05 || peakAt.angleDeg > half - 0.05;
          expect(crosses).toHaveLength(alone ? studCount : 2 * studCount);
          for (let stud = 0; stud < studCount; stud++)
            for (const side of alone ? [1] : [-1, 1]) {
              const wanted = at((360 * stud) / studCount + side * peakAt.angleDeg, peakAt.radiusMm);
              expect(
                crosses.some((cross) => close(cross, wanted)),
                'the peak',
              ).toBe(true);
            }
          const ellipses = drawing.of('ellipse', 'press-mark').map((one) => {
            const [x, y, turn] = [...one.raw('transform').matchAll(/-?[\d.]+/g)].map(Number);
            return { x: x!, y: y!, turn: turn!, rx: one.attribute('rx') };
          });
          expect(ellipses).toHaveLength(placed.length);
          ellipses.forEach((ellipse, index) => {
            const mark = placed[index]!;
            expect(close(ellipse, at(mark.angleDeg, mark.radiusMm)), `mark ${index + 1}`).toBe(true);
            expectNear(ellipse.turn, mark.angleDeg, 0.06, 'a mark lies along the surface');
            expectNear(
              ellipse.rx,
              Math.min(24, 11 + 38 * (mark.depthMm ?? 0)),
              0.06,
              'a deeper mark is larger',
            );
          });
          const names = drawing.texts.filter((one) => one.startsWith('stud '));
          expect(names).toEqual(Array.from({ length: studCount }, (_, index) => `stud ${index + 1}`));
          expect(drawing.of('text', 'strong').map(({ text }) => text)).toEqual(
            placed.map((_, index) => String(index + 1)),
          );
        },
      ),
      RUNS,
    );
  });
});

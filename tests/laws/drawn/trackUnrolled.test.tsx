import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TrackUnrolled } from '../../../views/drawings/trackUnrolled.tsx';
import { renderPart } from '../../../views/render.ts';
import { expectSound } from '../../views/markup.ts';
import { anyFace, horizontal, middle, upright } from './anyCoverDrawn.ts';
import {
  type Drawing,
  expectNear,
  expectOrderly,
  extent,
  lengthIn,
  pointsOf,
  readDrawings,
  type Shape,
} from './readSvg.ts';

describe('the friction surface unrolled, read back in mm', () => {
  /** Mm at a height, by the figures that stand beside the axis. */
  function readAxis(drawing: Drawing, unitRead: 'mm' | 'in') {
    const figures = drawing
      .of('text', 'end')
      .filter(({ text }) => /^[\d.]+$/.test(text))
      .map((one) => ({ y: one.attribute('y'), mm: lengthIn(one.text, unitRead).mm }));
    const ticks = horizontal(drawing, 'thin').filter((y) => figures.some((one) => Math.abs(one.y - y) < 6));
    const at = figures.map(({ y, mm: value }) => ({
      value,
      y: ticks.find((tick) => Math.abs(tick - y) < 6)!,
    }));
    expect(at.length, 'the axis has two figures or more').toBeGreaterThan(1);
    const [low, high] = [at[0]!, at.at(-1)!];
    const perMm = (low.y - high.y) / (high.value - low.value);
    for (const { value, y } of at)
      expectNear(low.y - y, perMm * (value - low.value), 0.03, `the tick at ${value}`);
    return { perMm, at: (y: number) => low.value + (low.y - y) / perMm, within: 0.03 / perMm };
  }
  /** Degrees at a place, by the studs' ticks beneath. */
  function readDegrees(drawing: Drawing, studCount: number) {
    const ticks = upright(drawing, 'thin').slice(-(2 * studCount + 1));
    expect(ticks).toHaveLength(2 * studCount + 1);
    const perDeg = (ticks.at(-1)! - ticks[0]!) / 360;
    for (const [index, x] of ticks.entries())
      expectNear(x - ticks[0]!, (perDeg * 180 * index) / studCount, 0.03, `tick ${index}`);
    return { at: (x: number) => (x - ticks[0]!) / perDeg, ticks };
  }

  it('has each wall, cut, mark, minimum and stud where its axes say, on desk and phone', () => {
    fc.assert(
      fc.property(anyFace, ({ cover, check, per, rings, unit: read, thinnest }) => {
        const html = renderPart(
          <TrackUnrolled id="t" check={check} studCount={cover.studCount} unit={read} />,
        );
        expectSound(html);
        expectOrderly(html, { blank: 40 });
        const drawings = readDrawings(html);
        expect(drawings).toHaveLength(2);
        for (const drawing of drawings) {
          const axis = readAxis(drawing, read);
          const degrees = readDegrees(drawing, cover.studCount);
          const main = check.stations.filter(({ radiusMm }) => radiusMm === thinnest.radiusMm);
          // Carried round to one station beyond each end of the drawing, which shows 14° more than a turn.
          const aroundTo = (ring: typeof main) =>
            [-360, 0, 360]
              .flatMap((turn) => ring.map((station) => ({ station, deg: station.angleDeg + turn })))
              .filter(({ deg }) => deg > -14 - 360 / per && deg < 374 + 360 / per);
          const follow = (
            line: Shape,
            wallOf: (one: (typeof main)[number]) => number,
            ring: typeof main,
            what: string,
          ) => {
            const points = pointsOf(line).map(({ x, y }) => ({ deg: degrees.at(x), mm: axis.at(y) }));
            const round = aroundTo(ring);
            expect(points, what).toHaveLength(round.length);
            points.forEach((point, index) => {
              const { station, deg } = round[index]!;
              expectNear(point.deg, deg, 0.1, `${what}, angle`);
              expectNear(point.mm, wallOf(station), axis.within, `${what} at ${station.angleDeg}°`);
            });
          };
          const long = (className: string, dashed: boolean) =>
            drawing
              .of('path', className)
              .filter(
                (one) =>
                  one.classes.includes('dash') === dashed &&
                  pointsOf(one).length === aroundTo(main).length &&
                  per > 2,
              );
          follow(long('thick', false)[0]!, ({ wallMm }) => wallMm, main, 'as measured');
          follow(long('cut-line', false)[0]!, ({ wallAfterMm }) => wallAfterMm, main, 'after the cut');
          expect(long('cut-line', true), 'the other rings, dashed').toHaveLength(rings - 1);
          const others = [...new Set(check.stations.map(({ radiusMm }) => radiusMm))].filter(
            (r) => r !== thinnest.radiusMm,
          );
          others.forEach((radius, index) => {
            const ring = check.stations.filter(({ radiusMm }) => radiusMm === radius);
            follow(long('thin', true)[index]!, ({ wallMm }) => wallMm, ring, 'another ring');
            follow(
              long('cut-line', true)[index]!,
              ({ wallAfterMm }) => wallAfterMm,
              ring,
              'another ring, cut',
            );
          });
          const limits = horizontal(drawing, 'limit');
          const form = drawing.name.includes('wide');
          // On a phone the key has a piece of the line, too.
          expect(limits).toHaveLength(check.minimumWall === null ? 0 : form ? 1 : 2);
          if (check.minimumWall)
            expectNear(axis.at(limits[0]!), check.minimumWall.mm, axis.within, 'the minimum');
          const lozenge = middle(pointsOf(drawing.of('path', 'st-thinnest')[0]!));
          expectNear(degrees.at(lozenge.x), thinnest.angleDeg, 0.1, 'the thinnest, angle');
          expectNear(axis.at(lozenge.y), thinnest.wallAfterMm, axis.within, 'the thinnest, wall');
          // The margin: its arrows point at the wall left and at the minimum, its figure is how far they are apart.
          const tips = drawing.of('path', 'arrow').flatMap(({ lines }) => lines.map((line) => line[0]!));
          expect(tips).toHaveLength(check.minimumWall ? 2 : 0);
          if (check.minimumWall && tips.length === 2) {
            const ends = extent(tips.map(({ y }) => axis.at(y)));
            const wanted = extent([thinnest.wallAfterMm, check.minimumWall.mm]);
            expectNear(ends.from, wanted.from, axis.within, 'the margin, lower arrow');
            expectNear(ends.to, wanted.to, axis.within, 'the margin, upper arrow');
            const text = drawing.texts.find((one) => /(above|below)$/.test(one))!;
            const figure = lengthIn(text, read);
            expectNear(
              figure.mm,
              ends.to - ends.from,
              2 * axis.within + 2 * figure.withinMm,
              'the figure of the margin',
            );
            expect(text.endsWith('below')).toBe(thinnest.wallAfterMm < check.minimumWall.mm);
          }
          // A mark's curve reaches its depth: half way to the point it is drawn toward.
          const marks = drawing.of('path', 'mark').map((one) => {
            const [, ...q] = /M(\S+) (\S+)Q(\S+) (\S+) (\S+) (\S+)Z/.exec(one.raw('d'))!.map(Number);
            return { deg: degrees.at(q[2]!), mm: axis.at(0.25 * q[1]! + 0.5 * q[3]! + 0.25 * q[5]!) };
          });
          const ticks = horizontal(drawing, 'thin');
          for (const station of check.stations.filter(({ markDepthMm }) => markDepthMm > 0)) {
            const depth = station.wallMm - station.markDepthMm;
            expect(depth, 'the axis goes down to the deepest mark').toBeGreaterThan(
              axis.at(Math.max(...ticks)),
            );
            const here = marks.filter(({ deg }) => Math.abs(deg - station.angleDeg) < 0.2);
            expect(
              here.some((one) => Math.abs(one.mm - depth) <= 2 * axis.within),
              'a mark reaches its depth',
            ).toBe(true);
          }
        }
      }),
      { numRuns: 30 },
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FacePlan, type PlanStation } from '../../../views/drawings/facePlan.tsx';
import { renderPart } from '../../../views/render.ts';
import { expectSound } from '../../views/markup.ts';
import { anyCover, middle, polar } from './anyCoverDrawn.ts';
import { expectNear, expectOrderly, lengthIn, type Point, pointsOf, readDrawing } from './readSvg.ts';

const RUNS = { numRuns: 40 };
const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const unit = fc.constantFrom('mm' as const, 'in' as const);
const near = (points: readonly Point[], place: Point, within = 0.02) =>
  points.filter(({ x, y }) => Math.hypot(x - place.x, y - place.y) <= within);

describe('the plan of a face, read back in mm', () => {
  const anyPlan = fc.record({
    cover: anyCover,
    places: fc.array(
      fc.record({ angle: fc.integer({ min: 0, max: 359 }), share: mm(0, 1), wall: mm(3, 6) }),
      {
        minLength: 1,
        maxLength: 24,
      },
    ),
    marks: fc.array(fc.record({ angleDeg: mm(0, 359), share: mm(0, 1), depthMm: mm(0, 0.4) }), {
      maxLength: 4,
    }),
    unit,
  });

  it('has rim, surface, boss, studs, pads, stations and marks where they are', () => {
    fc.assert(
      fc.property(anyPlan, ({ cover, places, marks, unit: read }) => {
        const [inner, outer] = [cover.trackInnerDiameterMm / 2, cover.trackOuterDiameterMm / 2];
        const radiusAt = (share: number) => inner + share * (outer - inner);
        const states = ['measured', 'missing', 'next'] as const;
        const stations: PlanStation[] = places.map(({ angle, share, wall }, index) => ({
          angleDeg: angle,
          radiusMm: radiusAt(share),
          wallMm: wall,
          wallAfterMm: wall - 0.2,
          state: index === 0 ? 'measured' : states[index % 2 === 0 ? 0 : index === 1 ? 2 : 1]!,
        }));
        const drawnMarks = marks.map(({ share, ...mark }) => ({ ...mark, radiusMm: radiusAt(share) }));
        const html = renderPart(
          <FacePlan
            id="p"
            shape={cover}
            {...cover}
            stations={stations}
            marks={drawnMarks}
            thinnest={0}
            unit={read}
          />,
        );
        expectSound(html);
        expectOrderly(html, { crowded: true, blank: 60 });
        const drawing = readDrawing(html);
        const circles = drawing.of('circle').map((one) => ({
          r: one.attribute('r'),
          at: { x: Number(one.raw('cx')), y: Number(one.raw('cy')) },
          classes: one.classes,
        }));
        const round = circles.filter(
          ({ at, classes }) => at.x === 0 && at.y === 0 && classes.includes('thick'),
        );
        const rimMm =
          cover.rimDiameterMm ??
          Math.max(
            cover.studCircleDiameterMm + 1.2 * (cover.padDiameterMm ?? 0.085 * cover.studCircleDiameterMm),
            1.05 * cover.trackOuterDiameterMm,
          );
        expect(round).toHaveLength(4);
        const k = (2 * round[0]!.r) / rimMm;
        const within = 0.01;
        for (const [index, diameter] of [
          rimMm,
          cover.trackOuterDiameterMm,
          cover.trackInnerDiameterMm,
          cover.bossDiameterMm ?? 0.42 * cover.trackInnerDiameterMm,
        ].entries())
          expectNear(round[index]!.r, (k * diameter) / 2, within, `circle ${index + 1}`);
        const studCircle = (k * cover.studCircleDiameterMm) / 2;
        expect(
          circles.some(({ r, classes }) => classes.includes('chain') && Math.abs(r - studCircle) < within),
        ).toBe(true);
        const hidden = circles.filter(({ classes }) => classes.includes('hidden-line'));
        expect(hidden).toHaveLength(2 * cover.studCount);
        const padRadius = (k * (cover.padDiameterMm ?? 0.085 * cover.studCircleDiameterMm)) / 2;
        for (let stud = 0; stud < cover.studCount; stud++) {
          const at = polar((360 * stud) / cover.studCount, studCircle);
          const here = hidden.filter((one) => near([one.at], at).length > 0).map(({ r }) => r);
          expect(here, `pad and stud ${stud + 1}`).toHaveLength(2);
          expectNear(Math.max(...here), padRadius, within, 'the pad');
          expect(Math.min(...here)).toBeLessThan(0.6 * padRadius);
          // Its name stands outside the rim at its angle.
          const name = drawing.of('text', 'label').find(({ text }) => text === `stud ${stud + 1}`)!;
          const way = { x: name.attribute('x'), y: name.attribute('y') - 4.8 };
          expect(Math.hypot(way.x, way.y)).toBeGreaterThan(128);
          const apart = Math.abs(Math.atan2(way.x, -way.y) - Math.atan2(at.x, -at.y));
          expect(Math.min(apart, 2 * Math.PI - apart)).toBeLessThan(0.05);
        }
        stations.forEach((station, index) => {
          const at = polar(station.angleDeg, k * station.radiusMm);
          if (index === 0) {
            const lozenge = drawing.of('path', 'st-thinnest');
            expect(lozenge).toHaveLength(1);
            expect(near([middle(pointsOf(lozenge[0]!))], at)).toHaveLength(1);
            return;
          }
          const cls = { measured: 'st-measured', missing: 'st-missing', next: 'st-core' }[
            station.state as 'next'
          ];
          const signs = circles.filter((one) => one.classes.includes(cls));
          expect(
            near(
              signs.map((one) => one.at),
              at,
            ).length,
            `station ${index + 1}`,
          ).toBeGreaterThan(0);
        });
        const count = (name: string) => circles.filter(({ classes }) => classes.includes(name)).length;
        expect(count('st-measured') + count('st-missing') + count('st-core')).toBe(stations.length - 1);
        // The callout prints the thinnest, and its leader begins beside it.
        const figure = drawing.of('text', 'figure-text');
        expect(figure).toHaveLength(1);
        const said = lengthIn(figure[0]!.text, read);
        expectNear(said.mm, stations[0]!.wallAfterMm!, said.withinMm, 'the thinnest');
        const at = polar(stations[0]!.angleDeg, k * stations[0]!.radiusMm);
        const leader = drawing.of('path', 'leader')[0]!.lines[0]!;
        expectNear(
          Math.hypot(leader[0]!.x - at.x, leader[0]!.y - at.y),
          8,
          0.03,
          'the leader of the thinnest',
        );
        const ellipses = drawing.of('ellipse').map((one) => {
          const [x, y, turn] = [...one.raw('transform').matchAll(/-?[\d.]+/g)].map(Number);
          return { at: { x: x!, y: y! }, turn, rx: one.attribute('rx') };
        });
        expect(ellipses).toHaveLength(drawnMarks.length);
        ellipses.forEach((ellipse, index) => {
          const mark = drawnMarks[index]!;
          expect(near([ellipse.at], polar(mark.angleDeg, k * mark.radiusMm))).toHaveLength(1);
          expectNear(ellipse.turn!, mark.angleDeg, 0.006, 'a mark lies along the surface');
          expectNear(ellipse.rx, Math.min(22, 9 + 38 * mark.depthMm), 0.01, 'a deeper mark is larger');
        });
      }),
      RUNS,
    );
  });
});

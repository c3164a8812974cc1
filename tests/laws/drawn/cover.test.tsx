import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FAMILY } from '../../../shared/words/fields/family.ts';
import { CoverLettered } from '../../../views/drawings/coverLettered.tsx';
import { CoverSectionSmall, halfSectionOf } from '../../../views/drawings/coverSection.tsx';
import { FacePlan, type PlanStation } from '../../../views/drawings/facePlan.tsx';
import { TiltPlan } from '../../../views/drawings/tiltPlan.tsx';
import { TrackUnrolled } from '../../../views/drawings/trackUnrolled.tsx';
import { WallSection } from '../../../views/drawings/wallSection.tsx';
import { WallZones } from '../../../views/drawings/wallZones.tsx';
import { renderPart } from '../../../views/render.ts';
import { expectSound } from '../../views/markup.ts';
import { stationAnswer } from '../../views/samples.ts';
import {
  type Drawing,
  expectNear,
  expectOrderly,
  extent,
  lengthIn,
  type Point,
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

/** Any cover that is no nonsense, with or without what need not be given. */
const anyCover = fc
  .record({
    studCount: fc.constantFrom(3, 4, 5, 6),
    inner: mm(120, 230),
    wide: mm(18, 34),
    out: mm(4, 14),
    wall: mm(3, 7),
    boss: fc.option(mm(50, 100)),
    rim: fc.option(mm(0, 20)),
    pad: fc.option(mm(18, 30)),
    padThick: fc.option(mm(7, 16)),
  })
  .map(({ studCount, inner, wide, out, wall, boss, rim, pad, padThick }) => {
    const outer = inner + 2 * wide;
    const circle = outer + 2 * out;
    return {
      studCount,
      studCircleDiameterMm: circle,
      trackInnerDiameterMm: inner,
      trackOuterDiameterMm: outer,
      nominalWallMm: wall,
      densityKgPerM3: null,
      bossDiameterMm: boss,
      rimDiameterMm: rim === null ? null : circle + 34 + rim,
      padDiameterMm: pad,
      padThicknessMm: padThick,
    };
  });

/** The places a drawing's shape marks, whatever its shape. */
const middle = (points: readonly Point[]): Point => {
  const [x, y] = [extent(points.map((one) => one.x)), extent(points.map((one) => one.y))];
  return { x: (x.from + x.to) / 2, y: (y.from + y.to) / 2 };
};
const near = (points: readonly Point[], place: Point, within = 0.02) =>
  points.filter(({ x, y }) => Math.hypot(x - place.x, y - place.y) <= within);
/** Of a place seen from the clutch side: 0° at the top, clockwise. */
const polar = (angleDeg: number, distance: number): Point => ({
  x: distance * Math.sin((angleDeg * Math.PI) / 180),
  y: -distance * Math.cos((angleDeg * Math.PI) / 180),
});
const horizontal = (drawing: Drawing, className: string) =>
  drawing
    .of('path', className)
    .filter(
      (one) =>
        one.lines.length === 1 && one.lines[0]!.length === 2 && one.lines[0]![0]!.y === one.lines[0]![1]!.y,
    )
    .map((one) => one.lines[0]![0]!.y);
const upright = (drawing: Drawing, className: string) =>
  drawing
    .of('path', className)
    .filter(
      (one) =>
        one.lines.length === 1 && one.lines[0]!.length === 2 && one.lines[0]![0]!.x === one.lines[0]![1]!.x,
    )
    .map((one) => one.lines[0]![0]!.x);

describe('a cover type, lettered, read back in mm', () => {
  it('has every diameter from the axis, the wall and the pad with their own figures and letters', () => {
    fc.assert(
      fc.property(anyCover, unit, (cover, read) => {
        const section = halfSectionOf(cover);
        const { studCount: _studs, densityKgPerM3: _density, ...figures } = cover;
        const html = renderPart(<CoverLettered id="c" section={section} figures={figures} unit={read} />);
        expectSound(html);
        expectOrderly(html, { crowded: true });
        const drawing = readDrawing(html);
        const rimMm = section.rimMm;
        const outline = drawing.of('path', 'thick')[0]!;
        const axis = extent(xsOf(outline)).from;
        const k = (extent(xsOf(outline)).to - axis) / rimMm;
        const within = 0.02 / k + 0.01;
        const radius = (x: number) => (x - axis) / k;
        const dims = drawing.shapes.filter(({ dimension }) => dimension >= 0);
        const rows = [...new Set(dims.map(({ dimension }) => dimension))].map((index) => {
          const own = dims.filter(({ dimension }) => dimension === index);
          const of = (name: string) => own.find((one) => one.classes.includes(name))!;
          const tip = of('arrow').lines[0]![0]!;
          expect(extent(xsOf(of('arrow'))).to, 'the arrow points outward').toBe(tip.x);
          expect(
            xsOf(of('extension')).every((x) => x === tip.x),
            'the arrow ends at its line',
          ).toBe(true);
          expect(extent(xsOf(of('dim'))).to).toBe(tip.x);
          expect(extent(xsOf(of('dim'))).from, 'the line begins at the axis').toBeLessThan(axis);
          expect(extent(ysOf(of('extension'))).to).toBeGreaterThan(tip.y);
          return { tip, letter: own.find(({ tag }) => tag === 'tspan'), text: of('lettered').text };
        });
        const wanted = (
          [
            ['bossDiameterMm', section.bossMm],
            ['trackInnerDiameterMm', section.track[0]],
            ['trackOuterDiameterMm', section.track[1]],
            ['studCircleDiameterMm', section.studMm],
            ['rimDiameterMm', rimMm],
          ] as const
        ).toSorted((a, b) => a[1] - b[1]);
        expect(rows).toHaveLength(wanted.length);
        rows.forEach(({ tip, text }, index) => {
          const [key, toMm] = wanted[index]!;
          expectNear(radius(tip.x), toMm, within, `half of ${key}`);
          const given = figures[key];
          expect(text.startsWith(FAMILY[key].letter)).toBe(true);
          expect(text.includes('Ø')).toBe(given !== null);
          if (given === null) return;
          const figure = lengthIn(text.split('Ø')[1]!, read);
          expectNear(figure.mm, given, figure.withinMm, `the figure of ${key}`);
          expectNear(2 * radius(tip.x), figure.mm, 2 * within + figure.withinMm, `${key}, as drawn`);
        });
        // The wall and the pad stand upright: the two arrows point at its faces from outside.
        const arrows = drawing
          .of('path', 'arrow')
          .filter(({ dimension }) => dimension < 0)
          .map((one) => one.lines.map((line) => line[0]!));
        const thickness = arrows
          .filter(([a, b]) => a!.x === b!.x)
          .map(([a, b]) => ({ x: a!.x, top: a!.y, bottom: b!.y }));
        expect(thickness).toHaveLength(2);
        const [wall, pad] = thickness.toSorted((a, b) => a.x - b.x);
        expectNear((wall!.bottom - wall!.top) / k, cover.nominalWallMm, within, 'the wall');
        expect(wall!.bottom).toBe(0);
        const padThick = cover.padThicknessMm ?? 2 * cover.nominalWallMm;
        expectNear((pad!.bottom - pad!.top) / k, padThick, within, 'the pad');
        expectNear(pad!.bottom, -k * cover.nominalWallMm, 0.02, 'the pad stands on the wall');
        const across = arrows.find(([a, b]) => a!.y === b!.y)!.map(({ x }) => radius(x));
        const padMm = cover.padDiameterMm ?? 4.5 * cover.nominalWallMm;
        expectNear(across[1]! - across[0]!, padMm, 2 * within, 'the pad across');
        expectNear((across[0]! + across[1]!) / 2, section.studMm, within, 'the pad lies on the stud circle');
        const stud = drawing.of('path', 'stud-body')[0]!;
        expectNear(radius(middle(pointsOf(stud)).x), section.studMm, within, 'the stud stands on its circle');
        const face = extent(xsOf(drawing.of('path', 'track-face')[0]!));
        expectNear(radius(face.from), section.track[0], within, 'the friction surface begins');
        expectNear(radius(face.to), section.track[1], within, 'the friction surface ends');
        expect(new Set(ysOf(drawing.of('path', 'track-face')[0]!))).toEqual(new Set([0]));
        for (const key of ['nominalWallMm', 'padThicknessMm', 'padDiameterMm'] as const) {
          const text = drawing.texts.find((one) => one.startsWith(`${FAMILY[key].letter}\u00a0`));
          expect(text === undefined, key).toBe(figures[key] === null);
          if (text === undefined) continue;
          const figure = lengthIn(text.slice(1), read);
          expectNear(figure.mm, figures[key]!, figure.withinMm, `the figure of ${key}`);
        }
      }),
      RUNS,
    );
  });

  it('says which figures are entered, and that none is where none is', () => {
    const section = halfSectionOf(fc.sample(anyCover, 1)[0]!);
    const none = Object.fromEntries(
      ['studCircle', 'trackOuter', 'trackInner', 'boss', 'rim', 'pad'].map((name) => [
        `${name}DiameterMm`,
        null,
      ]),
    );
    const drawn = (figures: object) =>
      renderPart(
        <CoverLettered
          id="c"
          section={section}
          figures={{ ...none, nominalWallMm: null, padThicknessMm: null, ...figures } as never}
          unit="mm"
        />,
      );
    expect(drawn({})).toContain('>No figure is entered yet.</desc>');
    expect(drawn({ nominalWallMm: 5 })).toMatch(/>[A-H], [^;]*: 5\.000 mm\.<\/desc>/);
  });

  it('is small in a list, and still to one scale', () => {
    fc.assert(
      fc.property(anyCover, (cover) => {
        const family = { ...cover, name: 'any' } as unknown as Parameters<
          typeof CoverSectionSmall
        >[0]['family'];
        const drawing = readDrawing(renderPart(<CoverSectionSmall id="s" family={family} />));
        const section = halfSectionOf(cover);
        const [filled, outline, stud] = drawing.of('path');
        expect(filled!.fill).toBe('url(#s-hatch)');
        const axis = extent(xsOf(outline!)).from;
        const k = (extent(xsOf(outline!)).to - axis) / section.rimMm;
        const within = 0.1 / k + 0.01;
        const face = drawing.of('path', 'track-face')[0]!;
        expectNear((extent(xsOf(face)).from - axis) / k, section.track[0], within, 'the surface begins');
        expectNear((extent(xsOf(face)).to - axis) / k, section.track[1], within, 'the surface ends');
        const foot = ysOf(face)[0]!;
        const heights = pointsOf(outline!).map(({ x, y }) => ({ r: (x - axis) / k, h: (foot - y) / k }));
        const highest = Math.max(...heights.map(({ h }) => h));
        expectNear(
          highest,
          Math.max(section.pad.topMm, 2.4 * section.wallMm),
          within,
          'the highest of pad and boss',
        );
        const has = (r: number, h: number) =>
          heights.some((one) => Math.abs(one.r - r) <= within && Math.abs(one.h - h) <= within);
        expect(has(section.pad.fromMm, section.pad.topMm), 'the pad, inner edge').toBe(true);
        expect(has(section.pad.fromMm, section.wallMm), 'the wall at the pad').toBe(true);
        expect(has(section.bossMm, section.wallMm), 'the wall at the boss').toBe(true);
        expect(has(section.rimMm - section.wallMm, 0), 'the side wall').toBe(true);
        expectNear((middle(pointsOf(stud!)).x - axis) / k, section.studMm, within, 'the stud on its circle');
      }),
      RUNS,
    );
  });
});

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

/** A face with rings of stations all round, thinnest anywhere, cut and marks at any depth. */
const anyFace = fc
  .record({
    cover: anyCover,
    per: fc.integer({ min: 3, max: 10 }),
    rings: fc.integer({ min: 1, max: 3 }),
    walls: fc.array(mm(4, 5), { minLength: 30, maxLength: 30 }),
    depths: fc.array(fc.oneof(fc.constant(0), mm(0.05, 0.3)), { minLength: 30, maxLength: 30 }),
    cut: mm(0.1, 0.5),
    minimum: fc.option(mm(3.4, 5)),
    band: fc.option(mm(0.001, 0.05)),
    unit,
  })
  .map(({ cover, per, rings, walls, depths, cut, minimum, band, unit: read }) => {
    const [inner, outer] = [cover.trackInnerDiameterMm / 2, cover.trackOuterDiameterMm / 2];
    const stations = Array.from({ length: per * rings }, (_, index) => {
      const ring = Math.floor(index / per);
      return stationAnswer({
        angleDeg: (360 * (index % per)) / per,
        radiusMm: inner + ((ring + 1) * (outer - inner)) / (rings + 1),
        wallMm: walls[index]!,
        markDepthMm: depths[index]!,
        cutMm: cut,
        wallAfterMm: walls[index]! - cut,
      });
    });
    const least = stations.reduce(
      (low, one, index) => (one.wallAfterMm < stations[low]!.wallAfterMm ? index : low),
      0,
    );
    const check = {
      stations,
      marks: [],
      minimumWall: minimum === null ? null : { mm: minimum, source: 'the shop', from: 'shop' as const },
      leastWall: {
        beforeMm: Math.min(...stations.map(({ wallMm }) => wallMm)),
        afterMm: stations[least]!.wallAfterMm,
        station: least,
        standardUncertaintyMm: null,
        expandedUncertaintyMm: band,
        degreesOfFreedom: null,
      },
      cut: { dialledMm: cut, toolPlaneMm: 0, cleansUp: true, cleanUpMm: cut },
    };
    return { cover, check, per, rings, unit: read, thinnest: stations[least]! };
  });

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
          const follow = (
            line: Shape,
            wallOf: (one: (typeof main)[number]) => number,
            ring: typeof main,
            what: string,
          ) => {
            const points = pointsOf(line).map(({ x, y }) => ({ deg: degrees.at(x), mm: axis.at(y) }));
            expect(points, what).toHaveLength(3 * per);
            points.forEach((point, index) => {
              const station = ring[index % per]!;
              expectNear(
                point.deg,
                station.angleDeg + 360 * (Math.floor(index / per) - 1),
                0.1,
                `${what}, angle`,
              );
              expectNear(point.mm, wallOf(station), axis.within, `${what} at ${station.angleDeg}°`);
            });
          };
          const long = (className: string, dashed: boolean) =>
            drawing
              .of('path', className)
              .filter(
                (one) =>
                  one.classes.includes('dash') === dashed && pointsOf(one).length === 3 * per && per > 2,
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

describe('the wall in section, read back in mm', () => {
  it('has wall, cut, minimum and band at one scale in the section and at the printed scale in the detail', () => {
    fc.assert(
      fc.property(anyFace, ({ cover, check, unit: read, thinnest }) => {
        const html = renderPart(<WallSection id="w" shape={cover} check={check} unit={read} />);
        expectSound(html);
        expectOrderly(html, { crowded: true });
        const drawing = readDrawing(html);
        const metal = drawing.of('rect', 'metal');
        expect(metal).toHaveLength(2);
        const [section] = metal.map((one) => ({ x: extent(xsOf(one)), y: extent(ysOf(one)) }));
        const k =
          (section!.x.to - section!.x.from) / ((cover.trackOuterDiameterMm - cover.trackInnerDiameterMm) / 2);
        const foot = section!.y.to;
        const inSection = (y: number) => (foot - y) / k;
        const within = 0.03 / k;
        expectNear(inSection(section!.y.from), thinnest.wallAfterMm, within, 'the metal left');
        const cuts = horizontal(drawing, 'cut-line');
        const measured = [...horizontal(drawing, 'thin'), ...horizontal(drawing, 'thick')];
        expect(cuts).toHaveLength(2);
        expect(measured).toHaveLength(2);
        expectNear(inSection(cuts[0]!), thinnest.wallAfterMm, within, 'after the cut');
        expectNear(inSection(measured[0]!), thinnest.wallMm, within, 'as measured');
        const ring = drawing.of('circle', 'st-ring')[0]!;
        const at = (ring.attribute('cx') - section!.x.from) / k + cover.trackInnerDiameterMm / 2;
        expectNear(at, thinnest.radiusMm, within, 'where the thinnest is');
        expectNear(ring.attribute('cy'), cuts[0]!, 0.02, 'the thinnest on the cut');
        const limits = horizontal(drawing, 'limit');
        expect(limits).toHaveLength(check.minimumWall ? 2 : 0);
        // In the detail two lengths that are known give its scale, and it is the one that is printed.
        const perMm = (cuts[1]! - measured[1]!) / (thinnest.wallMm - thinnest.wallAfterMm);
        const inDetail = (y: number) => thinnest.wallAfterMm + (cuts[1]! - y) / perMm;
        const fine = 0.03 / perMm;
        const times = Number(/enlarged ([\d.]+) times/.exec(html)![1]);
        expectNear(
          perMm / k,
          times,
          times < 10 ? 0.06 : 0.51 + 0.01 * times,
          'how many times it is enlarged',
        );
        if (check.minimumWall) {
          expectNear(inSection(limits[0]!), check.minimumWall.mm, within, 'the minimum');
          expectNear(inDetail(limits[1]!), check.minimumWall.mm, 3 * fine, 'the minimum in the detail');
        }
        const bands = drawing.of('rect', 'band');
        const { expandedUncertaintyMm } = check.leastWall;
        expect(bands).toHaveLength(expandedUncertaintyMm === null ? 0 : 1);
        for (const one of bands) {
          const { from, to } = extent(ysOf(one));
          expectNear(
            inDetail(from),
            thinnest.wallAfterMm + expandedUncertaintyMm!,
            3 * fine,
            'the band, upper edge',
          );
          expectNear(
            inDetail(to),
            thinnest.wallAfterMm - expandedUncertaintyMm!,
            3 * fine,
            'the band, lower edge',
          );
        }
        // The hatch in the detail is what is cut away, the metal what is left.
        const away = drawing
          .of('rect')
          .filter((one) => one.fill.startsWith('url('))
          .at(-1)!;
        expectNear(inDetail(extent(ysOf(away)).from), thinnest.wallMm, 3 * fine, 'the chips begin');
        expectNear(inDetail(extent(ysOf(away)).to), thinnest.wallAfterMm, 3 * fine, 'the chips end');
        expectNear(extent(ysOf(metal[1]!)).from, cuts[1]!, 0.02, 'the metal in the detail');
        // Every line of the detail is named with its figure, and led to from where it lies.
        const leaders = drawing.of('path', 'extension').map(({ lines }) => lines[0]!);
        const names: readonly [RegExp, number][] = [
          [/^as measured/, thinnest.wallMm],
          [/^after the cut/, thinnest.wallAfterMm],
          ...(expandedUncertaintyMm === null
            ? []
            : [[/uncertainty$/, thinnest.wallAfterMm - expandedUncertaintyMm] as [RegExp, number]]),
          ...(check.minimumWall ? [[/^minimum/, check.minimumWall.mm] as [RegExp, number]] : []),
        ];
        expect(leaders).toHaveLength(names.length);
        names.forEach(([name, wallMm], index) => {
          const text = drawing.of('text').find((one) => name.test(one.text))!;
          expectNear(inDetail(leaders[index]![0]!.y), wallMm, 3 * fine, `the leader of ${text.text}`);
          expectNear(
            leaders[index]![1]!.y,
            text.attribute('y') - 0.36 * 13,
            0.02,
            `${text.text} at its leader`,
          );
          const said = lengthIn(/[\d.]+/.exec(text.text)![0], read);
          const wanted = name.source.startsWith('unc') ? expandedUncertaintyMm! : wallMm;
          expectNear(said.mm, wanted, said.withinMm, text.text);
        });
        const cutText = drawing.texts.find((one) => one.startsWith('cut '))!;
        const said = lengthIn(cutText, read);
        expectNear(said.mm, thinnest.cutMm, said.withinMm, 'the cut');
      }),
      RUNS,
    );
  });
});

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

import { describe, expect, it } from 'vitest';
import {
  FacePlan,
  onPlan,
  PLAN_BOX,
  PlanKey,
  type PlanStation,
  placeCallout,
  placeNumbers,
  planScale,
  studLabels,
} from '../../views/drawings/facePlan.tsx';
import { boxRound, inside, overlaps, pointToSegment, segmentEnters } from '../../views/drawings/lettering.ts';
import { renderPart } from '../../views/render.ts';
import { expectSound, numberOf, tagsOf } from './markup.ts';
import { shape } from './samples.ts';

const MEASURES = { bossDiameterMm: 90, rimDiameterMm: 304, padDiameterMm: 24 };

function plan(
  stations: readonly PlanStation[],
  changes: Partial<Parameters<typeof FacePlan>[0]> = {},
): string {
  return renderPart(
    <FacePlan id="p" shape={shape(4)} {...MEASURES} stations={stations} marks={[]} unit="mm" {...changes} />,
  );
}

const measured = (angleDeg: number, radiusMm = 119): PlanStation => ({
  angleDeg,
  radiusMm,
  wallMm: 4.9,
  wallAfterMm: 4.529,
  state: 'measured',
});

describe('the plan of the face', () => {
  it.each([
    [0, 0, -1],
    [90, 1, 0],
    [180, 0, 1],
    [270, -1, 0],
    [30, 0.5, -0.866025],
  ])('puts %d° clockwise from the top', (angle, x, y) => {
    const k = planScale({ id: 'p', shape: shape(4), ...MEASURES, stations: [], marks: [], unit: 'mm' });
    expect(k).toBeCloseTo(128 / 152, 9);
    const dot = tagsOf(plan([measured(angle, 119)]), 'circle', 'st-measured')[0] ?? '';
    expect(numberOf(dot, 'cx')).toBeCloseTo(119 * k * x, 1);
    expect(numberOf(dot, 'cy')).toBeCloseTo(119 * k * y, 1);
  });

  it('draws track, boss and studs to one scale', () => {
    const html = plan([]);
    const k = 128 / 152;
    const radii = tagsOf(html, 'circle').map((tag) => numberOf(tag, 'r'));
    for (const mm of [152, 132, 107, 45, 143, 12]) {
      expect(
        radii.some((r) => Math.abs(r - k * mm) < 0.01),
        `radius ${mm} mm`,
      ).toBe(true);
    }
  });

  it('never draws a rim smaller than the track, and something sensible where nothing was measured', () => {
    const html = plan([], { bossDiameterMm: null, rimDiameterMm: null, padDiameterMm: null });
    expectSound(html);
    const outline = (of: string) => tagsOf(of, 'circle', 'thick').map((tag) => numberOf(tag, 'r'));
    const [rim = 0, trackOuter = 0, trackInner = 0, boss = 0] = outline(html);
    expect(rim).toBe(128);
    expect(trackOuter).toBeLessThan(rim);
    expect(boss).toBeLessThan(trackInner);
    const pad = tagsOf(html, 'circle', 'hidden-line')[0] ?? '';
    expect(-numberOf(pad, 'cy') + numberOf(pad, 'r')).toBeLessThan(rim);
    // A rim that cannot be: the track is still inside it.
    expect(outline(plan([], { rimDiameterMm: 100 }))[1]).toBeLessThanOrEqual(128);
  });

  it('tells four states apart by shape, not by color', () => {
    const html = renderPart(<PlanKey states={['next', 'measured', 'missing', 'thinnest']} />);
    const shapes = html.match(/<svg.*?<\/svg>/gs)?.map((svg) => svg.replaceAll(/ class="[^"]*"/g, ''));
    // Measured and missing are both round: one is filled, the other an outline.
    expect(new Set(shapes).size).toBe(3);
    expect(html).toContain('class="st-measured"');
    expect(html).toContain('class="st-missing"');
    for (const word of ['next', 'measured', 'to measure', 'thinnest']) expect(html).toContain(word);
  });

  it('says in words what it shows', () => {
    const html = plan(
      [measured(0), { ...measured(90), state: 'missing' }, { ...measured(180), state: 'next' }],
      { thinnest: 0, marks: [{ angleDeg: 0, radiusMm: 119, depthMm: 0.2 }] },
    );
    expect(html).toContain('3 stations: 1 measured and 2 still to measure.');
    expect(html).toContain('Next is station 3, at 180°.');
    expect(html).toContain('Thinnest is station 1, at 0°: 4.529 mm after the cut.');
    expect(html).toContain('1 heat mark.');
    expectSound(html);
  });

  it('numbers up to forty stations, and draws four hundred as dots', () => {
    const many = (count: number) =>
      Array.from({ length: count }, (_, index) => measured((360 * index) / count, 111 + 16 * (index % 2)));
    const numbers = (html: string) => html.match(/<text[^>]*halo[^>]*>\d+<\/text>/g)?.length ?? 0;
    expect(numbers(plan(many(40)))).toBe(40);
    const html = plan(many(400), { thinnest: 7 });
    expect(numbers(html)).toBe(0);
    expect(tagsOf(html, 'circle', 'st-measured')).toHaveLength(399);
    expectSound(html);
  });

  it.each([3, 4, 5, 6])('keeps the callout and its leader clear at every angle, %d studs', (studCount) => {
    const names = studLabels(studCount).map((label) => label.box);
    const around = Array.from({ length: 2 * studCount }, (_, index) => (180 * index) / studCount);
    const k = 128 / 152;
    for (let angle = 0; angle < 360; angle += 3) {
      for (const radius of [111, 127]) {
        const point = onPlan(angle, radius * k);
        const others = [111, 127]
          .flatMap((r) => around.map((deg) => onPlan(deg, r * k)))
          .filter((other) => Math.hypot(other.x - point.x, other.y - point.y) > 12);
        const callout = placeCallout(point, '0.1783 in', 'thinnest after the cut', others, names);
        const where = `${angle}° at ${radius} mm`;
        for (const box of callout.boxes) {
          expect(inside(box, PLAN_BOX), where).toBe(true);
          expect(
            names.some((name) => overlaps(name, box)),
            where,
          ).toBe(false);
          expect(Math.min(...corners(box).map(({ x, y }) => Math.hypot(x, y))), where).toBeGreaterThan(128);
          expect(segmentEnters(callout.from, callout.elbow, box), where).toBe(false);
        }
        expect(
          names.some((name) => segmentEnters(callout.from, callout.elbow, name)),
          where,
        ).toBe(false);
        const near = Math.min(...others.map((other) => pointToSegment(other, callout.from, callout.elbow)));
        expect(near, where).toBeGreaterThan(3.8);
      }
    }
    function corners({ left, right, top, bottom }: (typeof names)[number]) {
      return [left, right].flatMap((x) => [top, bottom].map((y) => ({ x, y })));
    }
  });

  it('puts no number on another, on a dot, or outside', () => {
    for (const studCount of [3, 4, 5, 6]) {
      const stations = [111, 127].flatMap((radius) =>
        Array.from({ length: 2 * studCount }, (_, index) => measured((180 * index) / studCount, radius)),
      );
      const points = stations.map((station) => onPlan(station.angleDeg, (station.radiusMm * 128) / 152));
      const names = studLabels(studCount).map((label) => label.box);
      const labels = placeNumbers(stations, points, { taken: names, pads: [], padRadius: 10, leader: null });
      expect(labels.filter((label) => label === null)).toEqual([]);
      const boxes = labels.flatMap((label) => (label ? [label.box] : []));
      boxes.forEach((box, index) => {
        expect(inside(box, PLAN_BOX)).toBe(true);
        for (const other of [...boxes.slice(index + 1), ...names]) expect(overlaps(box, other)).toBe(false);
        points.forEach((point) => {
          expect(overlaps(box, boxRound(point, 7, 7))).toBe(false);
        });
      });
    }
  });
});

describe('the numbers of crowded stations', () => {
  it('stand clear of each other, of the leader and of dots, and one without room is left out', () => {
    const stations = [105, 112, 119, 126].flatMap((radius) =>
      Array.from({ length: 10 }, (_, index) => measured(36 * index + (radius === 112 ? 6 : 0), radius)),
    );
    const points = stations.map((station) => onPlan(station.angleDeg, (station.radiusMm * 128) / 152));
    const leader = [points[3]!, { x: 170, y: 135 }] as const;
    const labels = placeNumbers(stations, points, { taken: [], pads: [], padRadius: 10, leader });
    const boxes = labels.flatMap((label) => (label ? [label.box] : []));
    expect(boxes.length).toBeGreaterThan(20);
    boxes.forEach((box, index) => {
      for (const other of boxes.slice(index + 1)) expect(overlaps(box, other)).toBe(false);
      expect(segmentEnters(leader[0], leader[1], box)).toBe(false);
      expect(points.some((point) => overlaps(box, boxRound(point, 6, 6)))).toBe(false);
    });
  });
});

import type { VNode } from 'preact';
import { describe, expect, it } from 'vitest';
import { placeLengths } from '../../views/drawings/dimension.tsx';
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
import {
  boxRound,
  fitText,
  inside,
  overlaps,
  pointToSegment,
  segmentEnters,
  spread,
  textWidth,
} from '../../views/drawings/lettering.ts';
import { STACK_WIDTH } from '../../views/drawings/stackParts.tsx';
import { placeOf, StudInStack, stackScale } from '../../views/drawings/studInStack.tsx';
import { roundScale } from '../../views/drawings/ticks.ts';
import { TorqueWindow } from '../../views/drawings/torqueWindowPicture.tsx';
import { TALL, TrackUnrolled, trackScales, WIDE } from '../../views/drawings/trackUnrolled.tsx';
import { renderPart } from '../../views/render.ts';
import { expectSound, numberOf, tagsOf, valuesOf } from './markup.ts';
import { nut, shape, stack, stationAnswer, stud, track } from './samples.ts';

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

describe('the track unrolled', () => {
  const shown = (check = track(), studCount = 4, unit: 'mm' | 'in' = 'mm') =>
    renderPart(<TrackUnrolled id="t" check={check} studCount={studCount} unit={unit} />);

  it('is drawn twice, for a desk and for a phone, each with a text twin', () => {
    const html = shown();
    expectSound(html);
    expect(tagsOf(html, 'svg').map((tag) => valuesOf(tag, 'class')[0])).toEqual([
      'track track-wide',
      'track track-tall',
    ]);
    expect(
      html.match(/After the cut the thinnest wall is 4\.540 mm at 180°\. The minimum is 4\.500 mm\./g),
    ).toHaveLength(2);
    expect(html.match(/8 heat marks\./g)).toHaveLength(2);
  });

  it.each([
    ['wide', WIDE],
    ['tall', TALL],
  ])('puts the minimum, the wall and a mark where the axis says, for %s', (_, form) => {
    const { scale, x, y } = trackScales(track(), 'mm', form);
    const perMm = (form.bottom - form.top) / (scale.mostMm - scale.leastMm);
    expect(y(4.5) - y(4.6)).toBeCloseTo(0.1 * perMm, 6);
    expect(y(scale.leastMm)).toBeCloseTo(form.bottom, 6);
    expect(x(90) - x(0)).toBeCloseTo((90 / 388) * (form.right - form.left), 6);
    const svg = shown().split('</svg>')[form.name === 'wide' ? 0 : 1] ?? '';
    expect(svg).toContain(`class="limit"`);
    expect(svg).toMatch(
      new RegExp(`d="M${form.left} ${Math.round(y(4.5) * 100) / 100}H${form.right}" class="limit"`),
    );
    // Behind stud 1, outer ring: wall 4.910, mark 0.200 deep. A quadratic reaches half way to its control point.
    const quadratics = tagsOf(svg, 'path', 'mark').map((tag) =>
      /M([-\d.]+) ([-\d.]+)Q([-\d.]+) ([-\d.]+) ([-\d.]+) ([-\d.]+)Z/.exec(tag)?.slice(1).map(Number),
    );
    const atStud1 = quadratics.filter((q) => q && Math.abs((q[2] ?? 0) - x(0)) < 0.01);
    const depths = atStud1.map((q) => 0.25 * (q?.[1] ?? 0) + 0.5 * (q?.[3] ?? 0) + 0.25 * (q?.[5] ?? 0));
    expect(depths.some((depth) => Math.abs(depth - y(4.71)) < 0.02)).toBe(true);
    // Nothing of it hangs over the axis.
    for (const q of atStud1) expect(q?.[0] ?? 0).toBeGreaterThanOrEqual(form.left);
  });

  it('gives the margin, above or below, with its figure outside when it is close', () => {
    expect(shown().match(/0\.040 mm above/g)).toHaveLength(2);
    const below = track({ minimumWall: { mm: 4.8, source: 's', from: 'shop' } });
    expect(shown(below).match(/0\.260 mm below/g)).toHaveLength(2);
    // As printed: 4.6125 mm prints 4.612, and 4.612 − 4.300 is 0.312.
    const printed = track({ minimumWall: { mm: 4.3, source: 's', from: 'shop' } });
    const stations = printed.stations.map((one, index) =>
      index === 12 ? { ...one, wallAfterMm: 4.6125 } : one,
    );
    expect(shown({ ...printed, stations })).toContain('0.312 mm above');
    const exact = printed.stations.map((one, index) => (index === 12 ? { ...one, wallAfterMm: 4.3 } : one));
    expect(shown({ ...printed, stations: exact })).toContain('at the minimum');
    const none = shown(track({ minimumWall: null }));
    expect(none).not.toContain('above');
    expect(none).not.toContain('minimum');
    expect(none.match(/>4\.540 mm<\/text>/g)).toHaveLength(2);
  });

  it('prints inches where they are wanted, on round figures', () => {
    const html = shown(track(), 4, 'in');
    expect(html).toContain('wall, in');
    expect(html).toContain('minimum 0.1772');
    expect(html).toMatch(/>0\.1[0-9]+<\/text>/);
  });

  it('keeps all lettering inside, margins at either end included', () => {
    const places = [0, 3, 7, 8, 12, 15].flatMap((station) =>
      [track().minimumWall, null].map((minimumWall) => ({ station, minimumWall })),
    );
    for (const { station, minimumWall } of places) {
      const html = shown(track({ minimumWall, leastWall: { ...track().leastWall, station } }), 6);
      const [wide, tall] = html.split('</svg>');
      for (const [svg, form] of [
        [wide ?? '', WIDE],
        [tall ?? '', TALL],
      ] as const) {
        for (const match of svg.matchAll(/<text([^>]*)>([^<]*)<\/text>/g)) {
          const [, attributes = '', text = ''] = match;
          const px = numberOf(`<text${attributes}>`, 'x');
          const names = (valuesOf(attributes, 'class')[0] ?? '').split(' ');
          const width = textWidth(text, form.letter);
          const left = names.includes('end') ? px - width : names.includes('mid') ? px - width / 2 : px;
          expect(left, `${form.name}: ${text}`).toBeGreaterThanOrEqual(-1);
          expect(left + width, `${form.name}: ${text}`).toBeLessThanOrEqual(form.width + 1);
          expect(numberOf(`<text${attributes}>`, 'y')).toBeLessThanOrEqual(form.height);
        }
      }
    }
  });

  it('bears one station, four hundred, and walls all alike', () => {
    const one = [stationAnswer({ wallMm: 4.9, wallAfterMm: 4.9, cutMm: 0 })];
    const least = { ...track().leastWall, station: 0 };
    expectSound(shown(track({ stations: one, leastWall: least })));
    const many = Array.from({ length: 400 }, (_, index) =>
      stationAnswer({ angleDeg: 0.9 * index, radiusMm: 119, markDepthMm: index % 5 === 0 ? 0.1 : 0 }),
    );
    expectSound(shown(track({ stations: many, leastWall: least }), 3));
  });
});

describe('round scales', () => {
  it('start and end on a tick, hold both ends, and carry only the decimals they need', () => {
    const scale = roundScale(4.37, 4.98, 'mm', 5);
    expect(scale.leastMm).toBeLessThanOrEqual(4.37);
    expect(scale.mostMm).toBeGreaterThanOrEqual(4.98);
    const texts = scale.ticks.flatMap((tick) => tick.text ?? []);
    expect(texts).toEqual(['4.4', '4.6', '4.8', '5.0']);
    const inches = roundScale(4.37, 4.98, 'in', 5).ticks.flatMap((tick) => tick.text ?? []);
    expect(inches).toEqual(['0.170', '0.175', '0.180', '0.185', '0.190', '0.195']);
  });
});

describe('the stud in its stack', () => {
  const props = { id: 's', stud, stack, nut, pullForwardMm: 4, check: null, unit: 'mm' } as const;
  const views = (changes: Partial<Parameters<typeof StudInStack>[0]> = {}) =>
    renderPart(<StudInStack {...props} {...changes} />);

  it('is drawn to one scale in both views', () => {
    const k = stackScale(props);
    const html = views();
    expectSound(html);
    expect(tagsOf(html, 'svg')).toHaveLength(2);
    for (const svg of html.split('</svg>').slice(0, 2)) {
      const layers = tagsOf(svg, 'rect').filter((tag) => tag.includes('fill="url'));
      const widths = layers.map((tag) => numberOf(tag, 'width') / k);
      expect(widths.filter((mm) => Math.abs(mm - 3.6) < 0.01)).toHaveLength(2);
      expect(widths.filter((mm) => Math.abs(mm - 6.4) < 0.01)).toHaveLength(2);
    }
    // The body goes from the pad face to the tip, 31 mm, and is 7/16 in across.
    const body = /<path d="M([\d.]+) (-[\d.]+)H[^"]*" class="stud-body"/.exec(html);
    const xs = [...(/d="([^"]*)" class="stud-body"/.exec(html)?.[1] ?? '').matchAll(/[MHL]([\d.]+)/g)].map(
      (m) => Number(m[1]),
    );
    expect((Math.max(...xs) - Number(body?.[1])) / k).toBeCloseTo(31, 1);
    expect((-2 * Number(body?.[2])) / k).toBeCloseTo(11.11, 1);
  });

  it('moves the stud back by the gap, and leaves the stack where it is', () => {
    const starts = [...views().matchAll(/d="M([\d.]+) -[\d.]+H[^"]*" class="stud-body"/g)].map((m) =>
      Number(m[1]),
    );
    expect((starts[0] ?? 0) - (starts[1] ?? 0)).toBeCloseTo(4 * stackScale(props), 1);
    expect(starts[0]).toBeCloseTo(placeOf(props, 0), 1);
  });

  it('carries the lengths that matter, in the unit of the reader', () => {
    const figures = (html: string) => [...html.matchAll(/dim-figure[^>]*>([^<]+)</g)].map((m) => m[1]);
    const [seated = '', back = ''] = views().split('</svg>');
    expect(figures(seated)).toEqual(['8.70', '10.00', '21.00']);
    expect(figures(back)).toEqual(['9.00', '4.00', '10.00', '17.00']);
    expect(figures(views({ unit: 'in' }).split('</svg>')[0] ?? '')).toEqual(['0.343', '0.394', '0.827']);
  });

  it('says short where the tip ends inside the stack', () => {
    const html = views({ stud: { ...stud, threadEndMm: 10, projectionMm: 12.5 } }).split('</svg>')[1] ?? '';
    expect(html).toMatch(/dim-bad[^>]*>1\.50</);
    expect(html).toContain('>short</text>');
    expect(html).toContain('is 1.50 mm short of the engine side');
    expect(views()).not.toContain('>short</text>');
  });

  it('needs no nut, no gap and no pilot', () => {
    const html = views({ nut: null, pullForwardMm: null, stud: { ...stud, pilotDiameterMm: null } });
    expectSound(html);
    expect(tagsOf(html, 'svg')).toHaveLength(1);
    expect(html).not.toContain('engaged');
  });

  it('hatches neighbors against each other', () => {
    const seated = views().split('</svg>')[0] ?? '';
    const fills = tagsOf(seated, 'rect')
      .flatMap((tag) => valuesOf(tag, 'fill'))
      .map((fill) => /h(45|135)/.exec(fill)?.[1]);
    expect(fills.slice(0, 4)).toEqual(['45', '45', '135', '135']);
  });
});

describe('a row of lengths', () => {
  const length = (from: number, to: number, figure = '10.00') => ({
    from,
    to,
    figure,
    word: 'stack',
    partFrom: 0,
    partTo: 0,
  });

  it('puts the figure between the arrows where it fits, outside where it does not', () => {
    expect(placeLengths([length(100, 200)], 0, STACK_WIDTH)[0]).toMatchObject({
      lettering: 'between',
      arrows: 'inside',
    });
    expect(placeLengths([length(100, 110)], 0, STACK_WIDTH)[0]).toMatchObject({
      lettering: 'left',
      arrows: 'outside',
    });
    expect(placeLengths([length(4, 14)], 0, STACK_WIDTH)[0]).toMatchObject({ lettering: 'right' });
  });

  it('keeps a chain in one row, and takes another row when figures would meet', () => {
    const chain = placeLengths([length(50, 150), length(150, 250)], 0, STACK_WIDTH);
    expect(chain.map((one) => one.row)).toEqual([0, 0]);
    const close = placeLengths([length(100, 160), length(160, 166), length(166, 260)], 0, STACK_WIDTH);
    for (const [index, one] of close.entries()) {
      for (const other of close.slice(index + 1)) expect(overlaps(one.box, other.box)).toBe(false);
    }
    expect(Math.max(...close.map((one) => one.row))).toBe(1);
  });
});

describe('lettering', () => {
  it('is spread without changing its order or leaving its ends', () => {
    expect(spread([10, 11, 12], 5, 0, 100)).toEqual([10, 15, 20]);
    expect(spread([98, 97, 99], 5, 0, 100)).toEqual([95, 90, 100]);
    expect(spread([-20], 5, 0, 100)).toEqual([0]);
  });

  it('is kept off a line by the shortest way to it, whichever way the line runs', () => {
    const from = { x: 1, y: 2 };
    for (const [to, point, away] of [
      [{ x: 1, y: 12 }, { x: 4, y: 7 }, 3],
      [{ x: 11, y: 2 }, { x: 7, y: 6 }, 4],
      [{ x: 9, y: 8 }, { x: 2, y: 9 }, 5],
      [{ x: 11, y: 2 }, { x: 14, y: 6 }, 5],
      [{ x: 1, y: 12 }, { x: 1, y: -3 }, 5],
      [from, { x: 4, y: 6 }, 5],
    ] as const)
      expect(pointToSegment(point, from, to)).toBeCloseTo(away, 9);
  });

  it('is cut to its room with an ellipsis', () => {
    expect(fitText('plate', 13, 100)).toBe('plate');
    const cut = fitText('a casting with a long name', 13, 60);
    expect(cut).toMatch(/^a cas.*…$/);
    expect(textWidth(cut, 13)).toBeLessThanOrEqual(60);
  });
});

describe('several drawings on one page', () => {
  it('share no id', () => {
    const two = (id: string): VNode => (
      <>
        <FacePlan id={`${id}-p`} shape={shape(5)} {...MEASURES} stations={[]} marks={[]} unit="in" />
        <TrackUnrolled id={`${id}-t`} check={track()} studCount={5} unit="in" />
        <StudInStack
          id={`${id}-s`}
          stud={stud}
          stack={stack}
          nut={nut}
          pullForwardMm={4}
          check={null}
          unit="in"
        />
      </>
    );
    expectSound(
      renderPart(
        <div>
          {two('a')}
          {two('b')}
        </div>,
      ),
    );
  });
});

describe('the window of torque', () => {
  const draw = (changes: Partial<Parameters<typeof TorqueWindow>[0]> = {}) =>
    renderPart(
      <TorqueWindow
        id="w"
        torqueNm={36}
        enoughNm={34}
        mostNm={38}
        preloadN={{ nominal: 19_000, least: 9000, most: 24_000 }}
        lossN={5000}
        proofShare={0.72}
        neededN={8000}
        unit="mm"
        {...changes}
      />,
    );

  it('says in words what it shows, and blocks nothing', () => {
    expectSound(draw());
    expect(draw()).toContain('It is enough from 34.0 N·m. It is too much above 38.0 N·m.');
    expect(draw({ unit: 'in' })).toContain('too much above 28.0 lb·ft');
  });

  it('shades what holds between the two limits, and nothing where no torque does both', () => {
    expect(tagsOf(draw(), 'rect', 'metal')).toHaveLength(2);
    const zone = tagsOf(draw(), 'rect', 'metal')[0] ?? '';
    const limits = [...draw().matchAll(/M([\d.]+) -24V/g)].map(([, x]) => Number(x));
    expect(numberOf(zone, 'x')).toBeCloseTo(limits[0] ?? 0, 1);
    expect(numberOf(zone, 'x') + numberOf(zone, 'width')).toBeCloseTo(limits[1] ?? 0, 1);
    expect(tagsOf(draw({ enoughNm: 40 }), 'rect', 'metal')).toHaveLength(1);
  });

  it.each([
    { enoughNm: null, lossN: null, preloadN: { nominal: 19_000, least: null, most: 24_000 } },
    { mostNm: null, proofShare: null },
    { enoughNm: 300, mostNm: 2 },
  ])('draws with %o', (changes) => {
    const html = draw(changes);
    expectSound(html);
    for (const tag of tagsOf(html, 'text')) {
      expect(numberOf(tag, 'x')).toBeGreaterThanOrEqual(0);
      expect(numberOf(tag, 'x')).toBeLessThanOrEqual(352);
    }
  });
});

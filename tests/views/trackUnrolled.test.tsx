import { describe, expect, it } from 'vitest';
import { textWidth } from '../../views/drawings/lettering.ts';
import { TALL, TrackUnrolled, trackScales, WIDE } from '../../views/drawings/trackUnrolled.tsx';
import { renderPart } from '../../views/render.ts';
import { expectSound, numberOf, tagsOf, valuesOf } from './markup.ts';
import { stationAnswer, track } from './samples.ts';

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

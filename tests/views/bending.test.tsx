import { readFileSync } from 'node:fs';
import { render } from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import { BentSection } from '../../views/drawings/bentSection.tsx';
import { levelLoops } from '../../views/drawings/levelLoops.ts';
import { PressureMap, type PressureMapProps } from '../../views/drawings/pressureMap.tsx';
import { expectSound, tagsOf, valuesOf } from './markup.ts';

const areaOf = (loop: readonly { row: number; column: number }[]) =>
  loop.reduce((sum, { row, column }, i) => {
    const next = loop[(i + 1) % loop.length]!;
    return sum + (row * next.column - next.row * column) / 2;
  }, 0);
const grid = (rows: number, columns: number, value: (row: number, column: number) => number) =>
  Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_, column) => value(row, column)),
  );

describe('the outline of what is above a level', () => {
  it('is one loop of a circle’s area for a cone, and runs the other way round a hole', () => {
    const cone = (sign: number) => grid(41, 41, (row, column) => sign * Math.hypot(row - 20, column - 20));
    const [loop, ...more] = levelLoops(cone(-1), -15);
    expect(more).toEqual([]);
    expect(loop!.some(({ border }) => border)).toBe(false);
    expect(Math.abs(areaOf(loop!)) / (Math.PI * 15 ** 2)).toBeCloseTo(1, 2);
    const areas = levelLoops(cone(1), 15).map(areaOf);
    expect(areas).toHaveLength(2);
    expect(Math.sign(areas[0]!)).toBe(-Math.sign(areas[1]!));
    expect(Math.abs(areas[0]! + areas[1]!) / (40 ** 2 - Math.PI * 15 ** 2)).toBeCloseTo(1, 2);
  });
  it('closes along the edge, and knows which pieces do', () => {
    const [loop] = levelLoops(
      grid(3, 5, (_, column) => column),
      2.5,
    );
    expect(Math.abs(areaOf(loop!))).toBeCloseTo(2 * 1.5, 9);
    const level = loop!.filter(({ border }) => !border);
    expect(level.length).toBeGreaterThan(0);
    for (const { column } of level) expect(column).toBeCloseTo(2.5, 9);
  });
  it('parts two tops that meet at a corner', () => {
    const loops = levelLoops(
      grid(4, 4, (row, column) => (row < 2 === column < 2 ? 1 : 0)),
      0.5,
    );
    expect(loops.reduce((sum, loop) => sum + Math.abs(areaOf(loop)), 0)).toBeGreaterThan(4);
    expect(
      levelLoops(
        grid(3, 3, () => 0),
        0.5,
      ),
    ).toEqual([]);
  });
});

/** Pressure that rises from 0 at a radius to the outer edge, the same all round. */
const radii = Array.from({ length: 13 }, (_, i) => 107 + (25 * i) / 12);
const angles = Array.from({ length: 33 }, (_, i) => (45 * i) / 32);
const map = (pressureAt: (radius: number, angle: number) => number): PressureMapProps['map'] => ({
  radiiMm: radii,
  anglesDeg: angles,
  pressureMPa: radii.map((radius) => angles.map((angle) => Math.max(0, pressureAt(radius, angle)))),
});
const drawn = (changes: Partial<PressureMapProps>) =>
  render(
    <PressureMap
      id="p"
      map={map((_, angle) => 2 + Math.cos((angle * Math.PI) / 45))}
      meanPressureMPa={2}
      peakAt={{ radiusMm: 120, angleDeg: 0 }}
      trackInnerDiameterMm={214}
      trackOuterDiameterMm={264}
      studCount={4}
      studCircleDiameterMm={286}
      marks={[]}
      unit="mm"
      {...changes}
    />,
  );
const SCALE = 312 / 286;

describe('the map of pressure', () => {
  it('repeats one sector round the studs, is small, and leaves nothing to a script or a style', () => {
    for (const studCount of [3, 4, 6]) {
      const html = drawn({ studCount });
      expectSound(html);
      expect(tagsOf(html, 'use')).toHaveLength(studCount);
      expect(html.length).toBeLessThan(20_000);
    }
  });

  it('says the pressure in the units of whoever reads it', () => {
    expect(drawn({})).toContain('mean 2.00 MPa');
    const inch = drawn({ unit: 'in' });
    expect(inch).toContain('mean 290 psi');
    expect(inch).toMatch(/<th scope="col">psi<\/th>/);
    expect(inch).not.toContain('MPa');
  });

  it('mirrors what is known of half a sector to the other side of the stud', () => {
    for (const tag of tagsOf(drawn({}), 'path').filter((path) => /class="press-\d/.test(path))) {
      const xs = [...valuesOf(tag, 'd')[0]!.matchAll(/(?:^M|[ M])?([-\d.]+) ([-\d.]+)/g)].map((found) =>
        Number(found[1]),
      );
      expect(Math.max(...xs)).toBeGreaterThan(5);
      expect(Math.max(...xs) + Math.min(...xs)).toBeCloseTo(0, 0);
    }
  });

  it('draws the line between two bands where the pressure is so high', () => {
    // p/p_m runs from 0 at r 112 to 2 at r 132: bands of 0.5, the fifth of a line at 1.5 lies at r 127.
    const html = drawn({ map: map((radius) => (4 * (radius - 112)) / 20) });
    const lines = [...html.matchAll(/<path d="([^"]+)" class="press-line[^"]*"/g)].map((found) => found[1]!);
    const at = lines.map((d) => {
      const points = d.slice(1).split(/[MZ ]/).map(Number);
      expect(points.length).toBeGreaterThan(60);
      return Array.from({ length: points.length / 2 }, (_, i) =>
        Math.hypot(points[2 * i]!, points[2 * i + 1]!),
      );
    });
    for (const [i, radius] of [112, 117, 122, 127].entries()) {
      for (const distance of at[i]!) expect(Math.abs(distance / SCALE - radius)).toBeLessThan(0.15);
    }
    expect(html).toContain('The lining does not touch about 18 % of the friction surface.');
    expect(html).toContain('not touching');
  });

  it('says in its key how much of the track each band covers, in all the whole of it', () => {
    const html = drawn({});
    expect(html).toContain('The lining touches all of the friction surface.');
    expect(html).not.toContain('not touching');
    const rows = [...html.matchAll(/<\/svg>([\d. –]+)<\/th><td>([\d. –]+)<\/td><td>(\d+) %/g)];
    expect(rows.map((row) => row[1])).toEqual([
      '1.4 – 1.6',
      '1.2 – 1.4',
      '1.0 – 1.2',
      '0.8 – 1.0',
      '0.6 – 0.8',
      '0.4 – 0.6',
    ]);
    expect(rows[0]![2]).toBe('2.80 – 3.20');
    const sum = rows.reduce((total, row) => total + Number(row[3]), 0);
    expect(Math.abs(sum - 100)).toBeLessThanOrEqual(3);
    // Least and most of a cosine cover alike.
    expect(rows[0]![3]).toBe(rows.at(-1)![3]);
  });

  it('says where marks sit, and how many would by chance', () => {
    const html = drawn({
      marks: [
        { angleDeg: 91, radiusMm: 120, depthMm: 0.2 },
        { angleDeg: 359, radiusMm: 120, depthMm: null },
        { angleDeg: 45, radiusMm: 120, depthMm: 0.1 },
        { angleDeg: 0, radiusMm: 140, depthMm: null },
      ],
    });
    expectSound(html);
    expect(html).toContain(
      'presses harder than its mean: 2 of 3 on the friction surface. By chance it would be about 50 %',
    );
    expect(html).toContain('Heat mark at 91°, radius 120.00 mm: 1.50 times the mean.');
    expect(html).toContain('Heat mark at 359°, radius 120.00 mm: 1.50 times the mean.');
    expect(html).toContain('Heat mark at 45°, radius 120.00 mm: 0.50 times the mean.');
    expect(html).toContain('Heat mark at 0°, radius 140.00 mm: off the friction surface.');
    // Clockwise from the top: a mark at 90° is on the right.
    const [first] = tagsOf(html, 'ellipse', 'press-mark');
    const [x, y] = /translate\(([-\d.]+) ([-\d.]+)\)/.exec(first!)!.slice(1).map(Number);
    expect(x).toBeGreaterThan(100);
    expect(Math.abs(y!)).toBeLessThan(5);
  });

  it('is one band where all is even, in inches where they are wanted, and nothing where nothing presses', () => {
    const even = drawn({ map: map(() => 2), unit: 'in' });
    expectSound(even);
    expect(tagsOf(even, 'path').filter((tag) => /class="press-\d/.test(tag))).toHaveLength(1);
    expect(even).toContain('radius 4.724 in');
    expectSound(drawn({ map: map(() => 0), meanPressureMPa: 0 }));
  });

  it('tells the bands apart by lightness alone, in light and in dark', () => {
    const css = readFileSync(new URL('../../views/assets/drawings.css', import.meta.url), 'utf8');
    const roots = [...css.matchAll(/:root \{([^}]*--press-0[^}]*)\}/g)].map(([, block]) =>
      [...block!.matchAll(/--press-(\d): #(\w\w)(\w\w)(\w\w)/g)].map(([, , ...parts]) => {
        const [r, g, b] = parts.map((part) => (Number.parseInt(part, 16) / 255) ** 2.2);
        const luminance = 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
        // CIE lightness, 0 to 100.
        return 116 * Math.cbrt(luminance) - 16;
      }),
    );
    expect(roots.map((lightness) => lightness.length)).toEqual([7, 7]);
    for (const [way, lightness] of [-1, 1].map((way, i) => [way, roots[i]!] as const)) {
      for (let i = 1; i < 7; i++) expect(way * (lightness[i]! - lightness[i - 1]!)).toBeGreaterThan(7);
    }
  });
});

describe('the bent section', () => {
  const radiiMm = Array.from({ length: 61 }, (_, i) => 45 + (105 * i) / 60);
  const curve = (label: string, bossMm: number) => ({
    label,
    section: {
      radiiMm,
      behindStudMm: radiiMm.map((r) => (bossMm * (150 - r)) / 105),
      betweenStudsMm: radiiMm.map(
        (r) => (bossMm * (150 - r)) / 105 + 0.02 * Math.sin((Math.PI * (r - 45)) / 105),
      ),
    },
  });
  const section = (labels: readonly [string, number][], unit: 'mm' | 'in' = 'mm') =>
    render(
      <BentSection
        id="b"
        curves={labels.map(([label, mm]) => curve(label, mm))}
        trackInnerDiameterMm={214}
        trackOuterDiameterMm={264}
        bossDiameterMm={90}
        rimDiameterMm={300}
        studCircleDiameterMm={286}
        unit={unit}
      />,
    );

  it('draws deflections as many times as it says, down toward the engine', () => {
    const html = section([['new wall', 0.8]]);
    expectSound(html);
    const times = [...html.matchAll(/exaggerated (\d+) times/g)].map((found) => Number(found[1]));
    expect(times).toEqual([30, 30, 1000]);
    const d = valuesOf(tagsOf(html, 'path', 'bent-0')[0]!, 'd')[0]!;
    const points = d.slice(1).split(' ').map(Number);
    const perMm = (points.at(-2)! - points[0]!) / 105;
    expect((points[1]! - points.at(-1)!) / perMm / 0.8).toBeCloseTo(30, 1);
    expect(points[1]).toBeGreaterThan(points.at(-1)!);
  });

  it('tells curves apart by their line, names them, and has every figure in a table', () => {
    const html = section([
      ['new wall', 0.8],
      ['wall now', 0.85],
      ['after the cut', 0.9],
    ]);
    for (const name of ['bent-0', 'bent-1', 'bent-2']) expect(tagsOf(html, 'path', name)).toHaveLength(4);
    const css = readFileSync(new URL('../../views/assets/drawings.css', import.meta.url), 'utf8');
    const dashes = [...css.matchAll(/\.bent-\d \{[^}]*stroke-dasharray: ([^;]+);/g)].map((found) => found[1]);
    expect(new Set(dashes).size).toBe(3);
    // Middle of the track: r 119.5, so (150 − 119.5)/105 of the boss, and 0.02·sin(π·74.5/105) more midway.
    expect(html).toContain(
      '<th scope="row">after the cut</th><td>0.900</td><td>0.261</td><td>0.277</td><td>15.8 µm</td>',
    );
    expect(html).toContain('wall now: the center moves 0.850 mm toward the engine');
  });

  it('is drawn in inches too, and where nothing moves', () => {
    const html = section([['new wall', 0.8]], 'in');
    expect(html).toContain('<td>0.0315</td>');
    // Its bars are round figures of an inch.
    const bars = [...html.matchAll(/>([\d.]+) in<\/text>/g)].map((found) => found[1]);
    expect(bars).toHaveLength(3);
    for (const bar of bars) expect(bar).toMatch(/^0\.0*[1235]$/);
    expectSound(section([['new wall', 0]]));
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FAMILY } from '../../../shared/words/fields/family.ts';
import { CoverLettered } from '../../../views/drawings/coverLettered.tsx';
import { CoverSectionSmall, halfSectionOf } from '../../../views/drawings/coverSection.tsx';
import { renderPart } from '../../../views/render.ts';
import { expectSound } from '../../views/markup.ts';
import { anyCover, middle } from './anyCoverDrawn.ts';
import { expectNear, expectOrderly, extent, lengthIn, pointsOf, readDrawing, xsOf, ysOf } from './readSvg.ts';

const RUNS = { numRuns: 40 };
const unit = fc.constantFrom('mm' as const, 'in' as const);

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

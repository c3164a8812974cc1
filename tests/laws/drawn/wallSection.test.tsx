import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { WallSection } from '../../../views/drawings/wallSection.tsx';
import { renderPart } from '../../../views/render.ts';
import { expectSound } from '../../views/markup.ts';
import { anyFace, horizontal } from './anyCoverDrawn.ts';
import { expectNear, expectOrderly, extent, lengthIn, readDrawing, xsOf, ysOf } from './readSvg.ts';

const RUNS = { numRuns: 40 };

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

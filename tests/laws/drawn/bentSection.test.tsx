import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StiffnessAnswer } from '../../../shared/words/bending/stiffness.ts';
import { BentSection } from '../../../views/drawings/bentSection.tsx';
import { renderPart } from '../../../views/render.ts';
import { expectSound } from '../../views/markup.ts';
import { anyBent } from './anyChartDrawn.ts';
import {
  type Drawing,
  expectNear,
  expectOrderly,
  extent,
  pointsOf,
  readDrawings,
  xsOf,
  ysOf,
} from './readSvg.ts';

const RUNS = { numRuns: 40 };
const textX = (drawing: Drawing, says: (text: string) => boolean) =>
  drawing.of('text').filter(({ text }) => says(text));
const number = (text: string) => Number(/-?[\d.]+/.exec(text.replace('−', '-'))![0]);

describe('a bent cover, read back in mm', () => {
  it('has every curve where it bends to, at the exaggeration it says, and bars as long as their figures', () => {
    fc.assert(
      fc.property(anyBent, ({ bend, ripple, curves: count, unit: read, ...cover }) => {
        const steps = 8;
        const [center, rim] = [cover.bossDiameterMm / 2, cover.rimDiameterMm / 2];
        const radiiMm = Array.from({ length: steps + 1 }, (_, i) => center + ((rim - center) * i) / steps);
        const curves = Array.from({ length: count }, (_, index) => {
          const behindStudMm = radiiMm.map((_, i) => bend * (1 + 0.1 * index) * (1 - i / steps) ** 1.5);
          const section = {
            radiiMm,
            behindStudMm,
            betweenStudsMm: behindStudMm.map(
              (w, i) => w - ripple * (1 + index) * (i / steps) * (1 - i / steps) * 4,
            ),
          } as StiffnessAnswer['section'];
          return { label: `curve ${index + 1}`, section };
        });
        const html = renderPart(<BentSection id="b" curves={curves} {...cover} unit={read} />);
        expectSound(html);
        expectOrderly(html, { blank: 40 });
        const drawing = readDrawings(html)[0]!;
        const k = 336 / (rim - center);
        const zeros = drawing.of('path', 'thin').map((one) => one.lines[0]![0]!.y);
        expect(zeros).toHaveLength(3);
        const times = textX(drawing, (one) => one.startsWith('exaggerated')).map(({ text }) => number(text));
        expect(times).toHaveLength(3);
        expect(times[0]).toBe(times[1]);
        const bars = drawing.of('path', 'dim').map((one) => extent(ysOf(one)));
        const barTexts = textX(drawing, (one) => / (µm|mm|in)$/.test(one)).map(({ text }) => text);
        expect([bars.length, barTexts.length]).toEqual([3, 3]);
        const mmOf = (text: string) =>
          number(text) * (text.endsWith('µm') ? 0.001 : text.endsWith('in') ? 25.4 : 1);
        for (let panel = 0; panel < 3; panel++) {
          const perMm = times[panel]! * k;
          const within = 0.02 + 0.006 * 104;
          expectNear(bars[panel]!.to - bars[panel]!.from, perMm * mmOf(barTexts[panel]!), within, 'a bar');
          for (const [index, { section }] of curves.entries()) {
            const line = drawing.of('path', `bent-${index}`)[panel]!;
            const values = [
              section.behindStudMm,
              section.betweenStudsMm,
              section.betweenStudsMm.map((w, i) => w - section.behindStudMm[i]!),
            ][panel]!;
            const points = pointsOf(line);
            expect(points).toHaveLength(steps + 1);
            points.forEach((point, i) => {
              expectNear(point.x, 6 + k * (radiiMm[i]! - center), 0.02, 'the radius');
              expectNear(
                point.y - zeros[panel]!,
                perMm * values[i]!,
                within,
                'how far it moves toward the engine',
              );
            });
          }
          const track = drawing.of('rect', 'metal')[panel]!;
          expectNear(
            (extent(xsOf(track)).from - 6) / k + center,
            cover.trackInnerDiameterMm / 2,
            0.05,
            'the surface begins',
          );
          expectNear(
            (extent(xsOf(track)).to - 6) / k + center,
            cover.trackOuterDiameterMm / 2,
            0.05,
            'the surface ends',
          );
        }
        const stud = drawing.of('path', 'chain').map((one) => one.lines[0]![0]!.x);
        expect(stud).toHaveLength(1);
        expectNear((stud[0]! - 6) / k + center, cover.studCircleDiameterMm / 2, 0.05, 'the stud');
      }),
      RUNS,
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ChecksOverTime } from '../../../views/drawings/checksOverTime.tsx';
import { renderPart } from '../../../views/render.ts';
import { expectSound } from '../../views/markup.ts';
import { expectNear, expectOrderly, extent, lengthIn, pointsOf, readDrawing, xsOf, ysOf } from './readSvg.ts';

const RUNS = { numRuns: 40 };
const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const unit = fc.constantFrom('mm' as const, 'in' as const);

describe('checks on a master over time, read back', () => {
  const day = (n: number) => new Date(Date.UTC(2026, 0, 1 + n)).toISOString().slice(0, 10);
  const anyChecks = fc.record({
    checks: fc.array(
      fc.record({ on: fc.integer({ min: 0, max: 400 }), offMm: mm(-0.02, 0.02), off: fc.boolean() }),
      {
        minLength: 1,
        maxLength: 12,
      },
    ),
    uncertaintyMm: fc.option(mm(0.0005, 0.01)),
    limitMm: fc.option(mm(0.001, 0.03)),
    drifts: fc.boolean(),
    unit,
  });

  it('has every check at its day and its error, the limits and the band about nothing, dots within and crosses past', () => {
    fc.assert(
      fc.property(anyChecks, ({ checks, uncertaintyMm, limitMm, drifts, unit: read }) => {
        const sorted = checks
          .toSorted((a, b) => a.on - b.on)
          .map(({ on, ...one }) => ({ day: day(on), on, ...one }));
        const [first, last] = [sorted[0]!, sorted.at(-1)!];
        const drift =
          drifts && last.on > first.on
            ? [
                { day: first.day, offMm: 0.001 },
                { day: last.day, offMm: -0.004 },
              ]
            : [];
        const html = renderPart(
          <ChecksOverTime
            checks={sorted}
            uncertaintyMm={uncertaintyMm}
            limitMm={limitMm}
            drift={drift}
            unit={read}
          />,
        );
        expectSound(html);
        expectOrderly(html);
        const drawing = readDrawing(html);
        const figures = drawing
          .of('text', 'end')
          .filter(({ text }) => /^−?[\d.]+$/.test(text))
          .map((one) => ({ y: one.attribute('y') - 4, mm: lengthIn(one.text, read).mm }));
        expect(figures.length).toBeGreaterThan(2);
        const [low, high] = [figures[0]!, figures.at(-1)!];
        const perMm = (low.y - high.y) / (high.mm - low.mm);
        const y = (value: number) => low.y - perMm * (value - low.mm);
        for (const one of figures) expectNear(one.y, y(one.mm), 0.05, `the tick at ${one.mm}`);
        const zero = drawing.of('path', 'chain')[0]!.lines[0]![0]!;
        expectNear(zero.y, y(0), 0.05, 'nothing');
        const dots = drawing
          .of('circle', 'st-measured')
          .map((one) => ({ x: one.attribute('cx'), y: one.attribute('cy') }));
        const crosses = drawing.of('path', 'st-ring').map((one) => {
          const [x, ys] = [extent(xsOf(one)), extent(ysOf(one))];
          expect([x.to - x.from, ys.to - ys.from].map(Math.round)).toEqual([10, 10]);
          return { x: (x.from + x.to) / 2, y: (ys.from + ys.to) / 2 };
        });
        expect(dots).toHaveLength(sorted.filter(({ off }) => !off).length);
        expect(crosses).toHaveLength(sorted.filter(({ off }) => off).length);
        const span = last.on - first.on;
        const x = (on: number) => (span === 0 ? 198 : 68 + (260 * (on - first.on)) / span);
        const of = { dot: 0, cross: 0 };
        for (const one of sorted) {
          const at = one.off ? crosses[of.cross++]! : dots[of.dot++]!;
          expectNear(at.x, x(one.on), 0.02, `the check of ${one.day}`);
          expectNear(at.y, y(one.offMm), 0.05, `what it was off`);
        }
        const limits = drawing.of('path', 'limit').map((one) => one.lines[0]![0]!.y);
        expect(limits).toHaveLength(limitMm === null ? 0 : 2);
        for (const [index, sign] of [1, -1].entries())
          if (limitMm !== null) expectNear(limits[index]!, y(sign * limitMm), 0.05, 'a limit');
        const band = drawing.of('rect', 'metal').map((one) => extent(ysOf(one)));
        expect(band).toHaveLength(uncertaintyMm === null ? 0 : 1);
        for (const one of band) {
          expectNear(one.from, y(uncertaintyMm!), 0.05, 'the band, upper edge');
          expectNear(one.to, y(-uncertaintyMm!), 0.05, 'the band, lower edge');
        }
        const line = drawing.of('path', 'cut-line');
        expect(line).toHaveLength(drift.length / 2);
        for (const one of line) {
          const [a, b] = pointsOf(one);
          expectNear(a!.y, y(0.001), 0.05, 'the drift begins');
          expectNear(b!.y, y(-0.004), 0.05, 'the drift ends');
          expect([a!.x, b!.x]).toEqual([68, 328]);
        }
        const days = drawing
          .of('text', 'label')
          .filter(({ text }) => /\d{4}/.test(text) && !/^−?[\d.]+$/.test(text));
        expect(days).toHaveLength(first.day === last.day ? 1 : 2);
      }),
      RUNS,
    );
  });
});

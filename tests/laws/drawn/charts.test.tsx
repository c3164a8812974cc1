import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StiffnessAnswer } from '../../../shared/words/bending/stiffness.ts';
import { BentSection } from '../../../views/drawings/bentSection.tsx';
import { ChecksOverTime } from '../../../views/drawings/checksOverTime.tsx';
import { FlexplateSection } from '../../../views/drawings/flexplateSection.tsx';
import { PressureMap } from '../../../views/drawings/pressureMap.tsx';
import { TorqueWindow } from '../../../views/drawings/torqueWindowPicture.tsx';
import { renderPart } from '../../../views/render.ts';
import { expectSound } from '../../views/markup.ts';
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
  xsOf,
  ysOf,
} from './readSvg.ts';

const RUNS = { numRuns: 40 };
const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const unit = fc.constantFrom('mm' as const, 'in' as const);
/** 1 lbf·ft and 1 lbf exactly, from the international foot and pound (NIST SP 811, appendix B.8). */
const NM_PER_LB_FT = 1.3558179483314003;
const N_PER_LB = 4.4482216152605;
const textX = (drawing: Drawing, says: (text: string) => boolean) =>
  drawing.of('text').filter(({ text }) => says(text));
const number = (text: string) => Number(/-?[\d.]+/.exec(text.replace('−', '-'))![0]);
const upright = (drawing: Drawing, className: string) =>
  drawing
    .of('path', className)
    .filter((one) => one.lines.length === 1 && new Set(one.lines[0]!.map(({ x }) => x)).size === 1)
    .map((one) => one.lines[0]![0]!.x);

describe('the window of torque, read back', () => {
  const anyWindow = fc
    .record({
      torqueNm: mm(10, 90),
      enoughNm: fc.option(mm(10, 90)),
      mostNm: fc.option(mm(10, 90)),
      nominal: mm(8000, 30000),
      under: fc.option(mm(500, 6000)),
      over: mm(500, 6000),
      lossN: fc.option(mm(100, 5000)),
      proofShare: fc.option(mm(0.3, 1.1)),
      neededN: mm(1000, 25000),
      unit,
    })
    .map(({ nominal, under, over, ...rest }) => ({
      ...rest,
      preloadN: { nominal, least: under === null ? null : nominal - under, most: nominal + over },
    }));

  it('has torque, enough and too much on one scale, what holds between them, each with its figure', () => {
    fc.assert(
      fc.property(anyWindow, (props) => {
        const html = renderPart(<TorqueWindow id="w" {...props} />);
        expectSound(html);
        expectOrderly(html);
        const [drawing] = readDrawings(html);
        const perNm = props.unit === 'in' ? 1 / NM_PER_LB_FT : 1;
        const pointer = upright(drawing!, 'scribe');
        const limits = upright(drawing!, 'limit');
        const known = [
          { value: props.enoughNm, says: 'enough from' },
          { value: props.mostNm, says: 'too much above' },
        ].filter((one): one is { value: number; says: string } => one.value !== null);
        expect(pointer).toHaveLength(1);
        expect(limits).toHaveLength(known.length);
        const values = [props.torqueNm, ...known.map(({ value }) => value)];
        const xs = [...pointer, ...limits];
        // Straight: the places lie as far apart as the torques, whichever two the scale is read from.
        const widest = values
          .flatMap((a, i) => values.map((b, j) => ({ i, j, apart: b - a })))
          .sort((a, b) => b.apart - a.apart)[0]!;
        if (widest.apart > 1) {
          const perUnit = (xs[widest.j]! - xs[widest.i]!) / widest.apart;
          expect(perUnit).toBeGreaterThan(0);
          values.forEach((value, index) => {
            expectNear(xs[index]! - xs[0]!, perUnit * (value - values[0]!), 0.1, `torque ${value}`);
          });
          // The scale ends a seventh of … its span outside: 0.7 of what lies farthest apart, on either side.
          const { from, to } = extent(drawing!.of('rect').flatMap(xsOf));
          expectNear(from, 10, 0.05, 'the scale begins at the edge');
          expectNear(to, 342, 0.05, 'and ends at the other');
          const spare = 0.7 * Math.max(widest.apart, 0.1 * Math.max(...values));
          const start = Math.max(0, Math.min(...values) - spare);
          expectNear((xs[0]! - 10) / perUnit, values[0]! - start, 0.2, 'where the scale begins');
        }
        const figures = drawing!.of('text', 'dim-figure');
        expect(figures).toHaveLength(1);
        expectNear(number(figures[0]!.text), props.torqueNm * perNm, 0.051, 'the torque');
        for (const [index, { value, says }] of known.entries()) {
          const text = textX(drawing!, (one) => one.startsWith(says));
          expect(text, says).toHaveLength(1);
          expectNear(number(text[0]!.text), value * perNm, 0.051, says);
          expect(html).toContain(`It is ${text[0]!.text}.`);
          expect(Math.abs(text[0]!.attribute('x') - limits[index]!)).toBeLessThan(90);
        }
        // What holds is plain metal, between enough and too much; all else is hatched.
        const holds = drawing!.of('rect', 'metal').map((one) => extent(xsOf(one)));
        const bad = drawing!.of('rect').filter((one) => one.fill.startsWith('url('));
        const crossed = props.enoughNm !== null && props.mostNm !== null && props.enoughNm > props.mostNm;
        if (crossed) expect(holds.every(({ from, to }) => to - from < 1)).toBe(true);
        else {
          const from = props.enoughNm === null ? 10 : limits[0]!;
          const to = props.mostNm === null ? 342 : limits.at(-1)!;
          if (to - from > 1) {
            expect(holds).toHaveLength(1);
            expectNear(holds[0]!.from, from, 0.03, 'what holds begins at enough');
            expectNear(holds[0]!.to, to, 0.03, 'and ends at too much');
          }
          const outside = bad.map((one) => extent(xsOf(one)));
          for (const one of outside) expect(one.to <= from + 0.1 || one.from >= to - 0.1).toBe(true);
          const slips = textX(drawing!, (one) => one === 'slips');
          for (const one of slips) expect(one.attribute('x')).toBeLessThan(from);
          for (const one of textX(drawing!, (text) => text === 'too much'))
            expect(one.attribute('x')).toBeGreaterThan(to);
        }
        expect(textX(drawing!, (one) => one === 'holds').length).toBeLessThanOrEqual(
          props.enoughNm === null ? 0 : 1,
        );
        expect(textX(drawing!, (one) => one === 'slips, and too much').length).toBeLessThanOrEqual(
          crossed ? 1 : 0,
        );
      }),
      RUNS,
    );
  });

  it('has least, tightened and most preload on one scale from nothing, beside what is needed and 75 % of proof', () => {
    fc.assert(
      fc.property(anyWindow, (props) => {
        const html = renderPart(<TorqueWindow id="w" {...props} />);
        const drawing = readDrawings(html)[1]!;
        const { preloadN, neededN, proofShare } = props;
        const least = preloadN.least ?? Math.max(0, 2 * preloadN.nominal - preloadN.most);
        const bar = extent(xsOf(drawing.of('rect', 'metal')[0]!));
        const tightened = upright(drawing, 'thin');
        expect(tightened).toHaveLength(1);
        const perN = (bar.to - 10) / preloadN.most;
        const x = (N: number) => 10 + perN * N;
        expectNear(bar.from, x(least), 0.05, 'the least');
        expectNear(tightened[0]!, x(preloadN.nominal), 0.03, 'as tightened');
        const frame = drawing.of('path', 'thick').find((one) => one.lines[0]!.length === 4 + 1)!;
        expectNear(extent(xsOf(frame)).from, bar.from, 0.02, 'the frame begins');
        expectNear(extent(xsOf(frame)).to, bar.to, 0.02, 'the frame ends');
        const limits = upright(drawing, 'limit');
        const allowed = proofShare === null ? null : (0.75 * preloadN.most) / proofShare;
        expect(limits).toHaveLength(allowed === null ? 1 : 2);
        expectNear(limits[0]!, x(neededN), 0.05, 'what is needed');
        if (allowed !== null) expectNear(limits[1]!, x(allowed), 0.1, '75 % of proof');
        const greatest = Math.max(preloadN.most, neededN, allowed ?? 0);
        expectNear(x(1.08 * greatest), 342, 0.2, 'the scale ends a little beyond the greatest');
        const [perUnit, decimals] = props.unit === 'in' ? [1 / N_PER_LB, 0] : [0.001, 1];
        const within = 0.51 * 10 ** -decimals;
        const figures = drawing.of('text', 'dim-figure').map((one) => ({ text: one.text, x: one.raw('x') }));
        const words = drawing.of('text', 'label').map((one) => ({ text: one.text, x: one.raw('x') }));
        expect(words.map(({ text }) => text)).toEqual([
          preloadN.least === null ? 'low' : 'least',
          'tightened',
          'most',
        ]);
        const leaders = drawing.of('path', 'leader').map((one) => one.lines[0]!);
        for (const [index, value] of [least, preloadN.nominal, preloadN.most].entries()) {
          expectNear(number(figures[index]!.text), value * perUnit, within, words[index]!.text);
          expect(figures[index]!.x).toBe(words[index]!.x);
          expectNear(leaders[index]![0]!.x, x(value), 0.05, 'a leader begins at its place');
          expectNear(leaders[index]!.at(-1)!.x, Number(words[index]!.x), 0.02, 'and ends at its figure');
        }
        const needed = textX(drawing, (one) => one.startsWith('needed to hold'))[0]!;
        expectNear(number(needed.text), neededN * perUnit, within, 'what is needed');
        const proof = textX(drawing, (one) => one.startsWith('75 % of proof'));
        expect(proof).toHaveLength(allowed === null ? 0 : 1);
        if (allowed !== null)
          expectNear(number(proof[0]!.text.slice(5)), allowed * perUnit, within, '75 % of proof');
      }),
      RUNS,
    );
  });
});

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

/** A cover bent any way, and pressed any way. */
const anyBent = fc
  .record({
    boss: mm(60, 110),
    inner: mm(150, 200),
    wide: mm(18, 30),
    rimOut: mm(25, 45),
    studCount: fc.constantFrom(3, 4, 6),
    bend: mm(0.05, 1.5),
    ripple: mm(0.002, 0.03),
    curves: fc.integer({ min: 1, max: 4 }),
    peakShare: mm(0, 1),
    peakAngle: fc.oneof(fc.constant(0), fc.constant(1), mm(0.05, 0.95)),
    marks: fc.array(fc.record({ angleDeg: mm(0, 359), share: mm(0, 1), depthMm: fc.option(mm(0, 0.3)) }), {
      maxLength: 4,
    }),
    unit,
  })
  .map(({ boss, inner, wide, rimOut, peakShare, peakAngle, ...one }) => {
    const outer = inner + 2 * wide;
    const circle = outer + rimOut * 0.8;
    const rim = circle + rimOut;
    return {
      ...one,
      bossDiameterMm: boss,
      trackInnerDiameterMm: inner,
      trackOuterDiameterMm: outer,
      studCircleDiameterMm: circle,
      rimDiameterMm: rim,
      peakAt: { radiusMm: inner / 2 + peakShare * wide, angleDeg: (peakAngle * 180) / one.studCount },
    };
  });

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

describe('the map of pressure, read back in mm', () => {
  it('has surface, studs, the peak in every sector and the marks where they are', () => {
    fc.assert(
      fc.property(
        anyBent,
        ({
          marks,
          studCount,
          peakAt,
          unit: read,
          bend: _bend,
          ripple: _ripple,
          curves: _curves,
          ...cover
        }) => {
          const [inner, outer] = [cover.trackInnerDiameterMm / 2, cover.trackOuterDiameterMm / 2];
          const radiiMm = Array.from({ length: 6 }, (_, i) => inner + ((outer - inner) * i) / 5);
          const anglesDeg = Array.from({ length: 9 }, (_, i) => (180 / studCount) * (i / 8));
          const map = {
            radiiMm,
            anglesDeg,
            pressureMPa: radiiMm.map((_, i) => anglesDeg.map((__, j) => 1 + 0.2 * i - 0.1 * j)),
          };
          const placed = marks.map(({ share, ...mark }) => ({
            ...mark,
            radiusMm: inner + share * (outer - inner),
          }));
          const html = renderPart(
            <PressureMap
              id="m"
              map={map}
              meanPressureMPa={1.2}
              peakAt={peakAt}
              studCount={studCount}
              marks={placed}
              unit={read}
              {...cover}
            />,
          );
          expectSound(html);
          const drawing = readDrawings(html)[0]!;
          const k = 312 / cover.studCircleDiameterMm;
          const at = (angleDeg: number, radiusMm: number): Point => ({
            x: k * radiusMm * Math.sin((angleDeg * Math.PI) / 180),
            y: -k * radiusMm * Math.cos((angleDeg * Math.PI) / 180),
          });
          const close = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y) < 0.15;
          const round = drawing.of('circle', 'thick').map((one) => one.attribute('r'));
          expectNear(round[0]!, k * outer, 0.06, 'the surface, outside');
          expectNear(round[1]!, k * inner, 0.06, 'the surface, inside');
          expectNear(drawing.of('circle', 'chain')[0]!.attribute('r'), 156, 0.06, 'the stud circle');
          const studs = drawing
            .of('circle', 'stud-body')
            .map((one) => ({ x: one.attribute('cx'), y: one.attribute('cy') }));
          expect(studs).toHaveLength(studCount);
          studs.forEach((stud, index) => {
            expect(
              close(stud, at((360 * index) / studCount, cover.studCircleDiameterMm / 2)),
              `stud ${index + 1}`,
            ).toBe(true);
          });
          const turns = drawing.of('use').map((one) => number(one.raw('transform') || '0'));
          expect(turns.length).toBe(studCount);
          for (const [index, turn] of turns.entries())
            expectNear(turn, (360 * index) / studCount, 0.001, 'a sector');
          // The peak, in every sector, on both sides of its stud where it is neither behind it nor midway.
          const crosses = drawing.of('path', 'press-over').map((one) => {
            const [across, down] = one.lines;
            return { x: (across![0]!.x + across![1]!.x) / 2, y: (down![0]!.y + down![1]!.y) / 2 };
          });
          const half = 180 / studCount;
          const alone = peakAt.angleDeg < 0.05 || peakAt.angleDeg > half - 0.05;
          expect(crosses).toHaveLength(alone ? studCount : 2 * studCount);
          for (let stud = 0; stud < studCount; stud++)
            for (const side of alone ? [1] : [-1, 1]) {
              const wanted = at((360 * stud) / studCount + side * peakAt.angleDeg, peakAt.radiusMm);
              expect(
                crosses.some((cross) => close(cross, wanted)),
                'the peak',
              ).toBe(true);
            }
          const ellipses = drawing.of('ellipse', 'press-mark').map((one) => {
            const [x, y, turn] = [...one.raw('transform').matchAll(/-?[\d.]+/g)].map(Number);
            return { x: x!, y: y!, turn: turn!, rx: one.attribute('rx') };
          });
          expect(ellipses).toHaveLength(placed.length);
          ellipses.forEach((ellipse, index) => {
            const mark = placed[index]!;
            expect(close(ellipse, at(mark.angleDeg, mark.radiusMm)), `mark ${index + 1}`).toBe(true);
            expectNear(ellipse.turn, mark.angleDeg, 0.06, 'a mark lies along the surface');
            expectNear(
              ellipse.rx,
              Math.min(24, 11 + 38 * (mark.depthMm ?? 0)),
              0.06,
              'a deeper mark is larger',
            );
          });
          const names = drawing.texts.filter((one) => one.startsWith('stud '));
          expect(names).toEqual(Array.from({ length: studCount }, (_, index) => `stud ${index + 1}`));
          expect(drawing.of('text', 'strong').map(({ text }) => text)).toEqual(
            placed.map((_, index) => String(index + 1)),
          );
        },
      ),
      RUNS,
    );
  });
});

describe('a flexplate at a stud hole, read back', () => {
  it.each(['one-piece', 'two-piece'] as const)('has the caliper over all that is clamped, %s', (style) => {
    const html = renderPart(<FlexplateSection id="f" style={style} />);
    expectSound(html);
    expectOrderly(html);
    const drawing = readDrawing(html);
    const metal = drawing.of('rect', 'metal').map((one) => ({ x: extent(xsOf(one)), y: extent(ysOf(one)) }));
    expect(metal).toHaveLength(style === 'two-piece' ? 4 : 2);
    const ends = extent(metal.flatMap(({ x }) => [x.from, x.to]));
    // The same hole through all of it, about the axis.
    for (const { y } of metal) expect(Math.min(Math.abs(y.from), Math.abs(y.to))).toBe(20);
    expect(metal.filter(({ y }) => y.to < 0)).toHaveLength(metal.length / 2);
    const read = drawing.of('path', 'dim').map((one) => extent(xsOf(one)));
    expect(read).toEqual([ends]);
    const tips = drawing.of('path', 'arrow').flatMap(({ lines }) => lines.map((line) => line[0]!.x));
    expect(tips).toEqual(style === 'two-piece' ? [ends.from, ends.to] : []);
    const [jaws, bar] = drawing.of('path', 'stud-body');
    const [left, right] = jaws!.lines.map((line) => extent(line.map(({ x }) => x)));
    expect(left!.to, 'a jaw lies on the pad side').toBe(ends.from);
    expect(right!.from, 'and one on the engine side').toBe(ends.to);
    expect(extent(xsOf(bar!)).from).toBeLessThan(left!.from);
    const nut = extent(xsOf(drawing.of('path', 'phantom')[0]!));
    expect(nut.from, 'the nut sits on the engine side').toBe(ends.to);
    const x = (text: string) =>
      drawing
        .of('text')
        .find((one) => one.text === text)
        ?.attribute('x');
    expect(x('pad side')).toBeLessThan(ends.from);
    expect(x('engine side')).toBeGreaterThan(ends.to);
    expect(x('casting') === undefined).toBe(style === 'one-piece');
    expect(
      drawing
        .of('circle', 'arrow')
        .map((one) => one.attribute('cx'))
        .every((at) => at > ends.from && at < ends.to),
    ).toBe(true);
  });
});

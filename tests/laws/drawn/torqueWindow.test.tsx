import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TorqueWindow } from '../../../views/drawings/torqueWindowPicture.tsx';
import { renderPart } from '../../../views/render.ts';
import { expectSound } from '../../views/markup.ts';
import { type Drawing, expectNear, expectOrderly, extent, readDrawings, xsOf } from './readSvg.ts';

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

import { describe, expect, it } from 'vitest';
import { FlexplateSection } from '../../../views/drawings/flexplateSection.tsx';
import { renderPart } from '../../../views/render.ts';
import { expectSound } from '../../views/markup.ts';
import { expectOrderly, extent, readDrawing, xsOf, ysOf } from './readSvg.ts';

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

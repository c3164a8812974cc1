import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Layer } from '../../shared/words/stud/stud.ts';
import { checkStud } from '../../src/calc/stud/checkStud.ts';
import { FlexplateSection } from '../../views/drawings/flexplateSection.tsx';
import { PullForwardPicture } from '../../views/drawings/pullForwardPicture.tsx';
import { StudInStack, stackScale } from '../../views/drawings/studInStack.tsx';
import { renderPart } from '../../views/render.ts';
import { EXAMPLE } from '../calc/stud/example.ts';
import { expectSound, numberOf, tagsOf } from './markup.ts';

const inside = (html: string) => {
  for (const tag of [...tagsOf(html, 'text'), ...tagsOf(html, 'rect')]) {
    expect(numberOf(tag, 'x')).toBeGreaterThanOrEqual(0);
    expect(numberOf(tag, 'x')).toBeLessThanOrEqual(352);
  }
};

describe('a flexplate at a stud hole', () => {
  it.each(['one-piece', 'two-piece'] as const)(
    'is drawn soundly for %s, and the caliper spans what is clamped',
    (style) => {
      const html = renderPart(<FlexplateSection id="f" style={style} />);
      expectSound(html);
      inside(html);
      const metal = tagsOf(html, 'rect', 'metal').map((tag) => [numberOf(tag, 'x'), numberOf(tag, 'width')]);
      const ends = metal.map(([x = 0, width = 0]) => x + width);
      expect(metal).toHaveLength(style === 'two-piece' ? 4 : 2);
      expect(html).toContain(`M120 116H${Math.max(...ends)}`);
    },
  );
});

describe('a stud in its stack on paper', () => {
  const draw = (change: Partial<Layer>) =>
    renderPart(
      <StudInStack
        id="p"
        stud={EXAMPLE.stud}
        stack={{ ...EXAMPLE.stack, layers: [{ ...EXAMPLE.stack.layers[0]!, ...change }] }}
        nut={EXAMPLE.nut}
        check={checkStud(EXAMPLE)}
        pullForwardMm={4}
        unit="mm"
        onPaper
      />,
    );

  it('prints its figures in 8 pt or more, on the slip and on the paper that is kept', () => {
    const html = draw({});
    expectSound(html);
    const [width] = [...html.matchAll(/viewBox="0 \S+ (\d+) /g)].map(([, wide]) => Number(wide));
    const css = readFileSync('views/assets/slip.css', 'utf8');
    const printed = [...css.matchAll(/\.stud-drawing \{\s*width: ([\d.]+)mm/g)].map(([, mm]) => Number(mm));
    expect(printed).toHaveLength(2);
    const figure = Number(
      /\.dim-figure \{[^}]*font-size: (\d+)px/.exec(readFileSync('views/assets/drawings.css', 'utf8'))![1],
    );
    for (const mm of printed) expect((figure * mm * 72) / (width! * 25.4)).toBeGreaterThanOrEqual(8);
  });

  it('has the chamfer of the hole at the face toward the converter', () => {
    const k = stackScale({ ...EXAMPLE, id: 'p', check: null, pullForwardMm: 4, unit: 'mm', onPaper: true });
    const cut = (html: string) =>
      [...html.matchAll(/V([\d.]+)L([\d.]+) ([\d.]+)H[\d.]+V[\d.]+" class="thick"/g)].map((found) =>
        found.slice(1).map(Number),
      );
    for (const [from = 0, , to = 0] of cut(draw({ chamferMm: 0.8 })))
      expect(from - to).toBeCloseTo(0.8 * k, 1);
    expect(cut(draw({ chamferMm: 0.8 }))).toHaveLength(2);
    expect(cut(draw({ chamferMm: null }))).toEqual([]);
  });
});

describe('the pull-forward picture', () => {
  const draw = (changes: Partial<Parameters<typeof PullForwardPicture>[0]> = {}) =>
    renderPart(
      <PullForwardPicture
        id="g"
        bareGapMm={6}
        shimMm={2}
        stackMm={3.2}
        hubEngagementMm={20}
        unit="mm"
        {...changes}
      />,
    );

  it('says both states in words', () => {
    const html = draw();
    expectSound(html);
    expect(html).toContain(
      'Pads to flexplate 4.00 mm. Shims 2.00 mm on every pad. Hub in the pump 20.00 mm. Flexplate 3.20 mm.',
    );
    expect(html).toContain('Pads on the flexplate; no gap is left.');
    expect(html).toContain('Hub in the pump 16.00 mm.');
  });

  it.each([
    { shimMm: 0 },
    { stackMm: null, hubEngagementMm: null },
    { bareGapMm: 1, shimMm: 3 },
    { hubEngagementMm: 2, bareGapMm: 40, shimMm: 0 },
    { unit: 'in' as const },
  ])('draws with %o', (changes) => {
    const html = draw(changes);
    expectSound(html);
    inside(html);
  });
});

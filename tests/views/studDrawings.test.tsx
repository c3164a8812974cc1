import { describe, expect, it } from 'vitest';
import { FlexplateSection } from '../../views/drawings/flexplateSection.tsx';
import { PullForwardPicture } from '../../views/drawings/pullForwardPicture.tsx';
import { renderPart } from '../../views/render.ts';
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

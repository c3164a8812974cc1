import { describe, expect, it } from 'vitest';
import { TorqueWindow } from '../../views/drawings/torqueWindowPicture.tsx';
import { renderPart } from '../../views/render.ts';
import { expectSound, numberOf, tagsOf } from './markup.ts';

describe('the window of torque', () => {
  const draw = (changes: Partial<Parameters<typeof TorqueWindow>[0]> = {}) =>
    renderPart(
      <TorqueWindow
        id="w"
        torqueNm={36}
        enoughNm={34}
        mostNm={38}
        preloadN={{ nominal: 19_000, least: 9000, most: 24_000 }}
        lossN={5000}
        proofShare={0.72}
        neededN={8000}
        unit="mm"
        {...changes}
      />,
    );

  it('says in words what it shows, and blocks nothing', () => {
    expectSound(draw());
    expect(draw()).toContain('It is enough from 34.0 N·m. It is too much above 38.0 N·m.');
    expect(draw({ unit: 'in' })).toContain('too much above 28.0 lb·ft');
  });

  it('shades what holds between the two limits, and nothing where no torque does both', () => {
    expect(tagsOf(draw(), 'rect', 'metal')).toHaveLength(2);
    const zone = tagsOf(draw(), 'rect', 'metal')[0] ?? '';
    const limits = [...draw().matchAll(/M([\d.]+) -24V/g)].map(([, x]) => Number(x));
    expect(numberOf(zone, 'x')).toBeCloseTo(limits[0] ?? 0, 1);
    expect(numberOf(zone, 'x') + numberOf(zone, 'width')).toBeCloseTo(limits[1] ?? 0, 1);
    expect(tagsOf(draw({ enoughNm: 40 }), 'rect', 'metal')).toHaveLength(1);
  });

  it.each([
    { enoughNm: null, lossN: null, preloadN: { nominal: 19_000, least: null, most: 24_000 } },
    { mostNm: null, proofShare: null },
    { enoughNm: 300, mostNm: 2 },
  ])('draws with %o', (changes) => {
    const html = draw(changes);
    expectSound(html);
    for (const tag of tagsOf(html, 'text')) {
      expect(numberOf(tag, 'x')).toBeGreaterThanOrEqual(0);
      expect(numberOf(tag, 'x')).toBeLessThanOrEqual(352);
    }
  });
});

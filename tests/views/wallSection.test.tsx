import { render } from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import { WallSection } from '../../views/drawings/wallSection.tsx';

const shape = {
  studCount: 4,
  studCircleDiameterMm: 286,
  trackInnerDiameterMm: 214,
  trackOuterDiameterMm: 264,
  nominalWallMm: 5,
  densityKgPerM3: null,
};
const check = (afterMm: number, minimumMm: number | null, bandMm: number | null) => ({
  stations: [
    {
      angleDeg: 180,
      radiusMm: 110,
      wallMm: 4.8,
      faceMm: 0,
      markDepthMm: 0,
      cutMm: 4.8 - afterMm,
      wallAfterMm: afterMm,
      marginMm: null,
      conformanceProbability: null,
    },
  ],
  leastWall: {
    beforeMm: 4.8,
    afterMm,
    station: 0,
    standardUncertaintyMm: null,
    expandedUncertaintyMm: bandMm,
    degreesOfFreedom: null,
  },
  minimumWall: minimumMm === null ? null : { mm: minimumMm, source: 'shop', from: 'shop' as const },
  cut: { dialledMm: 0.42, toolPlaneMm: 0, cleansUp: true, cleanUpMm: 0.42 },
});
const drawn = (...given: Parameters<typeof check>) =>
  render(<WallSection id="s" shape={shape} check={check(...given)} unit="mm" />);
/** Every horizontal line of a kind: where it lies, from the section first to the detail. */
const heights = (svg: string, kind: string) =>
  [...svg.matchAll(new RegExp(`d="M[\\d.]+ ([\\d.]+)H[\\d.]+" class="${kind}"`, 'g'))].map((found) =>
    Number(found[1]),
  );

describe('the section of the wall', () => {
  it('is at one scale: the wall left is as high beside the track’s width as it is', () => {
    const svg = drawn(4.5, 4.3, null);
    const metal = /width="(\d+)" height="([\d.]+)" class="metal"/.exec(svg);
    // 25 mm of track are 332 units wide.
    expect(Number(metal?.[2]) / Number(metal?.[1])).toBeCloseTo(4.5 / 25, 3);
  });

  it('draws the minimum below the wall left, and above it where too much is cut', () => {
    for (const [after, above] of [
      [4.5, true],
      [4.2, false],
    ] as const) {
      const svg = drawn(after, 4.3, null);
      const [cut, limit] = [heights(svg, 'cut-line'), heights(svg, 'limit')];
      expect(limit.length).toBe(2);
      for (const i of [0, 1]) expect(limit[i]! > cut[i]!).toBe(above);
    }
  });

  it('shows a band only where the uncertainty is known, and says all of it in words', () => {
    expect(drawn(4.5, 4.3, null)).not.toContain('class="band"');
    const svg = drawn(4.5, 4.3, 0.012);
    expect(svg).toContain('class="band"');
    expect(svg).toContain(
      'At 180°, radius 110.00 mm: 4.800 mm as measured, 0.300 mm cut there, 4.500 mm left. Known to within 0.012 mm either way. The minimum is 4.300 mm.',
    );
    expect(drawn(4.5, null, null)).not.toContain('class="limit"');
  });

  it('keeps its names apart, however near the figures are', () => {
    const svg = drawn(4.3001, 4.3, 0.0005);
    const names = [...svg.matchAll(/<text x="192" y="([\d.]+)"/g)]
      .map((found) => Number(found[1]))
      .sort((a, b) => a - b);
    expect(names.length).toBe(4);
    for (let i = 1; i < names.length; i++) expect(names[i]! - names[i - 1]!).toBeGreaterThan(15);
  });
});

import { render } from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import { WallZones } from '../../views/drawings/wallZones.tsx';

const check = (afterMm: number, sureFromMm: number | null, minimumMm: number | null = 4.3) => ({
  leastWall: {
    beforeMm: 4.8,
    afterMm,
    station: 0,
    standardUncertaintyMm: null,
    expandedUncertaintyMm: null,
    degreesOfFreedom: null,
    sureFromMm,
  },
  minimumWall: minimumMm === null ? null : { mm: minimumMm, source: 'shop', from: 'shop' as const },
  bounds: null,
});
const drawn = (...given: Parameters<typeof check>) =>
  render(<WallZones id="z" check={check(...given)} unit="mm" />);

/** Where the zones end, and where the middle of the first mark lies. */
function places(svg: string) {
  const zone = (name: string) => {
    const [, x, width] = new RegExp(
      `x="([\\d.]+)" y="\\d+" width="([\\d.]+)" height="26" class="${name}"`,
    ).exec(svg)!;
    return { from: Number(x), to: Number(x) + Number(width) };
  };
  return {
    thin: zone('zone-thin'),
    unsure: zone('zone-unsure'),
    enough: zone('zone-enough'),
    mark: Number(/d="M([\d.]+) [\d.]+l9 9/.exec(svg)![1]),
  };
}

describe('where the wall lies between too thin and enough', () => {
  it.each([
    [4.28, 'thin'],
    [4.31, 'unsure'],
    [4.33, 'enough'],
  ] as const)('a wall of %f is drawn where it is %s', (afterMm, zone) => {
    const at = places(drawn(afterMm, 4.32));
    expect(at.mark).toBeGreaterThan(at[zone].from);
    expect(at.mark).toBeLessThan(at[zone].to);
    expect(at.thin.to).toBeCloseTo(at.unsure.from, 1);
    expect(at.unsure.to).toBeCloseTo(at.enough.from, 1);
  });

  it('is at one scale: wall, minimum and what is sure lie as far apart as they are', () => {
    const at = places(drawn(4.34, 4.32));
    expect((at.mark - at.thin.to) / (at.unsure.to - at.unsure.from)).toBeCloseTo(2, 1);
  });

  it('says the same in words', () => {
    const svg = drawn(4.31, 4.32);
    expect(svg).toContain('4.310 mm left: not sure enough.');
    expect(svg).toContain('At 4.320 mm or more it is enough, at the confidence required.');
  });

  it('marks both ways the face may lie where it was not read', () => {
    const bounds = {
      padSideFlat: { dialledMm: 0.4, leastWallMm: 4.35 },
      faceFlat: { dialledMm: 0.3, leastWallMm: 4.25 },
    };
    const svg = render(<WallZones id="z" check={{ ...check(4.25, 4.32), bounds }} unit="mm" />);
    expect(svg).toContain('4.350 mm if the pad side runs true: enough.');
    expect(svg).toContain('4.250 mm if the face runs true: too thin.');
    expect(svg.match(/l9 9l-9 9/g)).toHaveLength(2);
  });

  it('is not drawn without a minimum, and has no middle where readings are exact', () => {
    expect(drawn(4.5, null, null)).toBe('');
    expect(drawn(4.5, null)).not.toContain('sure from');
  });
});

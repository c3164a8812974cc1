import { describe, expect, it } from 'vitest';
import { readThread } from '../../../../shared/quantity/readThread.ts';
import { threadGeometry } from '../../../../src/calc/stud/thread/threadGeometry.ts';
import { wrongNut } from '../../../../src/calc/stud/thread/wrongNut.ts';
import { threadsLike } from '../../../../src/shop/studs/threads.ts';

const geometry = (callout: string, side: 'external' | 'internal') => {
  const read = readThread(callout, side);
  if (!read.ok) throw new Error(read.message);
  return threadGeometry(read.thread);
};
const goesOn = (nut: string, stud: string) => wrongNut(geometry(stud, 'external'), geometry(nut, 'internal'));

describe('a nut of another thread', () => {
  // D2 max of M8×1-6H 7.500 (ISO 965-1), d2 min of 5/16-24 UNF-2A 0.2806 in (ASME B1.1), both from memory.
  it('M8×1 goes 3.7 threads onto 5/16-24', () =>
    expect(goesOn('M8x1', '5/16-24')).toBeCloseTo(
      (7.5 - 0.2806 * 25.4) / (Math.sqrt(3) * (25.4 / 24 - 1)),
      1,
    ));
  it('M10×1.5 goes onto 3/8-16, and 3/8-16 does not go onto M10×1.5', () => {
    expect(goesOn('M10x1.5', '3/8-16')).toBeGreaterThan(4);
    expect(goesOn('3/8-16', 'M10x1.5')).toBe(0);
  });
  it('only rattles where its thread hardly meets the stud’s: 7/16-20 on M10×1.25', () =>
    expect(goesOn('7/16-20', 'M10x1.25')).toBe(0));
  it('another pitch on the same diameter binds within one thread', () =>
    expect(goesOn('3/8-24', '3/8-16')).toBeLessThan(1));
});

describe('near twins', () => {
  // Pairs that are taken for one another: common practice, no source.
  it.each([
    ['5/16-24', 'M8×1-6g'],
    ['3/8-16', 'M10×1.5-6g'],
    ['3/8-24', 'M10×1-6g'],
    ['1/2-20', 'M12×1.25-6g'],
    ['5/16-18', 'M8×1.25-6g'],
    ['1/4-28', 'M6×1-6g'],
  ])('%s is warned of %s, and the other way round', (inch, metric) => {
    const twins = (callout: string) => {
      const { majorMm, pitchMm } = geometry(callout, 'external');
      const [first] = threadsLike({
        majorMm: (majorMm.min! + majorMm.max!) / 2,
        majorWithinMm: 0.05,
        pitches: 10,
        overMm: 10 * pitchMm,
        overWithinMm: 0.2,
      }).mayBe;
      return first?.twins.map(({ thread }) => thread.designation) ?? [];
    };
    expect(twins(inch)).toContain(metric);
    expect(twins(metric.replace(/-6g$/, '')).some((one) => one.startsWith(inch))).toBe(true);
  });
});

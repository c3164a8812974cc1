import { describe, expect, it } from 'vitest';
import {
  SOLID,
  SOLID_RINGS,
  type SolidCover,
  type SolidFound,
  solidRing,
} from '../../../data/examples/solidCovers.ts';
import { OFF_SOLID, OFF_SOLID_DRAWN, RING_WIDENED } from '../../../shared/words/bending/solid.ts';
import type { StiffnessInput } from '../../../shared/words/bending/stiffness.ts';
import { bendCover } from '../../../src/calc/plate/bendCover.ts';

/** The solid model is an independent second implementation, not published. */

function bent(input: StiffnessInput): SolidFound {
  const { rippleMm, bossDeflectionMm, peakOverMean } = bendCover(input);
  return { rippleUm: 1000 * rippleMm, bossMm: bossDeflectionMm, peak: peakOverMean };
}

function off({ cover, cutMm, ...solid }: SolidCover, padInsetWalls: number | null) {
  const fresh = bent({ ...cover, padInsetWalls });
  const cut = bent({ ...cover, padInsetWalls, trackWallMm: cutMm });
  const both = (of: keyof SolidFound) => [fresh[of] / solid.fresh[of] - 1, cut[of] / solid.cut[of] - 1];
  const cutOver = (of: keyof SolidFound) => [cut[of] / fresh[of] / (solid.cut[of] / solid.fresh[of]) - 1];
  return {
    ripple: both('rippleUm'),
    peak: both('peak'),
    center: both('bossMm'),
    cutRipple: cutOver('rippleUm'),
    cutPeak: cutOver('peak'),
  };
}

type Off = ReturnType<typeof off>;
const gathered = (all: readonly Off[], of: keyof Off) => all.flatMap((one) => one[of]);
const most = (values: readonly number[]) => Math.max(...values.map(Math.abs));

describe('beside a solid model of five covers (independent second implementation, not published)', () => {
  const all = SOLID.map((one) => off(one, null));

  it('the ripple comes within 25 % of the solid model, and within 16 % root mean square', () => {
    const found = gathered(all, 'ripple');
    expect(most(found)).toBeLessThan(0.25);
    expect(Math.sqrt(found.reduce((sum, x) => sum + x * x, 0) / found.length)).toBeLessThan(0.16);
  });
  it('the pressure peak comes within 10 % of the solid model', () => {
    expect(most(gathered(all, 'peak'))).toBeLessThan(0.1);
  });
  it('the cut cover over the new one comes within 9 % of the solid model for ripple and 5 % for the peak', () => {
    expect(most(gathered(all, 'cutRipple'))).toBeLessThan(0.09);
    expect(most(gathered(all, 'cutPeak'))).toBeLessThan(0.05);
  });

  it.each([
    ['the adopted rule', null, OFF_SOLID],
    ['pads as drawn', 0, OFF_SOLID_DRAWN],
  ] as const)(
    'with %s the stated distance to the solid model is what is found, outward to whole hundredths',
    (_, inset, said) => {
      const found = SOLID.map((one) => off(one, inset));
      for (const of of Object.keys(said) as (keyof Off)[]) {
        const values = gathered(found, of);
        const [least, greatest] = [Math.min(...values), Math.max(...values)];
        expect(said[of][0], of).toBeLessThanOrEqual(least);
        expect(said[of][0], of).toBeGreaterThan(least - 0.01);
        expect(said[of][1], of).toBeGreaterThanOrEqual(greatest);
        expect(said[of][1], of).toBeLessThan(greatest + 0.01);
      }
    },
  );
});

describe('a ring joined to the pads, beside the solid', () => {
  const rings = SOLID_RINGS.map((solid, i) => {
    const { cover, cutMm } = SOLID[i]!;
    const cut = { ...cover, trackWallMm: cutMm };
    const bare = bent(cut);
    const share = (bonded: boolean) => {
      const found = bent({ ...cut, ring: { ...solidRing(SOLID[i]!), bonded, joinedToPads: true } });
      return {
        ripple: found.rippleUm / bare.rippleUm,
        peak: found.peak / bare.peak,
        boss: found.bossMm / bare.bossMm,
      };
    };
    return { solid: solid.joined, bonded: share(true), unbonded: share(false) };
  });

  it.each(['ripple', 'peak'] as const)(
    'the %s with a joined ring lies between the bonded and the unbonded bound',
    (of) => {
      for (const { solid, bonded, unbonded } of rings) {
        expect(solid[of]).toBeGreaterThan(bonded[of]);
        expect(solid[of]).toBeLessThan(unbonded[of]);
      }
    },
  );
  it('the center with a joined ring lies outside both bounds, so that no bound on it is given', () => {
    for (const { solid, bonded } of rings) expect(solid.boss).toBeLessThan(bonded.boss);
  });
  it('the bounds of a joined ring are widened by the most that cut over new is off', () => {
    const all = SOLID.map((one) => off(one, null));
    for (const [factor, of] of [
      [RING_WIDENED.ripple, 'cutRipple'],
      [RING_WIDENED.peak, 'cutPeak'],
    ] as const) {
      const worst = most(gathered(all, of));
      expect(factor - 1).toBeGreaterThan(worst);
      expect(factor - 1).toBeLessThan(worst + 0.01);
    }
  });
});

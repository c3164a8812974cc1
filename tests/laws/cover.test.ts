import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CoverCheckInput, MeasuredCheck, Station } from '../../shared/words/cover.ts';
import { checkCover } from '../../src/calc/cover/checkCover.ts';
import { conformanceProbability } from '../../src/calc/measure/conformanceProbability.ts';
import { SHAPE } from '../calc/cover/sets.ts';
import { anyCoverCheck, fine } from './anyCover.ts';

/** What any cover must obey, whatever its readings. */

const law = (check: (input: CoverCheckInput, found: MeasuredCheck) => void) =>
  fc.assert(
    fc.property(anyCoverCheck, (input) => check(input, checkCover(input))),
    { numRuns: 40 },
  );
const each = (input: CoverCheckInput, change: (station: Station) => Partial<Station>): CoverCheckInput => ({
  ...input,
  stations: input.stations.map((station) => ({ ...station, ...change(station) })),
});

describe('laws of a cover', () => {
  it('a cover turned by one stud has its answer turned with it', () => {
    law((input, found) => {
      const pitch = 360 / input.cover.studCount;
      const turned = checkCover(each(input, ({ angleDeg }) => ({ angleDeg: angleDeg + pitch })));
      expect(turned.verdict).toBe(found.verdict);
      expect(turned.cut.dialledMm).toBeCloseTo(found.cut.dialledMm, 9);
      expect(turned.leastWall.afterMm).toBeCloseTo(found.leastWall.afterMm, 9);
      expect(turned.face.runoutMm!).toBeCloseTo(found.face.runoutMm!, 9);
      expect(turned.face.flatnessMinimumZoneMm!).toBeCloseTo(found.face.flatnessMinimumZoneMm!, 6);
      expect(turned.unbalance!.gmm).toBeCloseTo(found.unbalance!.gmm, 6);
      const turn = (turned.unbalance!.heavySideDeg! - found.unbalance!.heavySideDeg! - pitch + 1080) % 360;
      expect(Math.min(turn, 360 - turn)).toBeLessThan(1e-6);
      // The round limit is a polygon of 64 sides: at worst 0.12 % of the tilt is not used.
      expect(Math.abs(turned.dialledIn!.wallGainedMm - found.dialledIn!.wallGainedMm)).toBeLessThan(5e-4);
    });
  });

  it('a cut deeper by a hundredth leaves a hundredth less', () => {
    law((input, found) => {
      const deeper = checkCover({ ...input, plannedCutMm: found.cut.cleanUpMm + 0.01 });
      expect(deeper.cut.cleansUp).toBe(true);
      expect(deeper.cutsLeft!).toBeLessThanOrEqual(found.cutsLeft!);
      for (const [i, station] of deeper.stations.entries()) {
        expect(found.stations[i]!.wallAfterMm - station.wallAfterMm).toBeCloseTo(0.01, 9);
      }
    });
  });

  it('the clean-up cut cleans, and a hair less does not', () => {
    law((input, found) => {
      expect(checkCover({ ...input, plannedCutMm: found.cut.cleanUpMm }).cut.cleansUp).toBe(true);
      expect(checkCover({ ...input, plannedCutMm: found.cut.cleanUpMm - 1e-6 }).cut.cleansUp).toBe(false);
    });
  });

  it('a cover in another unit has the same answer in that unit', () => {
    const times = (mm: number | null) => (mm === null ? null : mm / 25.4);
    law((input, found) => {
      const inches = each(input, ({ radiusMm, wallMm, faceMm, markDepthMm }) => ({
        radiusMm: radiusMm / 2.54, // rings stay farther apart than 0.5
        wallMm: wallMm.map((wall) => wall / 25.4),
        faceMm: times(faceMm),
        markDepthMm: times(markDepthMm),
      }));
      const small = checkCover({
        ...inches,
        cover: {
          ...input.cover,
          studCircleDiameterMm: SHAPE.studCircleDiameterMm / 2.54,
          trackInnerDiameterMm: SHAPE.trackInnerDiameterMm / 2.54,
          trackOuterDiameterMm: SHAPE.trackOuterDiameterMm / 2.54,
        },
        gauge: {
          standardUncertaintyMm: 0.005 / 25.4,
          resolutionMm: 0.001 / 25.4,
          repeatabilityMm: 0.003 / 25.4,
          faceStandardUncertaintyMm: 0.002 / 25.4,
          cutSettingStandardUncertaintyMm: 0.005 / 25.4,
        },
        criteria: {
          ...input.criteria!,
          minimumWallMm: 4.3 / 25.4,
          faceRunoutLimitMm: 0.12 / 25.4,
          cleanUpAllowanceMm: 0.05 / 25.4,
          typicalCutMm: 0.25 / 25.4,
        },
      });
      expect(small.cut.dialledMm * 25.4).toBeCloseTo(found.cut.dialledMm, 9);
      expect(small.leastWall.afterMm * 25.4).toBeCloseTo(found.leastWall.afterMm, 9);
      expect(small.face.runoutMm! * 25.4).toBeCloseTo(found.face.runoutMm!, 9);
      expect(small.face.flatnessMinimumZoneMm! * 25.4).toBeCloseTo(found.face.flatnessMinimumZoneMm!, 6);
      expect(small.dialledIn!.wallGainedMm * 25.4).toBeCloseTo(found.dialledIn!.wallGainedMm, 4);
      expect(small.conformanceProbability!).toBeCloseTo(found.conformanceProbability!, 6);
      expect(small.cutsLeft).toBe(found.cutsLeft);
      expect(small.verdict).toBe(found.verdict);
    });
  });

  it('a minimum zone is never wider than the zone about the least-squares plane', () => {
    law((_, { face }) => {
      expect(face.flatnessMinimumZoneMm!).toBeLessThanOrEqual(face.flatnessLeastSquaresMm! + 1e-9);
      expect(face.flatnessMinimumZoneMm!).toBeGreaterThan(0);
    });
  });

  it('a cover dialled in is never worse than as chucked, stays within the limit, and needs no negative shim', () => {
    law((_, { dialledIn, leastWall }) => {
      expect(dialledIn!.wallGainedMm).toBeGreaterThanOrEqual(0);
      expect(dialledIn!.leastWallMm).toBeCloseTo(leastWall.afterMm + dialledIn!.wallGainedMm, 9);
      expect(dialledIn!.tiltMm).toBeLessThanOrEqual(0.12 + 1e-9);
      expect(Math.min(...dialledIn!.shimsMm)).toBe(0);
    });
  });

  it('a cover rocked in the chuck is the same cover once dialled in', () => {
    // A cover rocked on its pads: heights lean, walls do not. Dialling in with a limit to spare undoes it.
    law((input, found) => {
      const roomy = { ...input, criteria: { ...input.criteria!, faceRunoutLimitMm: 5 } };
      const rocked = each(roomy, ({ angleDeg, radiusMm, faceMm }) => ({
        faceMm: faceMm! + (0.05 / 128) * radiusMm * Math.cos((angleDeg * Math.PI) / 180),
      }));
      expect(checkCover(rocked).dialledIn!.leastWallMm).toBeCloseTo(
        checkCover(roomy).dialledIn!.leastWallMm,
        5,
      );
      expect(found.dialledIn).not.toBeNull();
    });
  });

  it('a thinner wall is never more sure', () => {
    law((input, found) => {
      const thinner = checkCover(each(input, ({ wallMm }) => ({ wallMm: [wallMm[0]! - 0.004] })));
      expect(thinner.conformanceProbability!).toBeLessThanOrEqual(found.conformanceProbability! + 1e-8);
      const least = Math.min(...found.stations.map((station) => station.conformanceProbability!));
      expect(found.conformanceProbability!).toBeLessThanOrEqual(least + 1e-8);
    });
  });

  it('a face that lies between the two bounds is bracketed by them', () => {
    fc.assert(
      fc.property(anyCoverCheck, fc.double({ min: 0, max: 1, noNaN: true }), (input, share) => {
        const unread = checkCover(each(input, () => ({ faceMm: null })));
        const mean = unread.stations.reduce((sum, { wallMm }) => sum + wallMm, 0) / unread.stations.length;
        const between = checkCover(each(input, ({ wallMm }) => ({ faceMm: share * (wallMm[0]! - mean) })));
        expect(between.cut.dialledMm).toBeLessThanOrEqual(unread.cut.dialledMm + 1e-9);
        expect(between.leastWall.afterMm).toBeGreaterThanOrEqual(unread.leastWall.afterMm - 1e-9);
      }),
      { numRuns: 40 },
    );
  });
});

describe('laws of conformance', () => {
  const margins = fc.array(fine(-0.02, 0.06), { minLength: 1, maxLength: 14 });
  it('the probability with both errors lies between all shared and all separate', () => {
    fc.assert(
      fc.property(margins, fine(0.001, 0.02), fine(0.001, 0.02), (marginsMm, commonMm, own) => {
        const total = Math.hypot(commonMm, own);
        const none = marginsMm.map(() => 0);
        const mixed = conformanceProbability({ marginsMm, commonMm, ownMm: marginsMm.map(() => own) });
        const shared = conformanceProbability({ marginsMm, commonMm: total, ownMm: none });
        const separate = conformanceProbability({
          marginsMm,
          commonMm: 0,
          ownMm: marginsMm.map(() => total),
        });
        expect(mixed).toBeLessThanOrEqual(shared + 1e-7);
        expect(mixed).toBeGreaterThanOrEqual(separate - 1e-7);
      }),
      { numRuns: 50 },
    );
  });
});

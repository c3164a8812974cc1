import fc from 'fast-check';
import type { CoverCheckInput } from '../../shared/words/cover.ts';
import { CRITERIA, coverInput, SHAPE } from '../calc/cover/sets.ts';

export const fine = (least: number, most: number) =>
  fc.integer({ min: Math.round(least * 1000), max: Math.round(most * 1000) }).map((n) => n / 1000);

const GAUGE = {
  standardUncertaintyMm: 0.005,
  resolutionMm: 0.001,
  repeatabilityMm: 0.003,
  faceStandardUncertaintyMm: 0.002,
  cutSettingStandardUncertaintyMm: 0.005,
};

/** Behind and between the studs on one ring, and behind the studs on a second. */
export const anyCoverCheck: fc.Arbitrary<CoverCheckInput> = fc.constantFrom(3, 4, 6).chain((studCount) => {
  const places = [
    ...Array.from({ length: 2 * studCount }, (_, i) => ({ angleDeg: (i * 180) / studCount, radiusMm: 110 })),
    ...Array.from({ length: studCount }, (_, i) => ({ angleDeg: (i * 360) / studCount, radiusMm: 128 })),
  ];
  const readings = fc.record({ wall: fine(4.4, 5.2), face: fine(-0.1, 0.1), mark: fine(0, 0.35) });
  return fc.array(readings, { minLength: places.length, maxLength: places.length }).map((rows) =>
    coverInput({
      cover: { ...SHAPE, studCount },
      criteria: { ...CRITERIA, faceRunoutLimitMm: 0.12 },
      gauge: GAUGE,
      stations: places.map((place, i) => ({
        ...place,
        wallMm: [rows[i]!.wall],
        faceMm: rows[i]!.face,
        markDepthMm: rows[i]!.mark,
      })),
    }),
  );
});

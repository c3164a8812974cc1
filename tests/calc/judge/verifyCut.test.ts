import { describe, expect, it } from 'vitest';
import { type CutVerification, verifyCut } from '../../../src/calc/judge/verifyCut.ts';

const cover = {
  studCount: 4,
  studCircleDiameterMm: 286,
  trackInnerDiameterMm: 214,
  trackOuterDiameterMm: 264,
  nominalWallMm: 5,
  densityKgPerM3: null,
};
const PLACES = [0, 90, 180, 270].map((angleDeg) => ({ angleDeg, radiusMm: 110 }));

function after(walls: readonly (number | null)[], more: Partial<CutVerification> = {}): CutVerification {
  return {
    cover,
    stations: PLACES.flatMap((place, i) =>
      walls[i] == null
        ? []
        : [
            {
              ...place,
              wallMm: walls[i]!,
              faceMm: null,
              cutWallMm: 4.5,
            },
          ],
    ),
    marksLeft: [],
    doubtful: [],
    sureness: null,
    measuredBefore: PLACES,
    minimumWall: { mm: 4.3, source: 'the shop' },
    minimumTodayMm: 4.3,
    faceRunoutLimitMm: 0.1,
    cleanUpAllowanceMm: 0.05,
    dialledMm: 0.4,
    plannedMm: 0.4,
    look: null,
    ...more,
  };
}
const found = (input: CutVerification, id: string) => verifyCut(input, 'mm').find((one) => one.id === id);

describe('after the cut', () => {
  it('a wall 0.10 mm thinner than the cut should have left is a caution', () => {
    const finding = found(after([4.51, 4.5, 4.4, 4.5]), 'after-planned');
    expect(finding?.status).toBe('caution');
    expect(finding?.value).toBeCloseTo(-0.1, 12);
    expect(finding?.sentence).toContain(
      'The wall behind stud 3 is 0.100 mm thinner than the cut made should have left',
    );
  });
  it('a wall exactly at the minimum passes, a micrometre less fails', () => {
    expect(found(after([4.3, 4.5, 4.5, 4.5]), 'after-wall')?.status).toBe('pass');
    const short = found(after([4.299, 4.5, 4.5, 4.5]), 'after-wall');
    expect(short?.status).toBe('fail');
    expect(short?.sentence).toContain(
      '4.299 mm where it is thinnest, behind stud 1: below the minimum of 4.300 mm',
    );
  });
  it('a wall off by just the clean-up allowance passes', () => {
    expect(found(after([4.55, 4.5, 4.5, 4.5]), 'after-planned')?.status).toBe('pass');
  });
  it('a cut deeper than decided is a caution; a step of the dial is not, and a shallower one passes', () => {
    const deeper = found(after([4.5, 4.5, 4.5, 4.5], { dialledMm: 0.404 }), 'after-depth');
    expect(deeper?.status).toBe('caution');
    expect(deeper?.sentence).toContain('0.004 mm deeper than decided');
    expect(found(after([4.5, 4.5, 4.5, 4.5], { dialledMm: 0.402 }), 'after-depth')?.status).toBe('pass');
    const less = found(after([4.5, 4.5, 4.5, 4.5], { dialledMm: 0.3 }), 'after-depth');
    expect([less?.status, less?.sentence]).toEqual([
      'pass',
      'Decided 0.400 mm, cut 0.300 mm; 0.100 mm of it was not needed.',
    ]);
  });
  it('a face still dark after the last pass is a caution, also where no depth was read', () => {
    expect(found(after([4.5, 4.5, 4.5, 4.5], { look: 'dark' }), 'after-marks')?.status).toBe('caution');
    expect(found(after([4.5, 4.5, 4.5, 4.5], { look: 'gone' }), 'after-marks')).toBeUndefined();
  });
  it('stations that were not measured again are named', () => {
    const finding = found(after([4.5, null, 4.5, null]), 'after-coverage');
    expect(finding?.status).toBe('caution');
    expect(finding?.sentence).toContain('behind stud 2 and behind stud 4');
  });
  it('a mark that is left is a caution', () => {
    const input = after([4.5, 4.5, 4.5, 4.5]);
    const at = (angleDeg: number, depthMm: number) => ({ angleDeg, radiusMm: 110, depthMm });
    const marked = { ...input, marksLeft: [at(0, 0), at(90, 0.03)] };
    expect(found(marked, 'after-marks')?.sentence).toContain(
      'A mark of up to 0.030 mm is left behind stud 2.',
    );
    // Between stations, where no wall is read.
    expect(found({ ...input, marksLeft: [at(45, 0.2)] }, 'after-marks')?.sentence).toContain(
      'A mark of up to 0.200 mm is left between studs 1 and 2.',
    );
    expect(found(input, 'after-marks')).toBeUndefined();
  });
  it('a minimum raised since the decision is a caution where the wall is below it, and only there', () => {
    const today = (minimumTodayMm: number) =>
      found(after([4.5, 4.4, 4.5, 4.5], { minimumTodayMm }), 'after-criteria');
    expect(today(4.45)?.status).toBe('caution');
    expect(today(4.45)?.sentence).toBe(
      'The shop’s minimum wall is 4.450 mm today; at the decision it was 4.300 mm. 4.400 mm is left where it is thinnest, behind stud 2. Decide again under today’s.',
    );
    expect([today(4.4), today(4.2)]).toEqual([undefined, undefined]);
  });
  it('a wall less sure than the shop wants is a caution; where that is not known there is no finding', () => {
    const walls = after([4.5, 4.5, 4.5, 4.5]);
    const sure = (share: number) => found({ ...walls, sureness: { share, wanted: 0.95 } }, 'after-sure');
    expect(sure(0.722)).toMatchObject({ status: 'caution', value: 0.722, limit: 0.95 });
    expect(sure(0.722)?.sentence).toBe(
      'By what was measured after the cut it is 72.2 % sure that the minimum is left everywhere; the shop wants 95.0 %. Measure it again.',
    );
    expect(sure(0.95)?.status).toBe('pass');
    expect(found(walls, 'after-sure')).toBeUndefined();
  });
  it('a reading in doubt is a caution', () => {
    const finding = found(
      after([4.5, 4.5, 4.5, 4.5], { doubtful: ['wall behind stud 2'] }),
      'after-doubtful',
    );
    expect([finding?.status, finding?.sentence]).toEqual([
      'caution',
      'It looks like a slip and was not confirmed: wall behind stud 2. Measure there again.',
    ]);
  });
  it('a new face tilted by 0.12 over Ø 264 fails a limit of 0.10, and passes one of 0.12', () => {
    const input = after([4.5, 4.5, 4.5, 4.5]);
    // z = s x with s = 0.12/264: first principles.
    const slope = 0.12 / 264;
    const tilted = {
      ...input,
      stations: input.stations.map((one) => ({
        ...one,
        faceMm: slope * one.radiusMm * Math.cos((one.angleDeg * Math.PI) / 180),
      })),
    };
    expect(found(tilted, 'after-runout')?.status).toBe('fail');
    expect(found(tilted, 'after-runout')?.value).toBeCloseTo(0.12, 12);
    expect(found({ ...tilted, faceRunoutLimitMm: 0.12 }, 'after-runout')?.status).toBe('pass');
    expect(found({ ...tilted, faceRunoutLimitMm: null }, 'after-runout')?.status).toBe('not-checked');
  });
  it('a wall after the cut is advice only without a minimum wall', () => {
    expect(found(after([4.5, 4.5, 4.5, 4.5], { minimumWall: null }), 'after-wall')?.status).toBe(
      'not-checked',
    );
  });
});

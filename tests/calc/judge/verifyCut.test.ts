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
              cutWallMm: 4.5,
            },
          ],
    ),
    heights: [],
    truedAgain: null,
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
      'The wall behind stud 3 is 0.100 mm thinner than the cut should have left; 0.050 mm is allowed. Measure it again.',
    );
  });
  it('a wall exactly at the minimum passes, a micrometre less fails', () => {
    expect(found(after([4.3, 4.5, 4.5, 4.5]), 'after-wall')?.status).toBe('pass');
    const short = found(after([4.299, 4.5, 4.5, 4.5]), 'after-wall');
    expect(short?.status).toBe('fail');
    expect(short?.sentence).toContain(
      'Measured 4.299 mm at the thinnest station, behind stud 1: below the minimum of 4.300 mm',
    );
  });
  it('a wall off by just the clean-up allowance passes', () => {
    expect(found(after([4.55, 4.5, 4.5, 4.5]), 'after-planned')?.status).toBe('pass');
  });
  it('a cut deeper than decided is a caution; a step of the dial is not, and a shallower one passes', () => {
    const deeper = found(after([4.5, 4.5, 4.5, 4.5], { dialledMm: 0.404 }), 'after-depth');
    expect(deeper?.status).toBe('caution');
    expect(deeper?.sentence).toContain('That is 0.004 mm too deep');
    expect(found(after([4.5, 4.5, 4.5, 4.5], { dialledMm: 0.402 }), 'after-depth')?.status).toBe('pass');
    const less = found(after([4.5, 4.5, 4.5, 4.5], { dialledMm: 0.3 }), 'after-depth');
    expect([less?.status, less?.sentence]).toEqual([
      'pass',
      'Cut 0.300 mm; 0.40 mm was decided, and 0.100 mm of it was not needed.',
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
      'Heat mark remaining, up to 0.030 mm deep behind stud 2.',
    );
    // Between stations, where no wall is read.
    expect(found({ ...input, marksLeft: [at(45, 0.2)] }, 'after-marks')?.sentence).toContain(
      'Heat mark remaining, up to 0.200 mm deep between studs 1 and 2.',
    );
    expect(found(input, 'after-marks')).toBeUndefined();
  });
  it('a minimum raised since the decision is a caution where the wall is below it, and only there', () => {
    const today = (minimumTodayMm: number) =>
      found(after([4.5, 4.4, 4.5, 4.5], { minimumTodayMm }), 'after-criteria');
    expect(today(4.45)?.status).toBe('caution');
    expect(today(4.45)?.sentence).toBe(
      'Measured 4.400 mm at the thinnest station, behind stud 2. The shop’s minimum is 4.450 mm today; when decided, it was 4.300 mm. Decide again.',
    );
    expect([today(4.4), today(4.2)]).toEqual([undefined, undefined]);
  });
  it('a wall less sure than the shop wants is a caution; where that is not known there is no finding', () => {
    const walls = after([4.5, 4.5, 4.5, 4.5]);
    const sure = (share: number) => found({ ...walls, sureness: { share, wanted: 0.95 } }, 'after-sure');
    expect(sure(0.722)).toMatchObject({ status: 'caution', value: 0.722, limit: 0.95 });
    expect(sure(0.722)?.sentence).toBe(
      '72.2 % sure that no station is below the minimum after the cut; 95 % is required. Measure again.',
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
      'Looks wrong: wall behind stud 2. Measure it again, or confirm it.',
    ]);
  });
  describe('runout of the new face', () => {
    // z = s x with s = 0.12/264: first principles.
    const slope = 0.12 / 264;
    const heights = PLACES.map(({ angleDeg, radiusMm }) => ({
      angleDeg,
      radiusMm,
      faceMm: slope * radiusMm * Math.cos((angleDeg * Math.PI) / 180),
    }));
    const tilted = after([4.5, 4.5, 4.5, 4.5], { heights, truedAgain: true });
    const runout = (more: Partial<CutVerification> = {}) => found({ ...tilted, ...more }, 'after-runout');

    it('a tilt of 0.12 over Ø 264 fails a limit of 0.10, and passes one of 0.12', () => {
      expect(runout()).toMatchObject({
        status: 'fail',
        sentence: 'The new face runs out 0.120 mm; 0.100 mm is allowed. Face it again.',
      });
      expect(runout()?.value).toBeCloseTo(0.12, 12);
      expect(runout({ faceRunoutLimitMm: 0.12 })?.status).toBe('pass');
      expect(runout({ faceRunoutLimitMm: null })?.status).toBe('not-checked');
    });
    it('a face that was not indicated after the cut is not checked where the shop has a limit', () => {
      expect(runout({ heights: [] })).toMatchObject({ status: 'not-checked', value: null, limit: 0.1 });
      expect(runout({ heights: [], faceRunoutLimitMm: null })).toBeUndefined();
    });
    it('readings taken without truing pads and crank pilot again show the lathe, and are not checked', () => {
      for (const truedAgain of [false, null]) {
        expect(runout({ truedAgain })).toMatchObject({ status: 'not-checked', limit: 0.1 });
      }
    });
    it('readings at some stations only are not checked', () => {
      const some = runout({ heights: heights.slice(1) });
      expect(some?.status).toBe('not-checked');
      expect(some?.sentence).toContain('1 station is not indicated after the cut.');
    });
  });
  it('a wall after the cut is advice only without a minimum wall', () => {
    expect(found(after([4.5, 4.5, 4.5, 4.5], { minimumWall: null }), 'after-wall')?.status).toBe(
      'not-checked',
    );
  });
});

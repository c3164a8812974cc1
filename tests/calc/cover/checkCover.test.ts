import { describe, expect, it } from 'vitest';
import { checkCover } from '../../../src/calc/cover/checkCover.ts';
import { CRITERIA, coverInput, SET_ONE, SET_TWO } from './sets.ts';

describe('design set one, as chucked (independent second implementation, not published)', () => {
  const found = checkCover(coverInput({ releaseClearanceMm: 0.8 }));

  it('set one’s tool plane, depth of cut and least wall are those of an independent calculation', () => {
    expect(found.cut.toolPlaneMm).toBeCloseTo(-0.35, 9);
    expect(found.cut.dialledMm).toBeCloseTo(0.42, 9);
    expect(found.leastWall.afterMm).toBeCloseTo(4.5, 9);
    expect(found.leastWall.beforeMm).toBeCloseTo(4.79, 9);
  });
  it('the first of several equally thin stations is named as the thinnest', () => {
    expect(found.leastWall.station).toBe(1);
  });
  it('set one’s tilt, indicator reading and flatness are those of an independent calculation', () => {
    expect(found.face.runoutMm).toBeCloseTo(0.1323, 4);
    expect(found.face.flatnessLeastSquaresMm).toBeCloseTo(0.01164, 5);
    expect(found.face.indicatorReadingMm).toBeCloseTo(0.13, 9); // arithmetic
    expect(found.face.dishMm).toBeCloseTo(0.00125, 9); // arithmetic
  });
  it('the headline says to face the cover and how deep, and the reason names what decides', () => {
    expect(found.verdict).toBe('face');
    expect(found.headline).toBe('Face it: 0.42 mm.');
    expect(found.because).toBe(
      'That cleans up the whole face and leaves 4.500 mm at the thinnest station, between studs 1 and 2 on the inner row. That is 0.200 mm above the shop’s minimum of 4.300 mm.',
    );
    expect(found.cutsLeft).toBe(0); // arithmetic: ⌊0.200/0.25⌋
    expect(found.releaseClearanceAfterMm).toBeCloseTo(1.22, 9); // arithmetic
  });
  it('the sentences are in inches for those who measure in inches', () => {
    const inch = checkCover(coverInput(), 'in');
    expect(inch.headline).toBe('Face it: 0.0166 in.'); // 0.42 mm is 0.01654 in; a printed cut is rounded up
    expect(inch.because).toContain('0.0079 in above the shop’s minimum of 0.1693 in');
  });
});

describe('design set two, as chucked (independent second implementation, not published)', () => {
  const found = checkCover(coverInput({ stations: SET_TWO, criteria: { ...CRITERIA, minimumWallMm: 4.3 } }));

  it('set two’s tool plane, depth of cut and least wall are those of an independent calculation', () => {
    expect(found.cut.toolPlaneMm).toBeCloseTo(-0.25, 9);
    expect(found.cut.dialledMm).toBeCloseTo(0.28, 9);
    expect(found.leastWall.afterMm).toBeCloseTo(4.53, 9);
    expect(found.leastWall.station).toBe(6);
  });
  it('stations on one ring only ask for a second ring', () => {
    expect(found.verdict).toBe('measure-again');
    expect(found.because).toBe('No second row is measured. Measure there too.');
  });
});

describe('a planned cut', () => {
  it('a planned cut that does not reach a station leaves its wall and does not clean it', () => {
    const found = checkCover(coverInput({ plannedCutMm: 0.05 }));
    // From 0.07 the tool comes down to 0.02; stations at or below that keep their wall (arithmetic).
    expect(found.cut.toolPlaneMm).toBeCloseTo(0.02, 9);
    expect(found.stations[4]).toMatchObject({ cutMm: 0, wallAfterMm: 4.8 });
    expect(found.stations[0]!.cutMm).toBeCloseTo(0.04, 9);
    expect(found.cut.cleansUp).toBe(false);
    expect(found.verdict).toBe('plan-again');
    expect(found.cut.cleanUpMm).toBeCloseTo(0.42, 9);
  });
  it('a planned cut may be as deep as the sentence says, and no deeper', () => {
    const deep = checkCover(coverInput({ plannedCutMm: 0.7 }));
    expect(deep.verdict).toBe('plan-again');
    // 4.90 − 4.30 at a station 0.02 below the highest (arithmetic).
    expect(deep.because).toContain('Cut at least 0.42 mm and at most 0.62 mm');
    expect(checkCover(coverInput({ plannedCutMm: 0.62 })).verdict).toBe('face');
    expect(checkCover(coverInput({ plannedCutMm: 0.621 })).verdict).toBe('plan-again');
  });
  it('a planned cut is not blamed where even the clean-up cut leaves too little', () => {
    const criteria = { ...CRITERIA, minimumWallMm: 4.6 };
    expect(checkCover(coverInput({ criteria, plannedCutMm: 0.1 })).verdict).toBe('replace');
  });
});

describe('a mark between stations', () => {
  it('a mark between stations limits the tool plane, its height and wall interpolated on the nearest ring', () => {
    const found = checkCover(coverInput({ marks: [{ angleDeg: 202.5, radiusMm: 112, depthMm: 0.4 }] }));
    // z = (−0.05 − 0.04)/2, c = −0.045 − 0.4 − 0.05 (arithmetic)
    expect(found.marks[0]).toMatchObject({
      wallMm: expect.closeTo(4.805, 9),
      faceMm: expect.closeTo(-0.045, 9),
    });
    expect(found.cut.toolPlaneMm).toBeCloseTo(-0.495, 9);
  });
});

describe('limits the shop sets elsewhere', () => {
  const stiffness = (id: string, status: 'fail' | 'pass') => ({
    id,
    title: 'Bending',
    status,
    value: 1.4,
    limit: 1.3,
    unit: '',
    sentence: id === 'stiffness' ? 'It bends too much.' : 'With a ring it bends little enough.',
    source: 'set by the shop for this test',
    answer: null,
  });
  it('a cover that bends too much is ringed where a ring mends it, else replaced', () => {
    const ringed = checkCover(coverInput(), 'mm', [
      stiffness('stiffness', 'fail'),
      stiffness('stiffness-with-ring', 'pass'),
    ]);
    expect(ringed.verdict).toBe('face-and-ring');
    expect(ringed.because).toContain('measure all of it again after');
    expect(checkCover(coverInput(), 'mm', [stiffness('stiffness', 'fail')]).verdict).toBe('replace');
  });
  it('a ring never saves a wall below the minimum', () => {
    const criteria = { ...CRITERIA, minimumWallMm: 4.6 };
    const thin = checkCover(coverInput({ criteria }), 'mm', [
      stiffness('stiffness', 'fail'),
      stiffness('stiffness-with-ring', 'pass'),
    ]);
    expect(thin.verdict).toBe('replace');
    expect(thin.because).toContain('0.100 mm below the shop’s minimum of 4.600 mm');
  });
});

describe('figures nobody set', () => {
  it('figures nobody set are the usual ones, and the answer says so', () => {
    const repeated = SET_ONE.map((station) => ({
      ...station,
      wallMm: [...station.wallMm, ...station.wallMm],
    }));
    const found = checkCover(
      coverInput({ criteria: null, makerMinimumWallMm: 4.3, chucking: null, stations: repeated }),
    );
    const finding = (id: string) => found.findings.find((one) => one.id === id)!;
    expect(found.cut.dialledMm).toBeCloseTo(0.42, 9);
    expect(finding('cleans-up').source).toContain('the shop has set none');
    expect(finding('sure-of-it').source).toContain('the shop has set none of its own');
    expect(finding('unbalance').sentence).toContain('Plain steel is assumed, 7870 kg/m³.');
    expect(finding('chucking')).toMatchObject({
      status: 'not-checked',
      sentence: expect.stringContaining('assumed'),
    });
    expect(finding('cuts-left')).toMatchObject({ status: 'not-checked', value: null });
    expect(found.cutsLeft).toBeNull();
  });
});

describe('what cannot be worked out is null, and a finding says why', () => {
  it('tilt is null with two stations, and a finding says why', () => {
    const found = checkCover(coverInput({ stations: SET_ONE.slice(0, 2) }));
    expect(found.face.runoutMm).toBeNull();
    expect(found.unbalance).toBeNull();
    const tilt = found.findings.find(({ id }) => id === 'tilt')!;
    expect(tilt.status).toBe('not-checked');
    expect(tilt.sentence).toContain('At least three stations that are not in one line');
  });
  it('tilt is null with four stations on one line, and a finding says why', () => {
    const line = [SET_ONE[0]!, SET_ONE[4]!, SET_ONE[8]!, SET_ONE[10]!];
    expect(checkCover(coverInput({ stations: line })).face.runoutMm).toBeNull();
  });
});

import { describe, expect, it } from 'vitest';
import type { CoverCheckInput, Station } from '../../../shared/words/cover.ts';
import { asCut, inputAsItStands, nextPass, type PassMade } from '../../../src/calc/judge/nextPass.ts';
import { CRITERIA, SHAPE } from '../cover/sets.ts';

/** Eight places on one ring and four on another; walls and marks alike, so that what is left is plain arithmetic. */
const PLACES = [
  ...[0, 45, 90, 135, 180, 225, 270, 315].map((angleDeg) => ({ angleDeg, radiusMm: 110 })),
  ...[0, 90, 180, 270].map((angleDeg) => ({ angleDeg, radiusMm: 128 })),
];
const stations = (wallMm: number, markDepthMm: number | null, faceMm: number | null = 0): Station[] =>
  PLACES.map((place) => ({ ...place, wallMm: [wallMm], faceMm, markDepthMm }));
const decided: CoverCheckInput = {
  cover: SHAPE,
  stations: stations(4.9, 0.35),
  marks: [],
  gauge: null,
  criteria: CRITERIA, // minimum 4.3, allowance 0.05
  makerMinimumWallMm: null,
  makerMinimumWallSource: null,
  chucking: 'pads-and-pilot-trued',
  plannedCutMm: null,
  crackTest: 'none-found',
  releaseClearanceMm: null,
  inspectionFailures: [],
  doubtfulReadings: [],
};
const made = (more: Partial<PassMade>) =>
  nextPass({ decided, plannedMm: 0.4, cutMm: 0.25, look: null, after: [], ...more }, 'mm');

describe('what a cut cover is worked out from', () => {
  it('decided at 4.90, cut 0.25, read 4.66 everywhere since: stations of 4.66, and nothing more to cut', () => {
    const after = stations(4.66, null, null);
    const { input, measured } = inputAsItStands({
      decided,
      plannedMm: 0.4,
      cutMm: 0.25,
      look: 'gone',
      after,
    });
    expect(measured).toBe(true);
    expect(input.plannedCutMm).toBe(0);
    expect(input.stations.map(({ wallMm }) => wallMm)).toEqual(PLACES.map(() => [4.66]));
    const unread = inputAsItStands({ decided, plannedMm: 0.4, cutMm: 0.25, look: 'gone', after: [] });
    expect(unread).toMatchObject({ measured: false, input: { plannedCutMm: 0.25 } });
    const some = inputAsItStands({
      decided,
      plannedMm: 0.4,
      cutMm: 0.25,
      look: 'gone',
      after: after.slice(1),
    });
    expect(some.measured).toBe(false);
  });
});

// Plain arithmetic (first principles): flat face, so every station loses the whole cut.
describe('after a pass', () => {
  it('a pass nobody looked at yet asks to look, and the wall is reckoned', () => {
    const next = made({});
    expect(next.state).toBe('look');
    expect(next.wallNowMm).toBeCloseTo(4.65, 12);
    expect(next.measured).toBe(false);
    expect(next.roomMm).toBeCloseTo(0.35, 12);
  });

  it('a face still dark is cut by what is left of the plan', () => {
    const next = made({ look: 'dark' });
    expect(next.state).toBe('cut-more');
    expect(next.nextMm).toBeCloseTo(0.15, 12);
    expect(next.check.leastWall.afterMm).toBeCloseTo(4.5, 12);
    expect(next.headline).toBe('Heat mark remaining: cut 0.15 mm more.');
  });

  it('a face still dark by 0.08 mm is cut 0.13 mm more, which leaves 4.37 of 4.50 mm', () => {
    const next = made({ cutMm: 0.4, look: 'dark', after: stations(4.5, 0.08, null) });
    expect(next.nextMm).toBeCloseTo(0.13, 12);
    expect(next.check.leastWall.afterMm).toBeCloseTo(4.37, 12);
    expect(next.measured).toBe(true);
    // More than the 0.40 decided: not without a new decision.
    expect(next.state).toBe('plan-again');
    expect(next.totalMm).toBeCloseTo(0.53, 12);
  });

  it('a face dark deeper than the wall allows stops the job, whatever the plan said', () => {
    const next = made({ cutMm: 0.4, after: stations(4.5, 0.16, null) });
    expect(next.state).toBe('stop');
    expect(next.because).toContain('leaves 4.290 mm');
  });

  it('a face still dark of unknown depth gets no next pass once the plan is used up', () => {
    const next = made({ cutMm: 0.4, look: 'dark' });
    expect(next.state).toBe('plan-again');
    expect(next.nextMm).toBeNull();
    expect(next.because).toContain('At most 0.20 mm more can be cut');
  });

  it('a face clean before the plan is used up needs no further cut', () => {
    expect(made({ look: 'gone' }).because).toContain(
      'The remaining 0.150 mm of the decided cut is not needed.',
    );
    const measured = made({ look: 'gone', after: stations(4.66, 0, 0.01) });
    expect(measured.state).toBe('gone');
    expect(measured.wallNowMm).toBeCloseTo(4.66, 12);
    expect(measured.check.verdict).toBe('face');
  });

  it('a wall below the minimum stops the job, measured or reckoned, clean or not', () => {
    expect(made({ look: 'gone', after: stations(4.29, 0) }).state).toBe('stop');
    expect(made({ cutMm: 0.61, look: 'dark' }).state).toBe('stop');
    expect(made({ cutMm: 0.6, look: 'gone' }).state).toBe('gone');
  });

  it('walls not read after a pass are reckoned, and no station is missing', () => {
    const one = { ...PLACES[2]!, wallMm: [], faceMm: null, markDepthMm: 0.02 };
    const next = made({ cutMm: 0.25, look: 'dark', after: [one] });
    expect(next.measured).toBe(false);
    expect(next.nextMm).toBeCloseTo(0.07, 12);
    expect(next.check.leastWall.afterMm).toBeCloseTo(4.58, 12);
    expect(next.state).toBe('cut-more');
    const between = { angleDeg: 20, radiusMm: 119, wallMm: [], faceMm: null, markDepthMm: 0.03 };
    expect(made({ look: 'dark', after: [between] }).nextMm).toBeCloseTo(0.08, 12);
  });

  it('a rest of the plan below the clean-up allowance is still a pass', () => {
    const next = made({ cutMm: 0.37, look: 'dark', after: stations(4.53, null, null) });
    expect(next.state).toBe('cut-more');
    expect(next.nextMm).toBeCloseTo(0.03, 12);
  });

  it('a wall too near the minimum for the gauge is measured again before the next pass', () => {
    const gauge = {
      standardUncertaintyMm: 0.01,
      resolutionMm: 0.01,
      repeatabilityMm: null,
      faceStandardUncertaintyMm: null,
      cutSettingStandardUncertaintyMm: null,
    };
    const next = made({ decided: { ...decided, gauge }, cutMm: 0.4, after: stations(4.44, 0.08, null) });
    expect(next.check.leastWall.afterMm).toBeCloseTo(4.31, 12);
    expect(next.state).toBe('measure-again');
  });
});

describe('how sure the walls after the cut make it', () => {
  const gauge = {
    resolutionMm: 0,
    standardUncertaintyMm: 0.01,
    repeatabilityMm: 0,
    faceStandardUncertaintyMm: 0.02,
    cutSettingStandardUncertaintyMm: 0.02,
  };
  const share = (after: Station[]) =>
    asCut({ decided: { ...decided, gauge }, plannedMm: 0.57, cutMm: 0.57, look: 'gone', after }, 'mm').stands
      .conformanceProbability!;

  // Margin 0.03, an error of 0.01 common to all: Φ(3) = 0.99865 (normal table, from memory).
  it('sureness after the cut depends on the gauge alone where every wall was measured', () => {
    expect(share(stations(4.33, null, null))).toBeCloseTo(0.99865, 4);
  });
  it('sureness after the cut counts the setting of the cut where a wall is only reckoned', () => {
    expect(share(stations(4.33, null, null).slice(1))).toBeLessThan(0.95);
  });
});

import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Station } from '../../../shared/words/cover.ts';
import { nextPass } from '../../../src/calc/judge/nextPass.ts';
import { type CutVerification, verifyCut } from '../../../src/calc/judge/verifyCut.ts';
import { CRITERIA, coverInput, SHAPE } from '../cover/sets.ts';
import { figure, open, Told } from './record.ts';

const mm = (least: number, most: number) =>
  fc.integer({ min: Math.round(least * 1000), max: Math.round(most * 1000) }).map((n) => n / 1000);

const PLACES = [
  ...[0, 45, 90, 135, 180, 225, 270, 315].map((angleDeg) => ({ angleDeg, radiusMm: 110 })),
  ...[0, 90, 180, 270].map((angleDeg) => ({ angleDeg, radiusMm: 128 })),
];

const verification: fc.Arbitrary<CutVerification> = fc
  .record({
    wall: fc.constantFrom(4.25, 4.31, 4.45, 4.5),
    spread: fc.constantFrom(0, 0.02, 0.09),
    noise: fc.array(mm(-1, 1), { minLength: 24, maxLength: 24 }),
    left: fc.constantFrom(12, 12, 12, 11, 8, 3),
    known: fc.constantFrom(true, true, false),
    heights: fc.constantFrom<readonly [number, number]>([0, 0], [12, 0.005], [12, 0.08], [5, 0.01]),
    truedAgain: fc.constantFrom(null, true, true, false),
    marksLeft: fc.array(
      fc.record({ angleDeg: fc.constantFrom(0, 33, 90), radiusMm: fc.constant(110), depthMm: mm(0, 0.1) }),
      {
        maxLength: 2,
      },
    ),
    doubtful: fc.constantFrom([], [], ['wall behind stud 2'], ['wall behind stud 2', 'wall behind stud 3']),
    sureness: fc.constantFrom(null, { share: 0.99, wanted: 0.95 }, { share: 0.7, wanted: 0.95 }),
    minimumWall: fc.constantFrom(null, { mm: 4.3, source: 'the shop' }),
    minimumTodayMm: fc.constantFrom(null, 4.3, 4.4),
    faceRunoutLimitMm: fc.constantFrom(null, 0.05),
    dialledMm: fc.constantFrom(0.4, 0.402, 0.41, 0.2),
    look: fc.constantFrom(null, 'gone' as const, 'dark' as const),
  })
  .map(({ wall, spread, noise, left, known, heights, ...more }) => ({
    ...more,
    cover: SHAPE,
    stations: PLACES.slice(0, left).map((place, i) => ({
      ...place,
      wallMm: wall + spread * noise[i]!,
      cutWallMm: known ? wall : null,
    })),
    heights: PLACES.slice(0, heights[0]).map((place, i) => ({
      ...place,
      faceMm: heights[1] * Math.cos((place.angleDeg * Math.PI) / 180) + 0.002 * noise[i + 12]!,
    })),
    measuredBefore: PLACES,
    cleanUpAllowanceMm: 0.05,
    plannedMm: 0.4,
  }));

test('what is found of 120 covers after the cut is as written down', async () => {
  const told = new Told();
  const lines = fc.sample(verification, { seed: 20_261_202, numRuns: 120 }).map((after, i) => {
    const findings = verifyCut(after, i % 4 === 3 ? 'in' : 'mm');
    for (const finding of findings) told.finding(finding);
    return `${i + 1}. ${findings.length} findings; ${open(findings)}`;
  });
  await expect(`${lines.join('\n')}\n\n${told}`).toMatchFileSnapshot('verified.txt');
});

const pass = fc.record({
  walls: fc.constantFrom(4.6, 4.75, 4.9),
  minimum: fc.constantFrom(null, 4.3, 4.3, 4.45),
  plannedMm: fc.constantFrom(0.2, 0.4, 0.5),
  cutMm: fc.constantFrom(0.15, 0.25, 0.4, 0.45),
  look: fc.constantFrom(null, 'gone' as const, 'dark' as const),
  read: fc.constantFrom(0, 4, 12),
  stillDark: fc.constantFrom(null, 0, 0.04, 0.3),
  faces: fc.constantFrom(null, 0),
  off: fc.constantFrom(0, 0.02, -0.15),
  elsewhere: fc.constantFrom(null, null, 0, 0.1),
  gauge: fc.constantFrom(null, {
    standardUncertaintyMm: 0.02,
    resolutionMm: 0.001,
    repeatabilityMm: 0.003,
    faceStandardUncertaintyMm: 0.002,
    cutSettingStandardUncertaintyMm: 0.02,
  }),
});

test('what 120 passes show, and what to cut next, is as written down', async () => {
  const told = new Told();
  const lines = fc.sample(pass, { seed: 20_261_203, numRuns: 120 }).map((drawn, i) => {
    const { walls, minimum, plannedMm, cutMm, look, read, stillDark, faces, off, elsewhere, gauge } = drawn;
    const decided = coverInput({
      stations: PLACES.map((place) => ({ ...place, wallMm: [walls], faceMm: 0, markDepthMm: 0.35 })),
      criteria: {
        ...CRITERIA,
        minimumWallMm: minimum,
        minimumWallSource: minimum === null ? null : 'the shop',
      },
      gauge,
    });
    const after: Station[] = PLACES.slice(0, read).map((place, k) => ({
      ...place,
      wallMm: stillDark !== null && k === 1 ? [] : [walls - cutMm + off],
      faceMm: faces,
      markDepthMm: k < 3 ? stillDark : null,
    }));
    // Between the stations: a wall with its height, or only what is still dark.
    if (elsewhere !== null)
      after.push({
        angleDeg: 22,
        radiusMm: 118,
        wallMm: elsewhere === 0 ? [walls - cutMm - 0.01] : [],
        faceMm: elsewhere === 0 ? faces : null,
        markDepthMm: elsewhere,
      });
    const next = nextPass({ decided, plannedMm, cutMm, look, after }, i % 4 === 3 ? 'in' : 'mm');
    told.add(next.state, next.headline);
    told.add(next.state, next.because);
    const figures = [next.nextMm, next.totalMm, next.wallNowMm, next.roomMm].map(figure).join(' ');
    return `${i + 1}. ${next.state}, ${next.measured ? 'measured' : 'reckoned'}: ${figures}`;
  });
  await expect(`${lines.join('\n')}\n\n${told}`).toMatchFileSnapshot('passes.txt');
});

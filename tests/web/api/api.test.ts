import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { CoverCheck } from '../../../shared/words/cover.ts';
import type { StudCheck, StudMatch } from '../../../shared/words/stud/stud.ts';
import { apiExamples } from '../../../src/web/api/examples.ts';
import { changed } from '../../schemas/changed.ts';
import { catalogue } from './apiAsked.ts';
import { apiServer } from './apiServer.ts';

let api: Awaited<ReturnType<typeof apiServer>>;
beforeAll(async () => {
  api = await apiServer(catalogue());
});
afterAll(() => api.close());

const COVER = apiExamples['/cover/check']?.request ?? {};
const STUD = apiExamples['/stud/check']?.request ?? {};

describe('the JSON interface', () => {
  // Check-values page 10.2: an independent second implementation, not published.
  test('answers the first face of the check values: as chucked, tilt, flatness', async () => {
    const { status, body } = await api.post('/api/cover/check', changed(COVER, 'marks', undefined));
    const check = body as CoverCheck;
    expect(status).toBe(200);
    expect(check.cut!.toolPlaneMm).toBeCloseTo(-0.35, 9);
    expect(check.cut!.dialledMm).toBeCloseTo(0.42, 9);
    expect(check.leastWall!.afterMm).toBeCloseTo(4.5, 9);
    expect(check.leastWall!.station).toBe(1);
    expect(check.face.runoutMm).toBeCloseTo(0.1323, 4);
    expect(check.face.flatnessLeastSquaresMm).toBeCloseTo(0.01164, 5);
    expect(check.face.flatnessMinimumZoneMm).toBeCloseTo(0.01035, 5);
    expect(check.dialledIn?.wallGainedMm).toBeCloseTo(0, 9);
    expect(check.stations).toHaveLength(12);
    expect(check.findings.every((finding) => finding.sentence.length > 0)).toBe(true);
  });

  test('answers the second face of the check values: as chucked, and dialed in', async () => {
    const stations = [
      [0, 4.9, 0.03, 0],
      [45, 4.93, 0.02, 0.22],
      [90, 4.95, 0, 0],
      [135, 4.92, -0.02, 0.1],
      [180, 4.86, -0.03, 0],
      [225, 4.8, -0.02, 0.05],
      [270, 4.78, 0, 0],
      [315, 4.83, 0.02, 0.08],
    ].map(([angleDeg, wall, faceMm, markDepthMm]) => ({
      angleDeg,
      radiusMm: 120,
      wallMm: [wall],
      faceMm,
      markDepthMm,
    }));
    const criteria = { minimumWallMm: 4.3, faceRunoutLimitMm: 0.1, cleanUpAllowanceMm: 0.05 };
    const { body } = await api.post('/api/cover/check', { ...COVER, criteria, marks: null, stations });
    const check = body as CoverCheck;
    expect(check.cut!.toolPlaneMm).toBeCloseTo(-0.25, 9);
    expect(check.cut!.dialledMm).toBeCloseTo(0.28, 9);
    expect(check.leastWall!.afterMm).toBeCloseTo(4.53, 9);
    expect(check.leastWall!.station).toBe(6);
    // Agreement 0.002; a many-sided tilt limit may turn the direction by up to 11°.
    expect(Math.abs((check.dialledIn?.leastWallMm ?? 0) - 4.614)).toBeLessThanOrEqual(0.002);
    expect(Math.abs((check.dialledIn?.tiltMm ?? 0) - 0.1)).toBeLessThanOrEqual(0.002);
    expect(Math.abs((check.dialledIn?.tiltDirectionDeg ?? 0) - 247.5)).toBeLessThanOrEqual(11);
    expect(check.dialledIn?.shimsMm).toHaveLength(4);
  });

  // Every name of the interface page, at every depth; numbers where the first set of 10.2 has numbers.
  test('gives a cover’s answer every field the interface page names', async () => {
    const { body } = await api.post('/api/cover/check', { ...COVER, releaseClearanceMm: 0.8 });
    const shape = (value: unknown): unknown =>
      value === null || typeof value !== 'object'
        ? typeof value
        : Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, shape(inner)]));
    const numbers = (...names: string[]) => Object.fromEntries(names.map((name) => [name, 'number']));
    expect(shape(body)).toMatchObject({
      verdict: 'string',
      face: numbers(
        'runoutMm',
        'indicatorReadingMm',
        'flatnessLeastSquaresMm',
        'flatnessMinimumZoneMm',
        'dishMm',
      ),
      cut: { ...numbers('dialledMm', 'toolPlaneMm'), cleansUp: 'boolean' },
      dialledIn: {
        ...numbers('wallGainedMm', 'leastWallMm', 'tiltMm'),
        shimsMm: numbers('0', '1', '2', '3'),
      },
      leastWall: numbers('beforeMm', 'afterMm', 'station', 'standardUncertaintyMm', 'expandedUncertaintyMm'),
      ...numbers('conformanceProbability', 'cutsLeft', 'releaseClearanceAfterMm'),
      stations: { 0: numbers('angleDeg', 'radiusMm', 'cutMm', 'wallAfterMm', 'conformanceProbability') },
      unbalance: numbers('gmm', 'heavySideDeg'),
      findings: {
        0: { id: 'string', status: 'string', unit: 'string', sentence: 'string', source: 'string' },
      },
    });
    expect(body).toHaveProperty('dialledIn.tiltDirectionDeg');
    // By hand: inner marks 0.20, 0.12, 0.25, 0.10 behind the studs and none between; the outer row has four stations.
    expect((body as CoverCheck).heatMarks).toEqual([
      {
        radiusMm: expect.any(Number),
        meanMm: expect.closeTo(0.08375, 9),
        studShare: expect.closeTo(1, 9),
        oneSidedShare: expect.closeTo(Math.hypot(0.0125, 0.005) / 0.08375, 9),
        oneSidedDeg: expect.closeTo(158.1986, 3),
        pattern: 'behind-studs',
      },
      expect.objectContaining({ studShare: null, oneSidedShare: null, pattern: 'not-enough-stations' }),
    ]);
    // The repeatability is given, and so infinitely well known.
    expect((body as CoverCheck).leastWall!.degreesOfFreedom).toBeNull();
    for (const finding of (body as CoverCheck).findings) {
      expect(finding).toHaveProperty('value');
      expect(finding).toHaveProperty('limit');
      expect(['pass', 'caution', 'fail', 'not-checked']).toContain(finding.status);
    }
  });

  // The first set leaves 4.50: arithmetic on that. Face and ring needs a limit on bending, which a shop sets.
  test.each([
    ['face', {}],
    ['face-if-sound', { crackTest: null }],
    ['replace', { crackTest: 'found' }],
    ['replace', { makerMinimumWallMm: 4.51 }],
    ['plan-again', { plannedCutMm: 0.7 }],
    ['plan-again', { plannedCutMm: 0.3 }],
    ['measure-again', { makerMinimumWallMm: 4.499 }],
    ['measure-again', { doubtfulReadings: ['wall at station 3'] }],
    ['advice-only', { criteria: null }],
  ])('gives the verdict %s for the first set with %j', async (verdict, change) => {
    const { body } = await api.post('/api/cover/check', { ...COVER, marks: null, ...change });
    expect((body as CoverCheck).verdict).toBe(verdict);
  });

  test('answers a stud that fits with what the interface page promises', async () => {
    const { status, body } = await api.post('/api/stud/check', STUD);
    const check = body as StudCheck;
    expect(status).toBe(200);
    // S = 3.2 + 6.4; worst case ± 0.3.
    expect(check.stackMm.nominal).toBeCloseTo(9.6, 9);
    expect(check.stackMm.least).toBeCloseTo(9.3, 9);
    expect(check.stackMm.most).toBeCloseTo(9.9, 9);
    // Tip beyond the stack with the converter pushed back: 29.5 − 4 − 9.6.
    expect(check.reach.pushedBackMm).toBeCloseTo(15.9, 9);
    expect(check.strength.tensileAreaMm2).toBeCloseTo(0.0878 * 645.16, 1);
    expect(Object.keys(check)).toEqual(
      expect.arrayContaining(['fits', 'holds', 'engagement', 'protrusionThreads', 'joint', 'findings']),
    );
  });

  test('matches studs that were sent, and those of the catalogue', async () => {
    const own = await api.post('/api/stud/match', apiExamples['/stud/match']?.request);
    const ids = (body: unknown) => (body as { studs: StudMatch[] }).studs.map((one) => one.id);
    expect(own.status).toBe(200);
    expect(ids(own.body).sort()).toEqual(['long', 'short']);
    const { stud: _, ...surroundings } = STUD;
    const catalogued = await api.post('/api/stud/match', surroundings);
    expect(catalogued.status).toBe(200);
    expect(ids(catalogued.body).sort()).toEqual(['long', 'short']);
    const [first] = (catalogued.body as { studs: StudMatch[] }).studs;
    expect(first).toEqual(expect.objectContaining({ fits: expect.any(String), check: expect.any(Object) }));
  });
});

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readThread } from '../../../shared/quantity/readThread.ts';
import type { CoverCheck } from '../../../shared/words/cover.ts';
import type { NamedStud, StudCheck, StudMatch } from '../../../shared/words/stud/stud.ts';
import { apiExamples } from '../../../src/web/api/examples.ts';
import { changed } from '../../schemas/changed.ts';
import { apiServer, fieldsOf } from './apiServer.ts';

function catalogue(): NamedStud[] {
  const read = readThread('3/8-24', 'external');
  if (!read.ok) throw new Error(read.message);
  const stud = {
    thread: read.thread,
    threadStartMm: 1,
    threadEndMm: 20,
    lengthToleranceMm: 0.25,
    pilotDiameterMm: 8,
    tensileMPa: 1035,
    proofMPa: 827,
    filletMm: null,
  };
  return [
    { id: 'short', stud: { ...stud, projectionMm: 23.15 } },
    { id: 'long', stud: { ...stud, projectionMm: 29.5 } },
  ];
}

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

describe('readings that look like a slip, when nobody can be asked', () => {
  const doubtful = (check: unknown) =>
    (check as CoverCheck).findings.find((finding) => finding.id === 'doubtful-readings');
  const asked = (check: unknown) => doubtful(check)?.doubts;

  test('are put down as doubtful, and no cover is passed on them', async () => {
    const { body } = await api.post('/api/cover/check', changed(COVER, 'stations.2.wallMm', [4.86, 48.6]));
    expect(doubtful(body)?.status).toBe('fail');
    expect(doubtful(body)?.sentence).toContain('wall at station 3 (48.6 mm? Did you mean 4.86 mm?)');
    expect((body as CoverCheck).verdict).toBe('measure-again');
  });

  test('are told by their place, with what was probably meant', async () => {
    const slips = changed(
      changed(changed(COVER, 'stations.2.wallMm', [4.86, 48.6, 9]), 'stations.0.faceMm', 2.6),
      'stations.1.markDepthMm',
      4.85,
    );
    const { body } = await api.post('/api/cover/check', slips);
    expect(asked(body)).toEqual([
      {
        path: 'stations.0.faceMm',
        valueMm: 2.6,
        probablyMm: null,
        question: expect.stringMatching(
          /^2\.6 mm on the indicator\? The other readings lead to about 0\.0\d+ mm here\./,
        ),
      },
      {
        path: 'stations.1.markDepthMm',
        valueMm: 4.85,
        probablyMm: expect.closeTo(0.485, 9),
        question: '4.85 mm deep? The deepest other mark is 0.25 mm. Did you mean 0.485 mm?',
      },
      {
        path: 'stations.2.wallMm.1',
        valueMm: 48.6,
        probablyMm: 4.86,
        question: '48.6 mm? Did you mean 4.86 mm?',
      },
      {
        path: 'stations.2.wallMm.2',
        valueMm: 9,
        probablyMm: null,
        question: '9 mm? About 4.86 mm is expected here. Measure again, or confirm it.',
      },
    ]);
    expect(asked((await api.post('/api/cover/check', COVER)).body)).toEqual([]);
  });

  test('are lifted by confirmed alone, one by one or all repeats of a station', async () => {
    const sent = changed(COVER, 'stations.2.wallMm', [4.86, 48.6, 0.486]) as object;
    const check = async (more: object) => (await api.post('/api/cover/check', { ...sent, ...more })).body;
    const paths = async (more: object) => asked(await check(more))?.map(({ path }) => path);
    expect(await paths({ doubtfulReadings: [] })).toEqual(['stations.2.wallMm.1', 'stations.2.wallMm.2']);
    expect(await paths({ confirmed: ['stations.2.wallMm.1'] })).toEqual(['stations.2.wallMm.2']);
    expect(await paths({ confirmed: ['stations.2.wallMm'] })).toEqual([]);
    expect(doubtful(await check({ confirmed: ['stations.2.wallMm'] }))?.status).toBe('pass');
  });

  test('stand beside what the sender calls doubtful, which confirmed does not lift', async () => {
    const more = { confirmed: ['stations.2.wallMm'], doubtfulReadings: ['wall at station 1'] };
    const { body } = await api.post('/api/cover/check', { ...(COVER as object), ...more });
    expect(doubtful(body)?.status).toBe('fail');
    expect(doubtful(body)?.sentence).toContain('wall at station 1');
    expect(asked(body)).toEqual([]);
  });

  test('are not lifted by a place where no figure is, which is refused', async () => {
    const confirmed = ['stations.2.wallMm', 'stations.99.wallMm', 'stations.2.wallMm.7', 'cover.none'];
    const answer = await api.post('/api/cover/check', { ...(COVER as object), confirmed });
    expect(answer.status).toBe(422);
    expect(fieldsOf(answer).map(({ path }) => path)).toEqual(['confirmed.1', 'confirmed.2', 'confirmed.3']);
  });
});

describe('figures beside the readings that look like a slip, when nobody can be asked', () => {
  const doubtsOf = ({ body }: { body: unknown }) => (body as { doubts: unknown[] }).doubts;
  const told = async (path: string, value: unknown, confirmed: readonly string[] = []) => {
    const sent = changed(COVER, path, value) as object;
    return doubtsOf(await api.post('/api/cover/check', { ...sent, confirmed }));
  };

  test.each([
    ['plannedCutMm', 4.2, 0.42],
    ['cover.studCircleDiameterMm', 28.6, 286],
    ['gauge.resolutionMm', 0.2, 0.02],
    ['releaseClearanceMm', 0.03, 0.762],
    ['criteria.minimumWallMm', 43, 4.3],
    ['knockOn.crankPilotMm', 1.75, 44.45],
    ['knockOn.padHeightsMm.1', 3.001, 30.01],
  ])(
    '%s of %d mm is told beside the answer, with the value probably meant, until confirmed names it',
    async (path, value, probably) => {
      const knockOn = path.endsWith('.1')
        ? { padHeightsMm: [30.02, value, 30.03, 30.01] }
        : { [path.slice('knockOn.'.length)]: value };
      const whole: [string, unknown] = path.startsWith('knockOn') ? ['knockOn', knockOn] : [path, value];
      expect(await told(...whole)).toMatchObject([
        { path, value, probably: expect.closeTo(probably, 9), unit: 'mm' },
      ]);
      expect(await told(...whole, [path])).toEqual([]);
    },
  );

  test('a cover as such covers are is told nothing of', async () => {
    expect(doubtsOf(await api.post('/api/cover/check', COVER))).toEqual([]);
  });
});

describe('what cannot be used', () => {
  const stationsOf = (n: number) =>
    Array.from({ length: n }, (_, i) => ({
      angleDeg: (i * 360) / n,
      radiusMm: 110,
      wallMm: [4.9],
      faceMm: 0,
    }));

  test.each<[string, string, unknown, string]>([
    [
      'a string for a number',
      '/api/cover/check',
      changed(COVER, 'stations.0.wallMm', ['4.92 mm']),
      'stations.0.wallMm.0',
    ],
    [
      'a negative wall',
      '/api/cover/check',
      changed(COVER, 'stations.0.wallMm', [-4.92]),
      'stations.0.wallMm.0',
    ],
    [
      'a wall of nothing',
      '/api/cover/check',
      changed(COVER, 'stations.0.wallMm', [0]),
      'stations.0.wallMm.0',
    ],
    ['no wall', '/api/cover/check', changed(COVER, 'stations.0.wallMm', []), 'stations.0.wallMm'],
    [
      'a mark deeper than the wall',
      '/api/cover/check',
      changed(COVER, 'stations.0.markDepthMm', 5),
      'stations.0.markDepthMm',
    ],
    [
      'a mark between stations deeper than any wall',
      '/api/cover/check',
      changed(COVER, 'marks.0.depthMm', 5),
      'marks.0.depthMm',
    ],
    [
      'a mark between stations deeper than the wall there',
      '/api/cover/check',
      changed(changed(COVER, 'marks.0.angleDeg', 180), 'marks.0.depthMm', 4.85),
      'marks.0.depthMm',
    ],
    ['no station', '/api/cover/check', changed(COVER, 'stations', []), 'stations'],
    ['500 stations', '/api/cover/check', changed(COVER, 'stations', stationsOf(500)), 'stations'],
    [
      'two stations in one place',
      '/api/cover/check',
      changed(COVER, 'stations.1.angleDeg', 360),
      'stations.1',
    ],
    [
      'heights at some stations only',
      '/api/cover/check',
      changed(COVER, 'stations.1.faceMm', null),
      'stations.1.faceMm',
    ],
    [
      'a track turned inside out',
      '/api/cover/check',
      changed(COVER, 'cover.trackInnerDiameterMm', 264),
      'cover.trackInnerDiameterMm',
    ],
    ['a field misspelt', '/api/cover/check', changed(COVER, 'stations.3.faceMM', 0.1), 'stations.3.faceMM'],
    ['a field unknown', '/api/cover/check', changed(COVER, 'rpm', 500), 'rpm'],
    [
      'thread end before thread start',
      '/api/stud/check',
      changed(STUD, 'stud.threadEndMm', 5),
      'stud.threadEndMm',
    ],
    ['tip before thread end', '/api/stud/check', changed(STUD, 'stud.projectionMm', 19), 'stud.projectionMm'],
    ['a stack of no layers', '/api/stud/check', changed(STUD, 'stack.layers', []), 'stack.layers'],
    [
      'a layer of no thickness',
      '/api/stud/check',
      changed(STUD, 'stack.layers.1.thicknessMm', 0),
      'stack.layers.1.thicknessMm',
    ],
    [
      'a thread that contradicts itself',
      '/api/stud/check',
      changed(STUD, 'stud.thread', '3/8-24 UNC'),
      'stud.thread',
    ],
    [
      'no studs to match',
      '/api/stud/match',
      changed(apiExamples['/stud/match']?.request, 'studs', []),
      'studs',
    ],
    ['words for a thread', '/api/thread', { thread: 'a fine one' }, 'thread'],
    ['nothing', '/api/thread', {}, 'thread'],
    ['a number', '/api/thread', 5, ''],
    ['a list', '/api/stud/check', [], ''],
    ['null', '/api/cover/check', null, ''],
  ])('is refused with 422 in one shape: %s', async (_name, path, body, field) => {
    const answer = await api.post(path, body);
    expect(answer.status).toBe(422);
    expect(answer.headers.get('content-type')).toBe('application/json; charset=utf-8');
    const fields = fieldsOf(answer);
    expect(fields.map((fault) => fault.path)).toContain(field);
    const [first] = fields;
    const message =
      fields.length === 1
        ? first?.message
        : `${fields.length} values can’t be used. Each is named under fields.`;
    expect(answer.body).toEqual({ error: { code: 'wrong-values', message, fields } });
    for (const fault of fields) expect(fault.message).toMatch(/^["A-Z].*[.?]$/);
  });

  test.each<[string, string, number, string]>([
    ['an empty body', '', 400, 'malformed-json'],
    ['blanks', '  ', 400, 'malformed-json'],
    ['words', 'four point nine', 400, 'malformed-json'],
    ['a bracket too few', '{"thread":"M10"', 400, 'malformed-json'],
    ['NaN, which is no JSON', '{"thread":NaN}', 400, 'malformed-json'],
    ['5 MB', JSON.stringify({ thread: 'x'.repeat(5_000_000) }), 413, 'too-large'],
  ])(
    'is refused where it is no JSON that can be read, or too much of it: %s',
    async (_name, body, status, code) => {
      const answer = await api.post('/api/thread', body);
      expect(answer.status).toBe(status);
      expect(answer.body).toEqual({
        error: { code, message: expect.stringMatching(/^[A-Z].*\.$/), fields: [] },
      });
    },
  );

  test('is refused where JSON lets an infinity through as 1e999', async () => {
    const text = JSON.stringify(COVER).replace('[4.92]', '[1e999]');
    expect(text).toContain('1e999');
    const answer = await api.post('/api/cover/check', text);
    expect(answer.status).toBe(422);
    expect(fieldsOf(answer)).toEqual([
      {
        path: 'stations.0.wallMm.0',
        message: 'The wall at station 1, reading 1, is not a finite number; send a plain number of mm.',
      },
    ]);
  });

  test('is refused with 415 where it is a form, or nothing says what it is', async () => {
    for (const type of [
      'application/x-www-form-urlencoded',
      'text/plain',
      'multipart/form-data; boundary=x',
    ]) {
      const answer = await api.post('/api/thread', '{"thread":"M10"}', type);
      expect(answer.status).toBe(415);
      expect(answer.body).toMatchObject({ error: { code: 'not-json', fields: [] } });
    }
    const charset = await api.post('/api/thread', '{"thread":"M10"}', 'application/json; charset=koi8-r');
    expect(charset.status).toBe(415);
    const utf8 = await api.post('/api/thread', '{"thread":"M10"}', 'application/json; charset=utf-8');
    expect(utf8.status).toBe(200);
  });

  test('is refused with 404 where there is no such path, with 405 and the methods that do something where the method does nothing', async () => {
    for (const path of ['/api', '/api/', '/api/cover', '/api/thread/more', '/api/%3Cb%3E']) {
      const answer = await api.send(path, {});
      expect(answer.status).toBe(404);
      expect(answer.body).toMatchObject({ error: { code: 'no-such-path', fields: [] } });
    }
    const posted = await api.post('/api/nothing', { a: 1 });
    expect(posted.status).toBe(404);
    const got = await api.send('/api/thread', {});
    expect(got.status).toBe(405);
    expect(got.headers.get('allow')).toBe('POST');
    expect(got.body).toEqual({
      error: { code: 'wrong-method', message: 'GET does nothing here; use POST.', fields: [] },
    });
    const put = await api.send('/api/openapi.json', { method: 'PUT' });
    expect(put.status).toBe(405);
    expect(put.headers.get('allow')).toBe('GET');
  });

  test('is refused where JSON is very deep, or its names reach into every object', async () => {
    const deep = `{"thread":${'['.repeat(400_000)}${']'.repeat(400_000)}}`;
    const answer = await api.post('/api/thread', deep);
    expect(answer.status).toBe(422);
    const polluting =
      '{"thread":"M10","__proto__":{"polluted":true},"constructor":{"prototype":{"polluted":true}}}';
    const refused = await api.post('/api/thread', polluting);
    expect(refused.status).toBe(422);
    expect(fieldsOf(refused).map((fault) => fault.path)).toEqual(['__proto__', 'constructor']);
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });

  test('is refused where a day is none of the calendar', async () => {
    const gaugesUsed = [{ name: 'M1', dueOn: '24/11/2025' }];
    const answer = await api.post('/api/cover/check', { ...COVER, gaugesUsed, measuredOn: '2026-02-30' });
    expect([answer.status, fieldsOf(answer).map(({ path }) => path)]).toEqual([
      422,
      ['gaugesUsed.0.dueOn', 'measuredOn'],
    ]);
  });

  test('is refused before its entries are looked at, where it is a list of 400,000 stations', async () => {
    const answer = await api.post('/api/cover/check', {
      ...COVER,
      stations: Array.from({ length: 400_000 }, () => 1),
    });
    expect(answer.status).toBe(422);
    expect(fieldsOf(answer)).toEqual([
      { path: 'stations', message: 'The stations: 400000 were sent; at most 400 can be taken at once.' },
    ]);
  });
});

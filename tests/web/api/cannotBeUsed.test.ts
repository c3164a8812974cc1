import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { apiExamples } from '../../../src/web/api/examples.ts';
import { changed } from '../../schemas/changed.ts';
import { catalogue } from './apiAsked.ts';
import { apiServer, fieldsOf } from './apiServer.ts';

let api: Awaited<ReturnType<typeof apiServer>>;
beforeAll(async () => {
  api = await apiServer(catalogue());
});
afterAll(() => api.close());

const COVER = apiExamples['/cover/check']?.request ?? {};
const STUD = apiExamples['/stud/check']?.request ?? {};

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

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { CoverCheck } from '../../../shared/words/cover.ts';
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

import type { Request, Response } from 'express';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { HeatAnswer } from '../../../shared/words/bending/heat.ts';
import type { StiffnessAnswer } from '../../../shared/words/bending/stiffness.ts';
import { WorkBusy } from '../../../src/shop/work/workPool.ts';
import { apiExamples } from '../../../src/web/api/examples.ts';
import { answerError } from '../../../src/web/request/apiErrors.ts';
import { changed } from '../../schemas/changed.ts';
import { apiServer, fieldsOf } from './apiServer.ts';

let api: Awaited<ReturnType<typeof apiServer>>;
beforeAll(async () => {
  api = await apiServer();
});
afterAll(() => api.close());

const COVER = { ...apiExamples['/cover/stiffness']?.request, peakLimit: null };
const HEAT = apiExamples['/cover/heat']?.request ?? {};

// Check values 10.1 (pads as drawn) and 10.4: an independent second implementation, not published.
test('the interface answers the cover of the check values, conforming piston, 4.0 mm left on the track', async () => {
  const { status, body } = await api.post('/api/cover/stiffness', {
    ...COVER,
    trackWallMm: 4,
    padInsetWalls: 0,
  });
  const found = body as StiffnessAnswer;
  expect(status).toBe(200);
  expect(found.meanPressureMPa).toBeCloseTo(1.8539, 4);
  expect(Math.abs(found.peakOverMean / 1.385 - 1)).toBeLessThan(0.01);
  expect(Math.abs(found.rippleMm / 0.01416 - 1)).toBeLessThan(0.02);
  expect(Math.abs(found.bossDeflectionMm / 1.0519 - 1)).toBeLessThan(0.004);
  expect(found.wallForPeakMm).toBeNull();
  expect(found.pressureMap.pressureMPa).toHaveLength(found.pressureMap.radiiMm.length);
  expect(found.section.behindStudMm).toHaveLength(found.section.radiiMm.length);
  expect(found.section.behindStudMm[0]).toBeCloseTo(found.bossDeflectionMm, 9);
  expect(found.section.behindStudMm.at(-1)).toBeCloseTo(0, 9);
});

test('the interface answers the heat of the check values', async () => {
  const { status, body } = await api.post('/api/cover/heat', { ...HEAT, thicknessMm: 5, pressurePeak: null });
  expect(status).toBe(200);
  const found = body as HeatAnswer;
  expect([found.peakRiseK.toFixed(2), found.peakAtS.toFixed(3), found.endRiseK.toFixed(2)]).toEqual([
    '58.51',
    '0.301',
    '42.46',
  ]);
  expect(found.behindStud).toBeNull();
});

test.each([
  ['/api/cover/stiffness', COVER, 'rimDiameterMm', undefined],
  ['/api/cover/stiffness', COVER, 'piston', 'soft'],
  ['/api/cover/stiffness', COVER, 'lining', 60],
  ['/api/cover/stiffness', COVER, 'studCount', 2.5],
  ['/api/cover/stiffness', COVER, 'trackOuterDiameterMm', 301],
  ['/api/cover/stiffness', COVER, 'studCircleDiameterMm', 320],
  ['/api/cover/heat', HEAT, 'slipTimeS', 0],
  ['/api/cover/heat', HEAT, 'pressurePeak', 0.5],
])('%s refuses by its name what cannot be used (%#): %s', async (path, request, field, value) => {
  const answered = await api.post(path, changed(request, field, value));
  expect(answered.status).toBe(422);
  expect(fieldsOf(answered).map((fault) => fault.path)).toContain(field);
});

// Common practice, no source: what such figures are at all.
test.each([
  ['/api/cover/stiffness', 'pressureMPa', COVER, 100, 0.689, 'MPa'],
  ['/api/cover/stiffness', 'trackWallMm', COVER, 40, 4, 'mm'],
  ['/api/cover/stiffness', 'sideWallMm', COVER, 0.157, 4, 'mm'],
  ['/api/cover/stiffness', 'youngMPa', COVER, 29_900, 206_153, 'MPa'],
  ['/api/cover/heat', 'thicknessMm', HEAT, 0.197, 5.0038, 'mm'],
  ['/api/cover/heat', 'conductivityWPerMK', HEAT, 519, 51.9, 'W/(m·K)'],
])(
  '%s tells of a slipped %s, with what was probably meant, until it is confirmed',
  async (path, field, request, value, probably, unit) => {
    const sent = changed(request, field, value) as object;
    const doubtsOf = ({ body }: { body: unknown }) => (body as { doubts: unknown[] }).doubts;
    const told = await api.post(path, sent);
    expect(doubtsOf(told)).toMatchObject([{ path: field, value, unit }]);
    expect((doubtsOf(told)[0] as { probably: number }).probably / probably).toBeCloseTo(1, 2);
    expect(doubtsOf(await api.post(path, { ...sent, confirmed: [field] }))).toEqual([]);
    expect(doubtsOf(await api.post(path, request))).toEqual([]);
  },
);

test('a ring that is half described is refused by its own field', async () => {
  const ring = { innerDiameterMm: 250, outerDiameterMm: 300, thicknessMm: 6 };
  const answered = await api.post('/api/cover/stiffness', { ...COVER, ring });
  expect(answered.status).toBe(422);
  expect(fieldsOf(answered).map((fault) => fault.path)).toEqual(['ring.bonded']);
});

test('where too many covers wait already, the interface answers 503 and says when to ask again', () => {
  const sent: { status?: number; body?: unknown; after?: string } = {};
  const res = {
    headersSent: false,
    set: (_name: string, value: string) => Object.assign(sent, { after: value }),
    status: (status: number) => Object.assign(sent, { status }) && res,
    json: (body: unknown) => Object.assign(sent, { body }),
  };
  answerError(new WorkBusy(), {} as Request, res as unknown as Response, () => undefined);
  expect(sent).toMatchObject({
    status: 503,
    after: '5',
    body: { error: { code: 'busy', message: expect.stringMatching(/Nothing was changed\. Send it again/) } },
  });
});

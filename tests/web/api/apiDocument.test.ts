import { afterAll, beforeAll, expect, test } from 'vitest';
import { apiCalls } from '../../../src/web/api/calls.ts';
import { jobCalls } from '../../../src/web/api/jobCalls.ts';
import { apiServer } from './apiServer.ts';

interface Media {
  schema: { $ref?: string };
  examples?: Record<string, { value: unknown }>;
}
interface Post {
  operationId: string;
  summary: string;
  requestBody: { required: boolean; content: Record<string, Media> };
  responses: Record<string, { description: string; content: Record<string, Media> }>;
}
interface Document {
  openapi: string;
  info: { title: string; version: string };
  paths: Record<string, { post?: Post; get?: unknown }>;
  components: { schemas: Record<string, Record<string, unknown>> };
}

let api: Awaited<ReturnType<typeof apiServer>>;
let document: Document;
beforeAll(async () => {
  api = await apiServer();
  document = (await api.send('/api/openapi.json', {})).body as Document;
});
afterAll(() => api.close());

function refsIn(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    key === '$ref' && typeof inner === 'string' ? [inner] : refsIn(inner),
  );
}

test('the interface document is OpenAPI 3.1 and names every call', () => {
  expect(document.openapi).toMatch(/^3\.1\.\d$/);
  expect(document.info).toMatchObject({ title: 'Coverwright', version: expect.any(String) });
  const posts = Object.entries(document.paths).filter(([, item]) => item.post);
  const jobs = jobCalls.filter((call) => call.methods.includes('POST'));
  const named = [...apiCalls, ...jobs].map((call) => `/api${call.path}`);
  expect(posts.map(([path]) => path).sort()).toEqual([...new Set(named)].sort());
  expect(document.paths['/api/openapi.json']?.get).toBeDefined();
  const ids = posts.map(([, item]) => item.post?.operationId);
  expect(new Set(ids).size).toBe(ids.length);
});

test('every reference in the interface document leads somewhere', () => {
  const refs = refsIn(document.paths);
  expect(refs.length).toBeGreaterThan(20);
  for (const ref of refs) {
    const name = /^#\/components\/schemas\/(\w+)$/.exec(ref)?.[1] ?? ref;
    expect(Object.keys(document.components.schemas)).toContain(name);
  }
});

test('the interface document describes requests by the schemas that read them', () => {
  const cover = document.components.schemas.CheckCoverRequest;
  expect(cover).toMatchObject({
    type: 'object',
    required: ['cover', 'stations'],
    additionalProperties: false,
    properties: {
      stations: {
        minItems: 0,
        maxItems: 400,
        items: {
          required: ['angleDeg', 'radiusMm', 'wallMm'],
          properties: { wallMm: { items: { type: 'number', exclusiveMinimum: 0 } } },
        },
      },
    },
  });
  expect(document.components.schemas.CheckStudRequest).toMatchObject({
    required: ['stud', 'stack'],
    properties: { stud: { properties: { thread: { type: 'string' } } } },
  });
  expect(JSON.stringify(document)).not.toContain('$schema');
});

test.each(apiCalls.map((call) => [`/api${call.path}`]))(
  'the examples of %s in the interface document answer as they say',
  async (path) => {
    const post = document.paths[path]?.post;
    const request = post?.requestBody.content['application/json'];
    const usable = await api.post(path, request?.examples?.usable?.value);
    expect(usable.status).toBe(200);
    const said = post?.responses['200']?.content['application/json'];
    expect(usable.body).toEqual(said?.examples?.usable?.value);
    expect(Object.keys(usable.body as object).length).toBeGreaterThan(0);

    const refused = await api.post(path, request?.examples?.refused?.value);
    expect(refused.status).toBe(422);
    const refusal = post?.responses['422']?.content['application/json'];
    expect(refused.body).toEqual(refusal?.examples?.refused?.value);
  },
);

test('the examples of the interface document show sensible covers and studs: one that is faced, one stud that fits', () => {
  const answer = (path: string) =>
    document.paths[path]?.post?.responses['200']?.content['application/json']?.examples?.usable?.value;
  expect(answer('/api/cover/check')).toMatchObject({ verdict: 'face' });
  expect(answer('/api/stud/check')).toMatchObject({ fits: 'yes', holds: 'yes' });
  expect(answer('/api/stud/match')).toMatchObject({
    studs: [
      { id: 'long', fits: 'yes' },
      { id: 'short', fits: 'no' },
    ],
  });
  expect(answer('/api/thread')).toMatchObject({ designation: '7/16-20 UNF-2A' });
});

test('the interface document holds no −0, NaN or infinity', () => {
  expect(JSON.stringify(document)).not.toMatch(/-0[,}\]]|NaN|Infinity/);
});

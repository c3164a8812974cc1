import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { z } from 'zod';
import { apiCalls } from '../../../src/web/api/calls.ts';
import { apiExamples } from '../../../src/web/api/examples.ts';
import { jobCalls } from '../../../src/web/api/jobCalls.ts';
import { openApi } from '../../../src/web/api/openapi.ts';
import { apiServer } from './apiServer.ts';
import { type CameBack, holdAnswer } from './heldAnswers.ts';

interface Media {
  schema: { $ref: string };
  examples?: Record<string, { value: object }>;
}
interface Document {
  paths: Record<string, Record<string, { responses: Record<string, { content: Record<string, Media> }> }>>;
  components: { schemas: Record<string, object> };
}

let api: Awaited<ReturnType<typeof apiServer>>;
let thread: CameBack;
let document: Document;
beforeAll(async () => {
  api = await apiServer();
  const { text } = await api.post('/api/thread', { thread: 'M10' });
  thread = { method: 'POST', url: '/api/thread', status: 200, type: 'application/json', text };
  document = (await openApi()) as unknown as Document;
});
afterAll(() => api.close());

const sent = (came: Partial<CameBack>) => () => holdAnswer({ ...thread, ...came });
const changed = (change: object) => JSON.stringify({ ...JSON.parse(thread.text), ...change });

test('an answer as it is holds to its schema', () => {
  expect(sent({})).not.toThrow();
});

test('an answer with a field that its schema does not name does not hold', () => {
  expect(sent({ text: changed({ leadMm: 1.5 }) })).toThrow(/Unrecognized key: "leadMm"/);
});

test('an answer without a field that its schema names does not hold', () => {
  expect(sent({ text: changed({ pitchMm: undefined }) })).toThrow(/pitchMm/);
});

test('an answer with null where a number is promised does not hold', () => {
  expect(sent({ text: changed({ pitchMm: null }) })).toThrow(/pitchMm/);
});

test('a status that no call promises does not hold, and neither does an error of another shape', () => {
  expect(sent({ status: 201 })).toThrow(/No call says that POST \/api\/thread answers 201/);
  expect(sent({ status: 422 })).toThrow(/error/);
});

test('an answer of the interface that is no JSON does not hold; a page is not looked at', () => {
  expect(sent({ type: 'text/html', text: '<p>' })).toThrow(/with no JSON/);
  expect(sent({ url: '/thread', type: 'text/html', text: '<p>' })).not.toThrow();
});

test('fetch throws for an answer that does not hold to its schema', async () => {
  const server = createServer((_req, res) => {
    res.setHeader('Content-Type', 'application/json').end('{"pitchMm":1.5}');
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  const asked = fetch(`http://127.0.0.1:${port}/api/thread`, { method: 'POST' });
  await expect(asked).rejects.toThrow(/does not hold to its schema/);
  await new Promise((resolve) => server.close(resolve));
});

/** The schema of the document as a validator, its references within. */
function validatorOf({ $ref }: { $ref: string }): z.ZodType {
  const whole = JSON.stringify({ $ref, $defs: document.components.schemas });
  return z.fromJSONSchema(JSON.parse(whole.replaceAll('#/components/schemas/', '#/$defs/')));
}

const operations = () =>
  Object.entries(document.paths).flatMap(([path, methods]) =>
    Object.entries(methods).flatMap(([method, { responses }]) =>
      Object.entries(responses).map(([status, { content }]) => ({
        name: `${method} ${path} ${status}`,
        media: content['application/json']!,
      })),
    ),
  );

test('every example answer in the document is valid against the schema the document gives for it', () => {
  let seen = 0;
  for (const { name, media } of operations()) {
    for (const { value } of Object.values(media.examples ?? {})) {
      const validator = validatorOf(media.schema);
      expect([name, validator.safeParse(value).error?.issues ?? []]).toEqual([name, []]);
      expect([name, validator.safeParse({ ...value, nobodyKnowsIt: 1 }).success]).toEqual([name, false]);
      seen++;
    }
  }
  expect(seen).toBeGreaterThan(30);
});

test('the document describes every status that a call promises, and every other error', () => {
  const told = new Set(operations().map(({ name }) => name));
  for (const call of [...apiCalls, ...jobCalls]) {
    for (const status of [...Object.keys(call.answers), 'default']) {
      expect(told).toContain(`${call.methods[0]!.toLowerCase()} /api${call.path} ${status}`);
    }
  }
  expect(Object.keys(apiExamples)).toHaveLength(apiCalls.length);
});

import { z } from 'zod';
import { errorBody } from '../request/apiErrors.ts';
import { type ApiCall, apiCalls, CAUTION } from './calls.ts';
import { apiExamples } from './examples.ts';
import { type JobCall, jobCalls } from './jobCalls.ts';
import { type JobExampleAnswered, playExamples } from './jobExamples.ts';

type Json = Record<string, unknown>;

let built: Promise<Json> | null = null;

/** The OpenAPI 3.1 document. Its schemas are those that read the requests; its answers are worked out when built. */
export function openApi(): Promise<Json> {
  built ??= build();
  return built;
}

async function build(): Promise<Json> {
  const paths: Json = {};
  const schemas: Json = { Error: ERROR_SCHEMA };
  for (const call of apiCalls) {
    const name = `${call.name[0]?.toUpperCase()}${call.name.slice(1)}`;
    const { request, answer, refused, refusal } = await worked(call);
    const { $schema: _, ...schema } = z.toJSONSchema(call.schema, { io: 'input' });
    schemas[`${name}Request`] = schema;
    schemas[`${name}Answer`] = shapeOf(answer);
    paths[`/api${call.path}`] = {
      post: {
        operationId: call.name,
        summary: call.summary,
        description: call.description,
        requestBody: {
          required: true,
          content: content(`${name}Request`, {
            usable: { summary: 'Worked out', value: request },
            refused: { summary: 'Refused', value: refused },
          }),
        },
        responses: {
          200: {
            description: 'Worked out.',
            content: content(`${name}Answer`, { usable: { value: answer } }),
          },
          400: error('The body is no JSON.'),
          413: error('The body is too large.'),
          415: error('The body is not sent as JSON.'),
          422: {
            description: 'Values that cannot be used, each named.',
            content: content('Error', { refused: { value: refusal } }),
          },
        },
      },
    };
  }
  for (const [path, item] of Object.entries(await jobPaths(schemas))) paths[path] = item;
  return {
    openapi: '3.1.0',
    info: {
      title: 'Coverwright',
      version: '1',
      description: `Numbers are in the unit the field’s name ends in. null means left out; unknown fields are refused. ${CAUTION}`,
    },
    servers: [{ url: '/' }],
    paths: { ...paths, '/api/openapi.json': { get: ITSELF } },
    components: { schemas },
  };
}

const EXPECTED: Readonly<Record<number, string>> = {
  200: 'Done.',
  201: 'Made; Location says where it is.',
  409: 'Somebody was first: both versions, and nothing was written.',
  422: 'Values that cannot be used, each named.',
};

/** The calls about jobs, each with what it answered when the examples were played, one job from receipt to signature. */
async function jobPaths(schemas: Json): Promise<Json> {
  const played = await playExamples();
  const paths: Record<string, Json> = {};
  for (const call of jobCalls) {
    const name = `${call.name[0]?.toUpperCase()}${call.name.slice(1)}`;
    const examples = played.filter((one) => one.name === call.name);
    const usable = examples.find((one) => one.status < 300);
    if (call.schema) {
      const { $schema: _, ...schema } = z.toJSONSchema(call.schema, { io: 'input' });
      schemas[`${name}Request`] = schema;
    }
    if (usable) schemas[`${name}Answer`] = shapeOf(usable.answer);
    const shown = (of: 'body' | 'answer', some: readonly JobExampleAnswered[]) =>
      Object.fromEntries(some.map((one) => [exampleName(one, examples), { value: one[of] }]));
    const statuses = [...new Set([...examples.map((one) => one.status), ...(call.schema ? [422] : [])])];
    const operation = {
      summary: call.summary,
      description: call.description,
      parameters: parametersOf(call, usable),
      ...(call.schema && {
        requestBody: { required: true, content: content(`${name}Request`, shown('body', examples)) },
      }),
      responses: Object.fromEntries([
        ...statuses.sort().map((status) => {
          const schema = status < 300 ? `${name}Answer` : 'Error';
          const here = examples.filter((one) => one.status === status);
          return [status, { description: EXPECTED[status], content: content(schema, shown('answer', here)) }];
        }),
        ...(call.path.includes('{') ? [[404, error('There is no such job, or no such revision.')]] : []),
      ]),
    };
    for (const method of call.methods) {
      const operationId = method === call.methods[0] ? call.name : `${call.name}By${method}`;
      const path = `/api${call.path}`;
      paths[path] = { ...paths[path], [method.toLowerCase()]: { operationId, ...operation } };
    }
  }
  return paths;
}

function exampleName(one: JobExampleAnswered, all: readonly JobExampleAnswered[]): string {
  return `${one.method.toLowerCase()}${all.indexOf(one) + 1}`;
}

function parametersOf(call: JobCall, example: JobExampleAnswered | undefined): Json[] {
  const inPath = call.path.includes('{number}')
    ? [
        {
          name: 'number',
          in: 'path',
          required: true,
          schema: TEXT,
          description: 'The job’s number.',
          example: '1001',
        },
      ]
    : [];
  const inQuery = Object.entries(call.query).map(([name, description]) => {
    const value = example?.query[name];
    return {
      name,
      in: 'query',
      required: false,
      schema: TEXT,
      description,
      ...(value && { example: value }),
    };
  });
  return [...inPath, ...inQuery];
}

/** The example of a call and one that is refused, each with what comes back. */
async function worked(call: ApiCall) {
  const example = apiExamples[call.path];
  if (!example) throw new Error(`${call.path} has no example.`);
  const request: Json = example.request;
  const refused: Json = { ...request, ...example.spoiltBy };
  const needs = { catalogueStuds: () => [] };
  const asItLeaves: unknown = JSON.parse(JSON.stringify(await call.answer(request, needs)));
  try {
    await call.answer(refused, needs);
  } catch (thrown) {
    return { request, answer: asItLeaves, refused, refusal: errorBody(thrown).body };
  }
  throw new Error(`${call.path}: the spoilt example is taken; spoil it otherwise.`);
}

function content(schema: string, examples: Json): Json {
  return { 'application/json': { schema: { $ref: `#/components/schemas/${schema}` }, examples } };
}

function error(description: string): Json {
  return {
    description,
    content: { 'application/json': { schema: { $ref: '#/components/schemas/Error' } } },
  };
}

const ITSELF = {
  operationId: 'openApi',
  summary: 'This document.',
  responses: {
    200: { description: 'OpenAPI 3.1.', content: { 'application/json': { schema: { type: 'object' } } } },
  },
};

const TEXT = { type: 'string' };
const FIELD = { type: 'object', required: ['path', 'message'], properties: { path: TEXT, message: TEXT } };
const ERROR_SCHEMA = {
  type: 'object',
  required: ['error'],
  properties: {
    error: {
      type: 'object',
      required: ['code', 'message', 'fields'],
      properties: { code: TEXT, message: TEXT, fields: { type: 'array', items: FIELD } },
    },
  },
};

/** What an answer is made of, as seen from one: more fields may come, and what cannot be computed is null. */
function shapeOf(value: unknown): Json {
  if (value === null) return {};
  if (Array.isArray(value)) return { type: 'array', ...(value.length > 0 && { items: shapeOf(value[0]) }) };
  if (typeof value !== 'object') return { type: [typeof value, 'null'] };
  const properties = Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, shapeOf(inner)]));
  return { type: ['object', 'null'], properties };
}

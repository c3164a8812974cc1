import { ITSELF as THE_PROGRAM } from '../../shop/work/workPool.ts';
import { errorBody } from '../request/apiErrors.ts';
import type { ApiCall, CallTold } from './call.ts';
import { apiCalls, CAUTION } from './calls.ts';
import { answerRef, documentSchemas, type Json, requestRef } from './documentSchemas.ts';
import { apiExamples } from './examples.ts';
import { jobCalls } from './jobCalls.ts';
import { type JobExampleAnswered, playExamples } from './jobExamples.ts';

let built: Promise<Json> | null = null;

/** The OpenAPI 3.1 document. Its schemas read the requests and hold the answers; its examples are worked out when built. */
export function openApi(): Promise<Json> {
  built ??= build();
  return built;
}

/** An example as it stands in the document: what was sent, and what came back. */
interface Shown {
  readonly key: string;
  readonly query: Readonly<Record<string, string>>;
  readonly body: unknown;
  readonly status: number;
  readonly answer: unknown;
}

async function build(): Promise<Json> {
  const paths: Record<string, Json> = {};
  const tell = (call: CallTold, examples: readonly Shown[]) => {
    const path = `/api${call.path}`;
    const operation = operationOf(call, examples);
    for (const method of call.methods) {
      const operationId = method === call.methods[0] ? call.name : `${call.name}By${method}`;
      paths[path] = { ...paths[path], [method.toLowerCase()]: { operationId, ...operation } };
    }
  };
  for (const call of apiCalls) tell(call, await worked(call));
  const played = await playExamples();
  for (const call of jobCalls) tell(call, shownOf(played.filter((one) => one.name === call.name)));
  return {
    openapi: '3.1.0',
    info: {
      title: 'Coverwright',
      version: '1',
      description: `Numbers are in the unit at the end of the field’s name. null means left out; unknown fields are refused. ${CAUTION}`,
    },
    servers: [{ url: '/' }],
    paths: { ...paths, '/api/openapi.json': { get: ITSELF } },
    components: { schemas: documentSchemas([...apiCalls, ...jobCalls]) },
  };
}

const EXPECTED: Readonly<Record<number, string>> = {
  200: 'Done.',
  201: 'Made. Location has its address.',
  400: 'The body is not JSON.',
  404: 'No such job, revision, slip or study.',
  409: 'Somebody changed it first. Both versions are here; nothing was saved.',
  413: 'The body is too large.',
  415: 'The body is not sent as JSON.',
  422: 'Values that can’t be used, each named.',
};

function operationOf(call: CallTold, examples: readonly Shown[]): Json {
  const parameters = parametersOf(call, examples);
  const body = call.schema && {
    requestBody: { required: true, content: content(requestRef(call), examples, 'body') },
  };
  const responses = statusesOf(call, examples).map((status): [string, Json] => {
    const here = examples.filter((one) => one.status === status);
    return [
      String(status),
      { description: EXPECTED[status], content: content(answerRef(call, status), here, 'answer') },
    ];
  });
  return {
    summary: call.summary,
    description: call.description,
    ...(parameters.length > 0 && { parameters }),
    ...body,
    responses: { ...Object.fromEntries(responses), default: anyOtherError(call) },
  };
}

/** Those of its own, of its examples, and those that everything with a body or a job’s number has. */
function statusesOf(call: CallTold, examples: readonly Shown[]): number[] {
  const all = [
    ...Object.keys(call.answers).map(Number),
    ...examples.map((one) => one.status),
    ...(call.schema ? [400, 413, 415, 422] : []),
    ...(Object.keys(call.query).length > 0 ? [422] : []),
    ...(call.path.includes('{') ? [404] : []),
  ];
  return [...new Set(all)].sort((a, b) => a - b);
}

function anyOtherError(call: CallTold): Json {
  return {
    description: 'Not allowed (401, 403), not now (503), or a mistake of the program (500).',
    content: content(answerRef(call, 500), [], 'answer'),
  };
}

function content(schema: Json, shown: readonly Shown[], of: 'body' | 'answer'): Json {
  const examples = Object.fromEntries(shown.map((one) => [one.key, { value: one[of] }]));
  return { 'application/json': { schema, ...(shown.length > 0 && { examples }) } };
}

function parametersOf(call: CallTold, examples: readonly Shown[]): Json[] {
  const usable = examples.find((one) => one.status < 300);
  const inPath = { name: 'number', in: 'path', required: true, schema: TEXT };
  const inQuery = Object.entries(call.query).map(([name, description]) => {
    const value = usable?.query[name];
    return {
      name,
      in: 'query',
      required: false,
      schema: TEXT,
      description,
      ...(value && { example: value }),
    };
  });
  return [...(call.path.includes('{number}') ? [{ ...inPath, ...numberTold(call) }] : []), ...inQuery];
}

function numberTold({ path }: CallTold): Json {
  if (path.startsWith('/slips')) return { description: 'The slip’s number.', example: 'S-1' };
  if (path.startsWith('/studies')) return { description: 'The study’s number.', example: '1' };
  return { description: 'The job’s number.', example: '1001' };
}

/** The examples of a call of figures: one that is answered and one that is refused, each with what comes back. */
async function worked(call: ApiCall): Promise<Shown[]> {
  const example = apiExamples[call.path];
  if (!example) throw new Error(`${call.path} has no example.`);
  const request: Json = example.request;
  const refused: Json = { ...request, ...example.spoiltBy };
  const needs = { catalogueStuds: () => [], catalogueKit: () => ({ nuts: [], washers: [] }) };
  const asItLeaves: unknown = JSON.parse(JSON.stringify(await call.answer(request, needs, THE_PROGRAM)));
  try {
    await call.answer(refused, needs, THE_PROGRAM);
  } catch (thrown) {
    const { status, body } = errorBody(thrown);
    return [
      { key: 'usable', query: {}, body: request, status: 200, answer: asItLeaves },
      { key: 'refused', query: {}, body: refused, status, answer: body },
    ];
  }
  throw new Error(`${call.path}: the spoilt example is taken; spoil it otherwise.`);
}

function shownOf(played: readonly JobExampleAnswered[]): Shown[] {
  return played.map((one, i) => ({ ...one, key: `${one.method.toLowerCase()}${i + 1}` }));
}

const TEXT = { type: 'string' };

const ITSELF = {
  operationId: 'openApi',
  summary: 'This document.',
  responses: {
    200: { description: 'OpenAPI 3.1.', content: { 'application/json': { schema: { type: 'object' } } } },
  },
};

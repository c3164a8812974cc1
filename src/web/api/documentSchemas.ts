import * as z from 'zod';
import { errorAnswer } from '../../../shared/schemas/answers/errorAnswer.ts';
import { namedAnswers } from '../../../shared/schemas/answers/exactly.ts';
import type { CallTold } from './call.ts';

export type Json = Record<string, unknown>;

const AT = '#/components/schemas/';

/** Every schema of the document: what the requests are read with, and what the answers are held to in the tests. */
export function documentSchemas(calls: readonly CallTold[]): Json {
  const { schemas } = z.toJSONSchema(namedAnswers, { uri: (id) => `${AT}${id}`, io: 'output' });
  const requests = calls.flatMap((call) =>
    call.schema === null ? [] : [[requestName(call), plain(z.toJSONSchema(call.schema, { io: 'input' }))]],
  );
  const answers = Object.entries(schemas).map(([id, schema]) => [id, plain(schema)]);
  return Object.fromEntries([...requests, ...answers]);
}

function plain({ $schema: _, $id: __, ...schema }: Json): Json {
  return schema;
}

function requestName({ name }: CallTold): string {
  return `${name[0]!.toUpperCase()}${name.slice(1)}Request`;
}

export function requestRef(call: CallTold): Json {
  return { $ref: `${AT}${requestName(call)}` };
}

/** What a call answers with a status. Throws for an answer that has no name. */
export function answerRef({ name, answers }: CallTold, status: number): Json {
  const id = namedAnswers.get(answers[status] ?? errorAnswer)?.id;
  if (id === undefined) throw new Error(`The answer ${status} of ${name} has no name.`);
  return { $ref: `${AT}${id}` };
}

import { z } from 'zod';
import { errorAnswer } from '../../../shared/schemas/answers/errorAnswer.ts';
import type { CallTold } from '../../../src/web/api/call.ts';
import { apiCalls } from '../../../src/web/api/calls.ts';
import { jobCalls } from '../../../src/web/api/jobCalls.ts';

/** What came back from the program, whatever it was asked with. */
export interface CameBack {
  readonly method: string;
  /** With or without what stands before the path. */
  readonly url: string;
  readonly status: number;
  readonly type: string | null | undefined;
  readonly text: string;
}

const CALLS: readonly CallTold[] = [...apiCalls, ...jobCalls];
const DOCUMENT = z.looseObject({ openapi: z.string(), paths: z.object() });

/**
 * Holds what came back from the JSON interface to the schema of its call and status. Every test that asks the program
 * over HTTP goes through here: `fetch` by itself, and what asks otherwise where it has the answer. Pages are let pass.
 */
export function holdAnswer(came: CameBack): void {
  const { pathname } = new URL(came.url, 'http://shop.example');
  if (!/^\/api(\/|$)/.test(pathname) || came.method === 'HEAD') return;
  const what = `${came.method} ${pathname} answered ${came.status}`;
  if (!came.type?.startsWith('application/json')) throw new Error(`${what} with no JSON: ${came.type}.`);
  const held = schemaOf(came.method, pathname, came.status).safeParse(JSON.parse(came.text));
  if (!held.success) {
    throw new Error(`${what}, and that does not hold to its schema:\n${z.prettifyError(held.error)}`);
  }
}

/** The schema of an answer. Throws for one that no call gives. */
function schemaOf(method: string, pathname: string, status: number): z.ZodType {
  if (pathname === '/api/openapi.json' && status === 200) return DOCUMENT;
  const call = CALLS.find((one) => one.methods.some((each) => each === method) && isPathOf(one, pathname));
  const schema = call?.answers[status];
  if (schema) return schema;
  if (status >= 400) return errorAnswer;
  throw new Error(`No call says that ${method} ${pathname} answers ${status}.`);
}

function isPathOf({ path }: CallTold, pathname: string): boolean {
  const [before, after] = `/api${path}`.split('{number}');
  if (after === undefined) return pathname === before;
  const named = pathname.slice(before!.length, pathname.length - after.length);
  return pathname.startsWith(before!) && pathname.endsWith(after) && named !== '' && !named.includes('/');
}

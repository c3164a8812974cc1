import type { AddressInfo } from 'node:net';
import express from 'express';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { NamedStud } from '../../../shared/words/stud/stud.ts';
import { apiRouter } from '../../../src/web/api/api.ts';

export interface Answered {
  readonly status: number;
  readonly headers: Headers;
  readonly text: string;
  /** null when it is no JSON. */
  readonly body: unknown;
}

/** The JSON interface on a port of its own, for tests that must see what really leaves. */
export async function apiServer(catalogue: readonly NamedStud[] = []) {
  const app = express();
  app.use(
    '/api',
    apiRouter({
      catalogueStuds: () => Promise.resolve(catalogue),
      catalogueKit: () => ({ nuts: [], washers: [] }),
    }),
  );
  const server = app.listen(0, '127.0.0.1');
  await new Promise((resolve) => server.once('listening', resolve));
  const { port } = server.address() as AddressInfo;

  async function send(path: string, init: RequestInit): Promise<Answered> {
    const answer = await fetch(`http://127.0.0.1:${port}${path}`, init);
    const text = await answer.text();
    const json = answer.headers.get('content-type')?.startsWith('application/json') && text !== '';
    return { status: answer.status, headers: answer.headers, text, body: json ? JSON.parse(text) : null };
  }
  return {
    send,
    /** Posts an object as JSON, or text as it is. */
    post: (path: string, body: unknown, type = 'application/json') =>
      send(path, {
        method: 'POST',
        headers: { 'Content-Type': type },
        body: typeof body === 'string' ? body : JSON.stringify(body),
      }),
    close: () => new Promise((resolve) => server.close(resolve)),
  };
}

export function fieldsOf(answer: Answered): Fault[] {
  return (answer.body as { error: { fields: Fault[] } }).error.fields;
}

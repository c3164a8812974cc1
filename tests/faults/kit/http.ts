import { type Agent, request } from 'node:http';
import { holdAnswer } from '../../web/api/heldAnswers.ts';

export interface Answered {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly text: string;
}

const LONGEST_MS = 200_000;

/** Asks the program one thing, on a connection of its own unless an agent is given. */
export function ask(
  url: string,
  how: {
    readonly method?: string;
    readonly headers?: Readonly<Record<string, string>>;
    readonly body?: string | Buffer;
    readonly agent?: Agent;
  } = {},
): Promise<Answered> {
  return new Promise((resolve, reject) => {
    const sent = request(
      url,
      {
        method: how.method ?? 'GET',
        headers: { ...how.headers },
        agent: how.agent ?? false,
        timeout: LONGEST_MS,
      },
      (answer) => {
        const parts: Buffer[] = [];
        answer.on('data', (part: Buffer) => parts.push(part));
        answer.on('error', reject);
        answer.on('end', () => {
          const status = answer.statusCode ?? 0;
          const text = Buffer.concat(parts).toString('utf8');
          try {
            holdAnswer({ method: sent.method, url, status, type: answer.headers['content-type'], text });
          } catch (error) {
            reject(error);
            return;
          }
          resolve({ status, headers: answer.headers, text });
        });
      },
    );
    sent.on('timeout', () => sent.destroy(new Error(`No answer in ${LONGEST_MS} ms: ${url}`)));
    sent.on('error', reject);
    sent.end(how.body);
  });
}

/** Sends a form as a page of the program would. */
export function post(
  base: string,
  path: string,
  fields: Readonly<Record<string, string>>,
  agent?: Agent,
): Promise<Answered> {
  return ask(base + path, {
    method: 'POST',
    headers: { Origin: new URL(base).origin, 'Content-Type': 'application/x-www-form-urlencoded' },
    body: new URLSearchParams(fields).toString(),
    ...(agent && { agent }),
  });
}

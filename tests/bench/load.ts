import { Agent, request } from 'node:http';
import { gunzipSync } from 'node:zlib';

export interface Asked {
  readonly url: string;
  readonly method?: 'GET' | 'POST';
  readonly body?: () => string;
}

export interface Answered {
  readonly status: number;
  /** As it came over the wire. */
  readonly bytes: number;
  readonly text: string;
}

/** One request, compressed as a browser asks for it. */
export function ask({ url, method = 'GET', body }: Asked, agent?: Agent): Promise<Answered> {
  return new Promise((resolve, reject) => {
    const sent = request(
      url,
      {
        method,
        headers: { 'accept-encoding': 'gzip', ...(body && { 'content-type': 'application/json' }) },
        ...(agent && { agent }),
      },
      (res) => {
        const parts: Buffer[] = [];
        res.on('data', (part: Buffer) => parts.push(part));
        res.on('error', reject);
        res.on('end', () => {
          const whole = Buffer.concat(parts);
          const zipped = res.headers['content-encoding'] === 'gzip';
          resolve({
            status: res.statusCode ?? 0,
            bytes: whole.length,
            get text() {
              return (zipped ? gunzipSync(whole) : whole).toString('utf8');
            },
          });
        });
      },
    );
    sent.on('error', reject);
    sent.end(body?.());
  });
}

export interface Rate {
  /** The middle one of all rounds. */
  readonly perSecond: number;
  /** Of all requests of all rounds. */
  readonly p99Ms: number;
}

const ROUNDS = 7;

/**
 * How often each is answered, one after another in short rounds, so that whatever else the machine does meanwhile
 * falls on all of them alike. The first round only warms up.
 */
export async function ratesOf(
  asked: readonly (() => Asked | Promise<Asked>)[],
  connections: number,
  msOfRound: number,
): Promise<readonly Rate[]> {
  const rounds: Round[][] = asked.map(() => []);
  for (let i = 0; i <= ROUNDS; i++) {
    for (const [at, one] of asked.entries()) {
      const round = await roundOf(await one(), connections, msOfRound);
      if (i > 0) rounds[at]!.push(round);
    }
  }
  return rounds.map((all) => ({
    perSecond: middle(all.map(({ perSecond }) => perSecond)),
    p99Ms: share(
      all.flatMap(({ took }) => took),
      0.99,
    ),
  }));
}

interface Round {
  readonly perSecond: number;
  readonly took: readonly number[];
}

/** Asks again and again over some connections for a while. Throws where an answer is no success. */
async function roundOf(asked: Asked, connections: number, ms: number): Promise<Round> {
  const agent = new Agent({ keepAlive: true, maxSockets: connections });
  const took: number[] = [];
  const from = performance.now();
  const one = async () => {
    while (performance.now() - from < ms) {
      const at = performance.now();
      const { status } = await ask(asked, agent);
      if (status >= 300) throw new Error(`${asked.url} answered ${status}.`);
      took.push(performance.now() - at);
    }
  };
  await Promise.all(Array.from({ length: connections }, one));
  const seconds = (performance.now() - from) / 1000;
  agent.destroy();
  return { perSecond: took.length / seconds, took };
}

function middle(values: readonly number[]): number {
  return share(values, 0.5);
}

function share(values: readonly number[], part: number): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length * part)] ?? 0;
}

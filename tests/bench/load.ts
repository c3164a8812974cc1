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
  readonly perSecond: number;
  readonly p99Ms: number;
}

/** Asks again and again over some connections for a while. Throws where an answer is no success. */
export async function rateOf(asked: Asked, connections: number, ms: number): Promise<Rate> {
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
  took.sort((a, b) => a - b);
  return { perSecond: took.length / seconds, p99Ms: took[Math.floor(took.length * 0.99)] ?? 0 };
}

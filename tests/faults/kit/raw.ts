import { connect } from 'node:net';

export interface RawAnswer {
  /** null when the connection was closed without an answer. */
  readonly status: number | null;
  readonly head: string;
  readonly body: string;
}

/** Sends bytes as they are, whatever they are, and reads until the program closes the connection. */
export function sendRaw(port: number, bytes: Buffer, mostMs = 200_000): Promise<RawAnswer> {
  return new Promise((resolve, reject) => {
    const parts: Buffer[] = [];
    const socket = connect(port, '127.0.0.1', () => socket.write(bytes));
    const limit = setTimeout(() => {
      socket.destroy();
      reject(new Error(`No answer in ${mostMs} ms to ${bytes.toString('latin1').slice(0, 300)}`));
    }, mostMs);
    socket.on('data', (part) => parts.push(part));
    // What was refused unread is answered, and then cut off.
    socket.on('error', () => {});
    socket.on('close', () => {
      clearTimeout(limit);
      // "Go on" is no answer yet.
      const all = Buffer.concat(parts)
        .toString('utf8')
        .replace(/^HTTP\/1\.1 100 [^\r]*\r\n\r\n/, '');
      const end = all.indexOf('\r\n\r\n');
      const status = /^HTTP\/1\.1 (\d{3})/.exec(all)?.[1];
      resolve({
        status: status === undefined ? null : Number(status),
        head: end === -1 ? all : all.slice(0, end),
        body: end === -1 ? '' : all.slice(end + 4),
      });
    });
  });
}

/** A request in bytes; the connection is closed after it. */
export function bytesOf(request: {
  readonly method: string;
  readonly target: string;
  readonly headers: readonly (readonly [string, string])[];
  readonly body?: Buffer;
}): Buffer {
  const { method, target, headers, body } = request;
  const length =
    body === undefined || headers.some(([name]) => name === 'Transfer-Encoding')
      ? []
      : [`Content-Length: ${body.length}`];
  const head = [
    `${method} ${target} HTTP/1.1`,
    ...headers.map(([name, value]) => `${name}: ${value}`),
    ...length,
    'Connection: close',
    '',
    '',
  ];
  return Buffer.concat([Buffer.from(head.join('\r\n'), 'utf8'), body ?? Buffer.alloc(0)]);
}

import { gzipSync } from 'node:zlib';
import type { Route } from '../inside/instrument.ts';
import { MARKUP } from './markup.ts';
import type { Form } from './page.ts';
import { bytesOf } from './raw.ts';

/** What the program has, for requests that come close to what it expects. */
export interface Known {
  readonly port: number;
  readonly routes: readonly Route[];
  readonly forms: readonly Form[];
  /** Addresses that the pages lead to. */
  readonly links: readonly string[];
  readonly jobs: readonly string[];
  /** Kind and id, as in `stud/long`. */
  readonly entries: readonly string[];
  readonly examples: readonly unknown[];
  /** Of people signed in, for most requests; without them nobody signs in. */
  readonly cookies?: () => readonly string[];
}

export interface Mutant {
  readonly route: string;
  readonly bytes: Buffer;
}

const METHODS = ['GET', 'POST', 'PUT', 'DELETE', 'PATCH', 'HEAD', 'OPTIONS', 'TRACE', 'PROPFIND', 'BREW'];
const TRICKS = [
  '%2e%2e/',
  '..%2f',
  '%00',
  '%2F',
  '//',
  '/./',
  '..;/',
  '%c0%ae%c0%ae/',
  '%',
  '%zz',
  '\\',
  '%5c..%5c',
  '%F0%9F',
  '%ff',
  '.',
  ';x=1',
  'a'.repeat(5000),
  '%0d%0aX-Set:%201',
  '%u0041',
  '😀',
];
const PROTOTYPES = [
  '__proto__',
  'constructor',
  'prototype',
  'hasOwnProperty',
  'toString',
  '__proto__[x]',
  'constructor.prototype.x',
];
const WORDS: readonly string[] = [
  '',
  ' ',
  '0',
  '-0',
  '-1',
  '1e999',
  '-1e-999',
  'NaN',
  'Infinity',
  '0x10',
  '1_000',
  '9'.repeat(400),
  '1'.repeat(20_000),
  '3/16',
  '1/0',
  '0/0',
  '1 1/0',
  '12,5',
  '1.2.3',
  '4.92; 4.93',
  ';'.repeat(3000),
  '5 mm',
  '5 in',
  '5 kg',
  '5 mm^9999',
  '((((((((((',
  '2^2^2^2^2',
  'sqrt(-1)',
  'import("fs")',
  '\u0000',
  '\ud800',
  '\u202e',
  '\u{1f529}',
  'a'.repeat(9000),
  "' OR 1=1 --",
  '%',
  '_',
  '[1,2]',
  '{}',
  'null',
  'true',
  'undefined',
  '2026-02-31',
  '9999-99-99',
  '-1-1-1',
  '1970-01-01',
  'constructor',
  '__proto__',
  '../../etc/passwd',
  ...MARKUP,
];
const HOSTS = [
  '',
  'localhost',
  'shop.example',
  '127.0.0.1:1',
  '[::1]',
  'localhost:99999',
  'localhost.',
  'LOCALHOST',
  'a'.repeat(3000),
  '127.0.0.1@shop.example',
];

/** Half a pair of characters too, in the bytes that stand for it. */
const encoded = (words: string) =>
  words
    .split(/(\p{Surrogate})/u)
    .map((part) => (/^\p{Surrogate}$/u.test(part) ? '%ED%A0%80' : encodeURIComponent(part)))
    .join('');

/** Makes requests that mutate what the program expects; the same numbers give the same requests. */
export function mutants(known: Known, random: () => number): () => Mutant {
  const any = <T>(all: readonly T[]): T => all[Math.floor(random() * all.length)]!;
  const sometimes = (share: number) => random() < share;
  const upTo = (most: number) => Math.floor(random() * (most + 1));
  const names = [
    ...new Set(known.forms.flatMap(({ fields }) => fields.map(({ name }) => name))),
    ...PROTOTYPES,
  ];
  let turn = 0;

  const linked = new Map(
    known.routes.map(({ path }) => {
      const shape = new RegExp(`^${path.replace(/[.]/g, '\\.').replace(/:\w+/g, '[^/?]+')}$`);
      return [path, known.links.filter((link) => shape.test(link))];
    }),
  );

  function pathFor(route: Route): string {
    const there = linked.get(route.path) ?? [];
    const near = sometimes(0.7) ? route.path.replace(':kind/:id', any(known.entries)) : route.path;
    const likely = there.length > 0 && sometimes(0.4) ? any(there) : near;
    let path = likely.replace(/[:*{]+\w+}?/g, (part) => {
      if (sometimes(0.2)) return encoded(any(WORDS)) || 'x';
      if (part === ':number') return encodeURIComponent(any(known.jobs));
      if (part === ':kind') return any(['family', 'stud', 'stack', 'criteria', '__proto__']);
      if (part === ':id' && /people|tokens/.test(route.path)) return String(1 + upTo(12));
      if (part === ':revision') return String(upTo(9));
      const gauges = known.entries.filter((one) => one.startsWith('gauge/'));
      const named = /gauges/.test(route.path) && gauges.length > 0 ? gauges : known.entries;
      return encodeURIComponent(any(named).split('/').at(-1) ?? '');
    });
    if (sometimes(0.15)) {
      const at = upTo(path.length);
      path = path.slice(0, at) + any(TRICKS) + path.slice(at);
    }
    // Characters that end a request line would make it another request.
    return (path.startsWith('/') ? path : `/${path}`).replace(/[\s\0]/g, '_');
  }

  const queryFor = () => {
    const pairs = Array.from({ length: sometimes(0.02) ? 7000 : upTo(6) }, () => [
      any(names),
      sometimes(0.5) ? String(upTo(300) / 10) : any(WORDS),
    ]);
    const query = new URLSearchParams(pairs).toString();
    const rest = any(['', '', '', '&a[b][c]=1', '&a=1&a=2&a=3', '&%', '&=', '&&&', '&a=%ff', '#x']);
    return (query + rest).slice(0, 60_000);
  };

  function formFor(path: string): Record<string, string> {
    const near = known.forms.filter(
      ({ action, method }) => method === 'post' && action.split('/').at(-1) === path.split('/').at(-1),
    );
    const form = sometimes(0.85) && near.length > 0 ? any(near) : any(known.forms);
    const fields = Object.fromEntries(form.fields.map(({ name, value }) => [name, value]));
    if (sometimes(0.8)) Object.assign(fields, { who: 'AK', why: 'as asked' });
    for (let i = upTo(3); i > 0; i--) {
      const name = sometimes(0.7) && form.fields.length > 0 ? any(form.fields).name : any(names);
      if (sometimes(0.1)) delete fields[name];
      else fields[name] = sometimes(0.4) ? String(upTo(4000) / 100) : any(WORDS);
    }
    return fields;
  }

  function strange(): unknown {
    return any<() => unknown>([
      () => null,
      () => [],
      () => ({}),
      () => true,
      () => -0,
      () => 1e308,
      () => -1e308,
      () => 5e-324,
      () => upTo(1e6) / 1e3,
      () => any(WORDS),
      () => [[[[]]]],
      () => ({ length: -1 }),
      () => Array(500).fill(0),
      () => ({ ...Object.fromEntries(PROTOTYPES.map((name) => [name, 1])) }),
      () => '9'.repeat(5000),
    ])();
  }

  function mutated(value: unknown, depth = 0): unknown {
    if (sometimes(depth === 0 ? 0.03 : 0.06)) return strange();
    if (Array.isArray(value)) {
      const all = value.map((one) => mutated(one, depth + 1));
      return sometimes(0.03) ? Array.from({ length: 500 }, () => all[0]) : all;
    }
    if (typeof value !== 'object' || value === null) return sometimes(0.05) ? strange() : value;
    const entries = Object.entries(value)
      .filter(() => !sometimes(0.03))
      .map(([name, one]) => [name, mutated(one, depth + 1)]);
    if (sometimes(0.05)) entries.push([any([...PROTOTYPES, ...names]), strange()]);
    return Object.fromEntries(entries);
  }

  function json(): string {
    const text = JSON.stringify(mutated(any(known.examples))) ?? 'null';
    if (sometimes(0.08)) return text.slice(0, upTo(text.length));
    if (sometimes(0.03)) return `${'['.repeat(10_000)}${']'.repeat(10_000)}`;
    if (sometimes(0.03)) return `${'{"a":'.repeat(10_000)}1${'}'.repeat(10_000)}`;
    if (sometimes(0.03)) return text.replace(/-?\d+(\.\d+)?/, '1'.repeat(5000));
    if (sometimes(0.03))
      return text.replace('{', '{"__proto__":{"x":1},"constructor":{"prototype":{"x":1}},');
    return text;
  }

  function multipart(path: string): { type: string; body: Buffer } {
    const line = any(['x', 'a'.repeat(70), '----zz']);
    const file = any([
      Buffer.from('no picture'),
      Buffer.from('89504e470d0a1a0a', 'hex'),
      Buffer.from('<svg onload="x()"/>'),
      Buffer.from('ffd8ffe000104a46', 'hex'),
      Buffer.alloc(0),
    ]);
    const parts = Object.entries(formFor(path)).map(([name, value]) =>
      Buffer.from(`--${line}\r\nContent-Disposition: form-data; name="${name}"\r\n\r\n${value}\r\n`),
    );
    const name = any(['../../x.png', '"><zzq>.svg', 'a'.repeat(3000), 'x\\..\\y.php', '']);
    parts.push(
      Buffer.from(
        `--${line}\r\nContent-Disposition: form-data; name="${any(['file', 'photo', '__proto__'])}"; filename="${name}"\r\nContent-Type: ${any(['image/png', 'text/html', 'x'])}\r\n\r\n`,
      ),
      file,
    );
    const end = any([`\r\n--${line}--\r\n`, `\r\n--${line}`, '\r\n']);
    return {
      type: `multipart/form-data; boundary=${any([line, line, line, 'other', ''])}`,
      body: Buffer.concat([...parts, Buffer.from(end)]),
    };
  }

  return () => {
    // Every route in turn, so that none is left out by chance.
    const route = known.routes[turn++ % known.routes.length]!;
    const own = route.methods.map((name) => (name === '_all' ? any(METHODS) : name.toUpperCase()));
    const method = sometimes(0.85) ? any(own) : any(METHODS);
    const path = pathFor(route);
    const target = sometimes(0.4) ? `${path}?${queryFor()}`.replace(/[\s\0]/g, '+') : path;
    const headers: [string, string][] = [];
    if (!sometimes(0.01)) headers.push(['Host', sometimes(0.95) ? `127.0.0.1:${known.port}` : any(HOSTS)]);
    const origin = sometimes(0.75)
      ? `http://127.0.0.1:${known.port}`
      : any([null, null, null, 'null', 'http://shop.example', 'x', '']);
    if (origin !== null) headers.push(['Origin', origin]);
    const cookies = known.cookies?.() ?? [];
    if (cookies.length > 0 && sometimes(0.85)) headers.push(['Cookie', any(cookies)]);
    else if (origin !== null && sometimes(0.3))
      headers.push([
        'Cookie',
        any([
          'unit=in; initials=AK',
          'unit=%ff; =; ;;',
          'session=zz',
          `a=${'b'.repeat(3000)}`,
          '__proto__=1',
          'initials=%E0%A4%A',
        ]),
      ]);
    if (sometimes(0.3))
      headers.push(
        any<[string, string]>([
          ['HX-Request', 'true'],
          ['Range', 'bytes=0-1,5-,-3'],
          ['If-None-Match', '*'],
          ['If-Modified-Since', 'x'],
          ['Accept-Encoding', 'br, gzip;q=x'],
          ['Accept', ','],
          ['Authorization', 'Bearer zz'],
          ['Authorization', `Bearer ${'z'.repeat(50)}`],
          ['X-Forwarded-For', '::1, x'],
          ['X-Forwarded-Host', 'shop.example'],
          ['X-HTTP-Method-Override', 'DELETE'],
          ['Expect', '100-continue'],
          ['X-Long', 'x'.repeat(20_000)],
          ['Accept-Language', 'x'.repeat(2000)],
          ['Upgrade', 'websocket'],
        ]),
      );
    let body: Buffer | undefined;
    if (!['GET', 'HEAD'].includes(method) || sometimes(0.03)) {
      const kind = random() + (path.startsWith('/api') ? 0.45 : 0);
      if (/photos/.test(path) ? kind < 0.6 : kind < 0.08) {
        const form = multipart(path);
        body = form.body;
        headers.push(['Content-Type', form.type]);
      } else if (kind < 0.6) {
        body = Buffer.from(new URLSearchParams(formFor(path)).toString());
        headers.push([
          'Content-Type',
          sometimes(0.95)
            ? 'application/x-www-form-urlencoded'
            : any([
                'text/plain',
                'application/x-www-form-urlencoded; charset=utf-7',
                'application/json',
                'x',
                '',
              ]),
        ]);
      } else if (kind < 1.38) {
        body = Buffer.from(json());
        headers.push([
          'Content-Type',
          sometimes(0.95)
            ? 'application/json'
            : any(['application/json; charset=x', 'text/json', 'application/x-www-form-urlencoded']),
        ]);
      } else {
        body = Buffer.from(Array.from({ length: upTo(2000) }, () => upTo(255)));
        headers.push([
          'Content-Type',
          any(['application/json', 'application/x-www-form-urlencoded', 'application/octet-stream']),
        ]);
      }
      if (sometimes(0.04)) {
        body = any([gzipSync(body), body, Buffer.alloc(0)]);
        headers.push(['Content-Encoding', any(['gzip', 'deflate', 'br', 'x', 'gzip, gzip'])]);
      }
      if (sometimes(0.03)) {
        body = Buffer.concat([
          Buffer.from(`${body.length.toString(16)}\r\n`),
          body,
          Buffer.from('\r\n0\r\n\r\n'),
        ]);
        headers.push(['Transfer-Encoding', 'chunked']);
      }
    }
    return {
      route: `${route.methods.join()} ${route.path}`,
      bytes: bytesOf({ method, target, headers, ...(body && { body }) }),
    };
  };
}

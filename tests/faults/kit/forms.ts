import { type Answered, ask } from './http.ts';
import { madeOfMarkup } from './markup.ts';
import { type Form, readPage } from './page.ts';

const PICTURE = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64',
);

export interface Tried {
  readonly what: string;
  readonly answer: Answered;
}

/** Sends a form with the values given over what it shows. */
export async function submit(
  base: string,
  form: Form,
  over: Readonly<Record<string, string>>,
  more: Readonly<Record<string, string>> = {},
): Promise<Answered> {
  const values = { ...Object.fromEntries(form.fields.map(({ name, value }) => [name, value])), ...over };
  const origin = new URL(base).origin;
  if (!form.multipart) {
    const body = new URLSearchParams(values).toString();
    if (form.method === 'get') return ask(`${base}${form.action.split('?')[0]}?${body}`, { headers: more });
    const headers = { ...more, Origin: origin, 'Content-Type': 'application/x-www-form-urlencoded' };
    return ask(base + form.action, { method: 'POST', headers, body });
  }
  const body = new FormData();
  for (const { name, kind } of form.fields) {
    const words = values[name] ?? '';
    if (kind === 'file') body.append(name, new Blob([PICTURE], { type: 'image/png' }), words || 'wall.png');
    else body.append(name, words);
  }
  const sent = new Response(body);
  return ask(base + form.action, {
    method: 'POST',
    headers: { ...more, Origin: origin, 'Content-Type': sent.headers.get('content-type') ?? '' },
    body: Buffer.from(await sent.arrayBuffer()),
  });
}

/** What the answers of the program made of the words that were sent. */
export function faultsIn(base: string, tried: readonly Tried[]): string[] {
  return tried.flatMap(({ what, answer }) => {
    if (answer.status >= 500) return [`${what}: ${answer.status}`];
    const html = String(answer.headers['content-type']).startsWith('text/html');
    const to = String(answer.headers.location ?? '/');
    if (!/^\/(?![/\\])/.test(to)) return [`${what}: leads away to ${to}`];
    return html ? madeOfMarkup(readPage(answer.text, base)).map((fault) => `${what}: ${fault}`) : [];
  });
}

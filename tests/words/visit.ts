import { readPage } from '../faults/kit/page.ts';
import { openLan, PASSWORD } from '../web/lan.ts';
import { serve } from '../web/program.ts';
import { ASKED, FROM } from './asked.ts';
import { jsonWords, pageWords } from './pageWords.ts';

/** The screens in the order of the list; the first that fits an address is its screen. */
const SCREENS: readonly (readonly [RegExp, string])[] = [
  [/^\/$/, 'Front page'],
  [/^\/cover(\/|\?|$)/, 'Check a cover'],
  [/^\/stud\/slip/, 'Slip of a stud'],
  [/^\/stud(\/|\?|$)/, 'Find a stud'],
  [/^\/jobs(\?|$)|^\/jobs\/new/, 'Jobs'],
  [/^\/jobs\/[^/]+\/measure/, 'Measuring'],
  [/^\/jobs\/[^/]+\/sheet/, 'Sheet of a job'],
  [/^\/jobs\/[^/]+\/tag/, 'Tag of a job'],
  [/^\/jobs\/[^/]+\/history/, 'History of a job'],
  [/^\/jobs\/|^\/photos\//, 'Job'],
  [/^\/shelf/, 'Shelf'],
  [/^\/(catalog(ue)?|gauges|import|studies)/, 'Catalog'],
  [/^\/inspection/, 'Inspection lists'],
  [/^\/criteria|^\/setup/, 'Shop limits'],
  [/^\/records|^\/backups/, 'Backups'],
  [/^\/people|^\/tokens/, 'People'],
  [/^\/(sign-in|sign-out|first|account)/, 'Signing in and account'],
  [/^\/how/, 'How it is worked out'],
  [/^\/api/, 'Interface for programs'],
  [/./, 'Errors'],
];
export const SCREEN_NAMES = SCREENS.map(([, name]) => name);

export interface Seen {
  readonly screen: string;
  readonly text: string;
}

export interface Came {
  readonly path: string;
  readonly status: number;
  readonly type: string;
  readonly html: string;
  readonly location: string | null;
}
export type Send = (path: string, form?: Readonly<Record<string, string>>) => Promise<Came>;

/** Of pages of one kind so many are opened; every job, as each is at another stage. */
const OF_ONE_KIND = 3;
const WRONG: readonly ((value: string) => string)[] = [
  () => '',
  () => 'zzq?',
  () => '4000',
  () => '-5',
  (value) => (/^[\d.]+$/.test(value) ? String(Number(value) * 10) : value),
];

/**
 * Opens every page of the demo shop, fills its forms wrong, and says what was read there; `inInches` is given what came
 * with lengths in inches.
 */
export async function visitAll(inInches: (came: Came) => void = () => {}): Promise<Seen[]> {
  const seen: Seen[] = [];
  const take = ({ path, status, type, html }: Came) => {
    const screen = status === 404 ? 'Errors' : SCREENS.find(([fits]) => fits.test(path))![1];
    if (status === 303) return;
    const pieces = type.startsWith('text/html')
      ? pageWords(html)
      : type.includes('json')
        ? jsonWords(JSON.parse(html) as unknown)
        : type.includes('csv')
          ? (html.split('\n')[0] ?? '').trim().split(',')
          : [html];
    for (const text of pieces) seen.push({ screen, text });
  };
  await visitShop(take, inInches);
  await visitNetwork(take);
  await visitEmpty(take);
  return seen;
}

/** Pages of the other unit: what stands there beside the figures may differ. */
const METRIC = [
  '/',
  '/cover',
  '/stud',
  '/criteria',
  '/jobs/1001',
  '/jobs/1001/sheet',
  '/jobs/1005',
  '/jobs/1009',
];

/** At the machine, where nobody signs in. */
async function visitShop(take: (came: Came) => void, inInches: (came: Came) => void): Promise<void> {
  const program = await serve({ demo: true, publicUrl: 'http://shop.example' });
  try {
    const own = (path: string, init: RequestInit) => fetch(program.url + path, init);
    const send = sender(own, program.url, 'in');
    const both = (came: Came) => {
      take(came);
      inInches(came);
    };
    const pages = await crawl(
      (path) => send(path),
      ['/', '/api/openapi.json', '/jobs.csv', '/no-such-page'],
      both,
    );
    await visitStudy(send, take);
    for (const path of [...FROM, ...ASKED.in]) inInches(await send(path));
    const metric = sender(own, program.url, 'mm');
    for (const path of METRIC) take(await metric(path));
    await fillWrong(send, pages, both);
    await visitImports(own, program.url, send, both);
  } finally {
    await program.close();
  }
}

/** Lists of washers from a file: what is added and changed, what is asked about, what is refused, what is no list. */
const LISTS = [
  'name,inner diameter (in),outer diameter (in),thickness (in),color\nNew one,0.4,0.8,0.06,red\n',
  'name,inner diameter (in),outer diameter (in),thickness (in)\nNew one,0.4,0.8,1.6\n',
  'name,inner diameter (in),used as,thickness (in)\nNew one,wide,nothing,=A1\n',
  'one,two\n1,2\n',
  '',
];

async function visitImports(
  ask: (path: string, init: RequestInit) => Promise<Response>,
  origin: string,
  send: Send,
  take: (came: Came) => void,
): Promise<void> {
  const own = (await send('/catalogue/washer.csv')).html.replace(',no,', ',yes,');
  for (const list of [...LISTS, own]) {
    const body = new FormData();
    body.set('file', new Blob([list]), 'list.csv');
    const init: RequestInit = {
      method: 'POST',
      body,
      redirect: 'manual',
      headers: { origin, cookie: 'unit=in' },
    };
    const answer = await ask('/import/washer', init);
    const path = answer.headers.get('location');
    if (path === null) continue;
    let came = await send(path);
    while (came.html.includes('hx-trigger="every 1s"')) came = await send(path);
    take(came);
    const seen = /name="seen" value="(\w+)"/.exec(came.html)?.[1];
    if (seen === undefined) continue;
    take(await send(path, { seen, who: '', why: '' }));
    take(await send(path, { seen: 'other', who: 'AK', why: 'new' }));
    await send(path, { seen, who: 'AK', why: 'new' });
    take(await send(path));
  }
}

/** A study while it is read, and when it is over: its order is drawn by lot, and what is said of it is not. */
async function visitStudy(send: Send, take: (came: Came) => void): Promise<void> {
  const plan = { covers: '2', stations: '1', rounds: '2', people: 'AA, BB', who: 'AK' };
  const { location } = await send('/gauges/micrometer-m2/studies', plan);
  for (let place = 0; place < 8; place++) {
    const page = await send(location!);
    if (place < 2) take({ ...page, html: page.html.replaceAll('BB', 'AA') });
    const [, cover] = /Cover (\d)/.exec(page.html)!;
    const [, person, round] = /<b>([AB])[\s\S]*?Round (\d)/.exec(page.html)!;
    const last = person === 'A' ? round : Number(round) + 4;
    await send(location!, { place: String(place), value: `0.19${cover}${last}` });
  }
  take(await send(location!));
  take(await send(`${location}/readings.csv`));
}

/** A shop in which nothing was set up. */
async function visitEmpty(take: (came: Came) => void): Promise<void> {
  const program = await serve({ demo: false });
  try {
    const send = sender((path, init) => fetch(program.url + path, init), program.url, 'in');
    const shop = { shopName: 'Demo', lengthUnit: 'in', decimalSign: 'point', from: '0', who: 'AK' };
    const limits = { allowance: '0.003', confidence: '95', from: '1', unit: 'in', who: 'AK' };
    take(await send('/'));
    take(await send('/setup'));
    take(await send('/setup/shop', {}));
    await send('/setup/shop', shop);
    take(await send('/setup/shop', { ...shop, shopName: 'Other' }));
    take(await send('/setup'));
    take(await send('/setup/limits', { ...limits, minimum: '1.65' }));
    await send('/setup/limits', { ...limits, minimum: '0.165' });
    take(await send('/setup'));
  } finally {
    await program.close();
  }
}

/** On the network, where people sign in. */
async function visitNetwork(take: (came: Came) => void): Promise<void> {
  const lan = await openLan();
  try {
    const own = `http://${lan.host}`;
    const asked =
      (cookie: string) =>
      async (path: string, form?: Readonly<Record<string, string>>): Promise<Came> => {
        const { status, headers, text } = await lan.ask(path, {
          headers: { cookie, ...(form && { origin: own }) },
          ...(form && { form }),
        });
        return {
          path,
          status,
          type: String(headers['content-type']),
          html: text,
          location: (headers.location as string | undefined) ?? null,
        };
      };
    const stranger = asked('');
    const keeper = asked(await lan.cookieOf('keeper'));
    await fillWrong(stranger, await crawl(stranger, ['/sign-in', '/first'], take), take);
    const pages = await crawl(
      keeper,
      ['/people', '/account', '/records'],
      take,
      /^\/(people|account|records|tokens)/,
    );
    await fillWrong(keeper, pages, take);
    take(await asked(await lan.cookieOf('reader'))('/people'));
    take(
      await keeper('/people', { name: 'Tester Seven', initials: 'TS', role: 'recorder', password: PASSWORD }),
    );
  } finally {
    await lan.close();
  }
}

export function sender(
  ask: (path: string, init: RequestInit) => Promise<Response>,
  origin: string,
  unit: string,
): Send {
  return async (path, form) => {
    const answer = await ask(path, {
      redirect: 'manual',
      headers: {
        cookie: `unit=${unit}`,
        ...(form && { origin, 'content-type': 'application/x-www-form-urlencoded' }),
      },
      ...(form && { method: 'POST', body: new URLSearchParams(form) }),
    });
    const type = answer.headers.get('content-type') ?? '';
    return {
      path,
      status: answer.status,
      type,
      html: (await answer.text()).replaceAll('\u00a0', ' '),
      location: answer.headers.get('location'),
    };
  };
}

const kindOf = (path: string) =>
  path
    .replace(/#.*/, '')
    .replace(/\?.*/, (query) => `?${[...new URLSearchParams(query).keys()].slice(0, 2).join('&')}`)
    .replace(/^\/jobs\/(?!new\b)[^/?]+(.*\?)/, '/jobs/*$1')
    .replace(/^\/(photos|people|records\/backups)\/(?!new\b)[^/?]+/, '/$1/*')
    .replace(/^(\/jobs)\/[^/?]+(\/history)\/\d+/, '$1/*$2/*')
    .replace(/^(\/jobs)\/(?!new\b)[^/?]+\/(bending|what-if|readings\.csv|measure)/, '$1/*/$2')
    .replace(/^(\/catalog(?:ue)?\/\w+)\/(?!new\b)[^/?]+/, '$1/*');

export async function crawl(
  send: Send,
  from: readonly string[],
  take: (came: Came) => void,
  within = /./,
): Promise<Came[]> {
  const waiting = [...from];
  const pages: Came[] = [];
  const kinds = new Map<string, number>();
  const known = new Set(waiting);
  for (let path = waiting.shift(); path !== undefined; path = waiting.shift()) {
    const came = await send(path);
    take(came);
    const next = came.location ? [came.location] : [];
    if (came.type.startsWith('text/html')) {
      pages.push(came);
      next.push(...readPage(came.html, 'http://shop.example').links);
    }
    for (const to of next) {
      const kind = kindOf(to);
      const count = kinds.get(kind) ?? 0;
      if (known.has(to) || count >= OF_ONE_KIND || !within.test(to)) continue;
      known.add(to);
      kinds.set(kind, count + 1);
      waiting.push(to);
    }
  }
  return pages;
}

/** Sends every form of these pages with nothing, nonsense, and figures far too small and too large. */
export async function fillWrong(
  send: Send,
  pages: readonly Came[],
  take: (came: Came) => void,
): Promise<void> {
  const kinds = new Set<string>();
  for (const page of pages) {
    for (const form of readPage(page.html, `http://shop.example${page.path}`).forms) {
      if (form.multipart || /^\/(sign-out|preferences|account\/sign-out|records\/)/.test(form.action))
        continue;
      const names = new Set(form.fields.map(({ name }) => name.replace(/\d+/g, '')));
      const kind = `${kindOf(form.action).replace(/\/jobs\/[^/]+/, '/jobs/*')} ${[...names].sort().join()}`;
      if (kinds.has(kind)) continue;
      kinds.add(kind);
      for (const wrong of WRONG) {
        const fields = Object.fromEntries(
          form.fields.map(({ name, value, kind }) => [
            name,
            kind === 'choice' || KEPT.test(name) ? value : wrong(value),
          ]),
        );
        const query = new URLSearchParams(fields).toString();
        take(
          form.method === 'get'
            ? await send(`${form.action.split('?')[0]}?${query}`)
            : await send(form.action, fields),
        );
      }
    }
  }
}

/** Boxes that nobody types in. */
const KEPT = /^(from|criteria|token|unit|at\.|was\.|pass|back|n$)/;

// Keeps the measuring page of this tablet, so that it opens again without the network. A service worker, which a browser
// runs only with https or on the machine itself. What comes from the network always goes before what is kept here.

interface Extendable extends Event {
  waitUntil(done: Promise<unknown>): void;
}
interface Fetched extends Extendable {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface Told extends Extendable {
  readonly data: { readonly person: string; readonly page: string; readonly parts: readonly string[] };
}
interface KeeperScope {
  skipWaiting(): Promise<void>;
  readonly clients: { claim(): Promise<void> };
  addEventListener(type: 'install' | 'activate', does: (event: Extendable) => void): void;
  addEventListener(type: 'fetch', does: (event: Fetched) => void): void;
  addEventListener(type: 'message', does: (event: Told) => void): void;
}

const worker = self as unknown as KeeperScope;
/** Of one person: another one's are thrown away before anything is kept for this one. */
const KEPT = 'coverwright.measuring.';
const KEPT_AT = 'x-kept-at';
let keeping = Promise.resolve();
const MEASURING = /^\/jobs\/[^/]+\/measure$/;

worker.addEventListener('install', (event) => event.waitUntil(worker.skipWaiting()));
worker.addEventListener('activate', (event) => event.waitUntil(worker.clients.claim()));
worker.addEventListener('message', (event) => {
  // One after the other, so that an earlier state of the page never comes last.
  keeping = keeping.then(() => keep(event.data));
  event.waitUntil(keeping);
});
worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const { pathname, origin } = new URL(request.url);
  if (request.method !== 'GET' || origin !== location.origin) return;
  if (request.mode === 'navigate' && MEASURING.test(pathname)) event.respondWith(pageOf(request));
  else if (pathname.startsWith('/assets/')) event.respondWith(partOf(request));
});

/** The page and all it is made of, as they are now. */
async function keep({ person, page, parts }: Told['data']): Promise<void> {
  const mine = KEPT + person;
  await forget((name) => name !== mine);
  const cache = await caches.open(mine);
  for (const address of [page, ...parts]) {
    try {
      const answer = await fetch(address, { cache: 'no-cache' });
      if (address === page && !isMeasuring(answer)) {
        await forget(() => true);
        return;
      }
      if (answer.ok) await cache.put(keyOf(address), await dated(answer));
    } catch {
      // No network: what is kept stays as it is.
    }
  }
}

async function pageOf(request: Request): Promise<Response> {
  try {
    const answer = await fetch(request);
    // Somebody who is not signed in, or not allowed here, sees nothing that was kept for somebody else.
    if (answer.status === 401 || answer.status === 403) await forget(() => true);
    return answer;
  } catch (trouble) {
    const kept = await caches.match(keyOf(request.url));
    if (kept === undefined) throw trouble;
    return saidToBeKept(kept);
  }
}

async function partOf(request: Request): Promise<Response> {
  try {
    return await fetch(request);
  } catch (trouble) {
    const kept = await caches.match(keyOf(request.url));
    if (kept === undefined) throw trouble;
    return kept;
  }
}

/** A measuring page is one of its job and side of the cut, whichever reading of it is asked for. */
function keyOf(address: string): string {
  const { pathname, searchParams } = new URL(address, location.origin);
  if (!MEASURING.test(pathname)) return pathname;
  return `${pathname}?pass=${searchParams.get('pass') === 'after' ? 'after' : 'before'}`;
}

function isMeasuring(answer: Response): boolean {
  return answer.ok && MEASURING.test(new URL(answer.url).pathname);
}

async function dated(answer: Response): Promise<Response> {
  const headers = new Headers(answer.headers);
  // What is kept is plain again, whatever it was packed as on the way.
  headers.delete('content-encoding');
  headers.delete('content-length');
  headers.set(KEPT_AT, new Date().toISOString());
  return new Response(await answer.blob(), { status: answer.status, headers });
}

/** The kept page opens with the sentence that says so, and since when. */
async function saidToBeKept(kept: Response): Promise<Response> {
  const at = kept.headers.get(KEPT_AT) ?? '';
  const page = (await kept.text())
    .replace('id="kept-copy" hidden', 'id="kept-copy"')
    .replace('<time id="kept-since">', `<time id="kept-since" datetime="${at}">${inWords(at)}`);
  return new Response(page, { status: kept.status, headers: kept.headers });
}

function inWords(at: string): string {
  return new Date(at).toLocaleString('en-US', { dateStyle: 'medium', timeStyle: 'short' });
}

async function forget(which: (name: string) => boolean): Promise<void> {
  const names = await caches.keys();
  await Promise.all(
    names.filter((name) => name.startsWith(KEPT) && which(name)).map((name) => caches.delete(name)),
  );
}

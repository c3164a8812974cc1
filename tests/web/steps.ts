import type { ShopCriteria } from '../../shared/words/catalogue.ts';
import { addEntry } from '../../src/records/catalogue.ts';
import { currentCriteria, saveCriteria } from '../../src/records/shopCriteria.ts';
import { alder, criteria } from '../records/samples.ts';
import { type Served, serve } from './program.ts';

/** A clock that goes on by a minute every time it is asked. */
function minutes(start: string): () => Date {
  let at = Date.parse(start);
  return () => {
    at += 60_000;
    return new Date(at);
  };
}

/** A shop with one family and its criteria; the family sets no minimum of its own, so that the shop's counts. */
export async function shopWith(changes: Partial<ShopCriteria> = {}): Promise<Served> {
  const now = minutes('2026-11-24T08:00:00Z');
  const program = await serve({ demo: false, now });
  const { db } = program.shop;
  const family = { ...alder, shopMinimumWallMm: null, shopMinimumWallSource: null };
  await saveCriteria(
    db,
    { who: 'BL', why: 'to begin with', now },
    { fromRevision: 0, body: { ...criteria, ...changes } },
  );
  await addEntry(db, { who: 'BL', now }, { kind: 'family', id: 'alder', body: family });
  return program;
}

/** The places of two rings, and the form of a pass with the walls given at them. */
export const PLACES = [
  ...[0, 45, 90, 135, 180, 225, 270, 315].map((angle) => `${angle}/110`),
  ...[0, 90, 180, 270].map((angle) => `${angle}/128`),
];

export function readingsForm(
  pass: 'before' | 'after',
  walls: readonly string[],
  more: Readonly<Record<string, string>> = {},
): Record<string, string> {
  const fields: Record<string, string> = { pass, token: `token-${pass}-1`, unit: 'mm', who: 'AK', ...more };
  PLACES.forEach((place, i) => {
    fields[`at.${i}`] = place;
    fields[`w.${i}`] = walls[i] ?? '';
    // Whatever the cut should have left, this was measured.
    if (pass === 'after') fields[`ok.w.${i}`] = walls[i] ?? '';
    if (pass === 'before') fields[`f.${i}`] = '0';
  });
  return fields;
}

/** Saves shop limits; those that change the answer of an open job are saved by a second press, once that was seen. */
export async function saveLimits(
  program: Served,
  fields: Readonly<Record<string, string>>,
): ReturnType<Served['post']> {
  const first = await program.post('/criteria', fields);
  const seen = /name="seen" value="(\w+)"/.exec(first.html)?.[1];
  return seen === undefined ? first : program.post('/criteria', { ...fields, seen });
}

/** Says of every wall of such a form that it is right as typed. */
export function confirmed(walls: readonly string[]): Record<string, string> {
  return Object.fromEntries(walls.map((wall, i) => [`ok.w.${i}`, wall]));
}

export async function revisionNow(program: Served, number = '1001'): Promise<number> {
  const answer = await fetch(`${program.url}/api/jobs/${number}`);
  const { job } = (await answer.json()) as { job: { revision: number } };
  return job.revision;
}

/** Sends one form of job 1001 from its present revision. */
export async function step(
  program: Served,
  section: string,
  fields: Readonly<Record<string, string>>,
): Promise<Awaited<ReturnType<Served['post']>>> {
  const from = String(await revisionNow(program));
  const criteria = String((await currentCriteria(program.shop.db)).revision);
  return program.post(`/jobs/1001/${section}`, { from, criteria, who: 'AK', ...fields });
}

/** Receives a cover, looks it over and measures it: revision 3, to be decided. */
export async function measured(program: Served, wall = '4.90'): Promise<void> {
  await program.post('/jobs', { family: 'alder', receivedOn: '2026-11-24', who: 'MH' });
  await step(program, 'looked', { crackTest: 'none-found', crackMethod: 'dye' });
  await program.post(
    '/jobs/1001/readings',
    readingsForm(
      'before',
      PLACES.map(() => wall),
    ),
  );
}

/** Rows of every comparison on a page: label, left, right. */
export function rowsOf(html: string): [string, string, string][] {
  const tables = [...html.matchAll(/<table class="side-by-side">([\s\S]*?)<\/table>/g)].map(
    ([, inside]) => inside,
  );
  const found = tables.join('').matchAll(/<th scope="row">([^<]*)<\/th><td>([^<]*)<\/td><td>([^<]*)<\/td>/g);
  return [...found].map(
    ([, label, left, right]) => [label!, left!, right!].map(plain) as [string, string, string],
  );
}

function plain(html: string): string {
  return html.replaceAll('&quot;', '"').replaceAll('&amp;', '&').replaceAll('&lt;', '<');
}

import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Child, run } from './children.ts';
import { type Asked, ask, ratesOf } from './load.ts';
import { PAGES } from './pages.ts';
import { atLeast, atMost, type Row, under } from './rows.ts';

const CONNECTIONS = 20;
const MS_OF_ROUND = 600;
const MS_OF_READINGS = 200;
const KB = 1024;
/** Both are held to it, so that who asks, on another, takes no time from either. */
const LAST_CORE = availableParallelism() - 1;
const MOST_BYTES: Readonly<Record<keyof typeof PAGES, number>> = {
  job: 30,
  'quick page': 20,
  'stud page': 20,
  sheet: 20,
};

/** Pages and readings of the program in a process of its own, beside bare Express in another. */
export async function pageRows(): Promise<Row[]> {
  const dataDir = mkdtempSync(join(tmpdir(), 'coverwright-bench-'));
  const yard = await run('tests/bench/yardstick.ts', { onCore: LAST_CORE });
  const program = await run('src/main.ts', { env: { DATA_DIR: dataDir, DEMO: '1' }, onCore: LAST_CORE });
  const rows: Row[] = [];
  for (const [name, path] of Object.entries(PAGES) as [keyof typeof PAGES, string][]) {
    rows.push(...(await pageRow(name, path, program, yard)));
  }
  const part = await ask({ url: `${program.url}/jobs/1001/what-if?try=0.4` });
  rows.push(under('bytes of a part (what another cut leaves)', [part.bytes / KB, 'KB'], 12));
  rows.push(...(await readingRows(program, yard)));
  await program.stop();
  await yard.stop();
  rmSync(dataDir, { recursive: true, force: true });
  return rows;
}

async function pageRow(
  name: keyof typeof PAGES,
  path: string,
  program: Child,
  yard: Child,
): Promise<readonly Row[]> {
  const here = { url: program.url + path };
  const { bytes } = await ask(here);
  const [bare, own] = await ratesOf([() => ({ url: yard.url + path }), () => here], CONNECTIONS, MS_OF_ROUND);
  const told = 'bare Express, the same views';
  return [
    atLeast(`${name}, rate`, [own!.perSecond, '/s'], [bare!.perSecond, told], 0.5),
    atMost(`${name}, p99 at ${CONNECTIONS} at once`, [own!.p99Ms, 'ms'], [bare!.p99Ms, told], 1.5),
    under(`bytes of ${name}`, [bytes / KB, 'KB'], MOST_BYTES[name]),
  ];
}

/** Each reading is a durable commit, here and there: the disk's own pace falls on both alike. */
async function readingRows(program: Child, yard: Child): Promise<readonly Row[]> {
  const body = () => JSON.stringify({ who: 'TO', readings: [reading(1)] });
  const to = (url: string): Asked => ({ url, method: 'POST', body });
  const many = to(`${program.url}/api/jobs/${await jobOf(program, 2000)}/readings`);
  // Another job in each round, which would else not be one of 20 for long.
  const few = async () => to(`${program.url}/api/jobs/${await jobOf(program, 20)}/readings`);
  const [bare, own, big] = await ratesOf(
    [() => to(`${yard.url}/commit`), few, () => many],
    1,
    MS_OF_READINGS,
  );
  return [
    atLeast(
      'one reading over JSON',
      [own!.perSecond, '/s'],
      [bare!.perSecond, 'bare Express, one durable commit'],
      0.33,
    ),
    atMost(
      'one reading in a job of 2,000',
      [1000 / big!.perSecond, 'ms'],
      [1000 / own!.perSecond, 'in a job of 20'],
      1.3,
    ),
  ];
}

async function jobOf({ url }: Child, count: number): Promise<string> {
  const received = { familyId: '1125-4-plain', receivedOn: '2026-11-24' };
  const made = await post(`${url}/api/jobs`, { who: 'TO', received });
  const { number } = JSON.parse(made) as { number: string };
  for (let from = 0; from < count; from += 1000) {
    const readings = Array.from({ length: Math.min(1000, count - from) }, (_, i) => reading(from + i));
    await post(`${url}/api/jobs/${number}/readings`, { who: 'TO', readings });
  }
  return number;
}

function reading(i: number) {
  const radiusMm = 110 + 5 * (Math.floor(i / 12) % 3);
  const place = { angleDeg: 30 * (i % 12), radiusMm };
  return {
    id: randomUUID(),
    pass: 'before',
    kind: 'wall',
    ...place,
    valueMm: 4.9,
    typed: '4.9 mm',
    gauge: '',
  };
}

async function post(url: string, body: unknown): Promise<string> {
  const answer = await ask({ url, method: 'POST', body: () => JSON.stringify(body) });
  if (answer.status >= 300) throw new Error(`${url} answered ${answer.status}: ${answer.text.slice(0, 200)}`);
  return answer.text;
}

import { Agent } from 'node:http';
import { connect, type Socket } from 'node:net';
import { setTimeout as pause } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { ask, post } from './kit/http.ts';
import { newFolder, type Program, start } from './kit/program.ts';
import { random } from './kit/random.ts';
import { decisionForm, faultsIn, fileIn, jobForm, look, readingIds, readingsForm } from './kit/shop.ts';
import { tell } from './kit/tell.ts';

const STOPS = 4;
const idsIn = (dataDir: string) =>
  look(dataDir, (raw) => raw.prepare<[], string>('SELECT id FROM reading').pluck().all());

/** A connection of our own, on which half a request can be sent. */
async function openSocket(port: number): Promise<Socket> {
  const socket = connect(port, '127.0.0.1');
  socket.on('error', () => {});
  await new Promise((resolve) => socket.once('connect', resolve));
  return socket;
}

async function stopCleanly(program: Program): Promise<void> {
  const { code, err } = await program.stop();
  expect([code, err]).toEqual([0, '']);
}

test('the program, told to stop while people write, keeps what it answered and nothing by halves', async () => {
  const dataDir = newFolder();
  const answered: string[] = [];
  let cutOff = 0;
  for (let round = 0; round < STOPS; round++) {
    const program = await start({ dataDir });
    expect((await post(program.url, '/jobs', jobForm(`T-${round}`))).status).toBe(303);
    const agent = new Agent({ keepAlive: true });
    const tablets = Array.from({ length: 8 }, async (_, tablet) => {
      for (let i = 0; i < 200; i++) {
        const token = `T-${round}-${tablet}-${i}-readings`;
        const places = [1, 2, 3].map((k) => tablet * 1000 + i * 3 + k);
        const answer = await post(
          program.url,
          `/jobs/T-${round}/readings`,
          readingsForm(token, places),
          agent,
        ).catch(() => null);
        if (answer === null) {
          cutOff++;
          return;
        }
        expect(answer.status).toBe(303);
        answered.push(...readingIds(token, places));
      }
    });
    const before = answered.length;
    while (answered.length < before + 90) await pause(5);
    await pause(random() * 100);
    await stopCleanly(program);
    await Promise.all(tablets);
    expect(idsIn(dataDir)).toEqual(expect.arrayContaining(answered));
    expect(look(dataDir, faultsIn)).toEqual([]);
  }
  expect(cutOff).toBeGreaterThan(STOPS);
  tell(
    'Told to stop (SIGTERM) while people write',
    `${STOPS} stops, 8 tablets`,
    'what was answered is kept, nothing by halves; exit code 0',
  );
});

test('the program, told to stop, finishes a change that waits for a lock, and keeps nothing of half a form', async () => {
  const dataDir = newFolder();
  const program = await start({ dataDir });
  expect((await post(program.url, '/jobs', jobForm('W-1'))).status).toBe(303);
  const other = new Database(fileIn(dataDir));
  other.exec('BEGIN IMMEDIATE');
  const waiting = post(program.url, '/jobs/W-1/readings', readingsForm('W-1-waiting', [1, 2]));
  const half = await openSocket(program.port);
  const form = new URLSearchParams(readingsForm('W-1-half-a-form', [7, 8])).toString();
  half.write(
    `POST /jobs/W-1/readings HTTP/1.1\r\nHost: 127.0.0.1:${program.port}\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: ${form.length}\r\n\r\n${form.slice(0, -10)}`,
  );
  expect((await ask(`${program.url}/jobs/W-1`)).status).toBe(200);
  await pause(300);
  const stopped = stopCleanly(program);
  await pause(300);
  other.exec('ROLLBACK');
  other.close();
  expect((await waiting).status).toBe(303);
  await stopped;
  half.destroy();
  const again = await start({ dataDir });
  expect(idsIn(dataDir)).toEqual(expect.arrayContaining(readingIds('W-1-waiting', [1, 2])));
  expect(idsIn(dataDir).filter((id) => id.startsWith('W-1-half'))).toEqual([]);
  expect((await again.stop()).code).toBe(0);
  tell(
    'Told to stop in the middle of a request',
    '1 waiting, 1 half sent',
    'the first is finished, of the second nothing is kept; exit code 0',
  );
});

test('the program, told to stop while a lock is never let go, ends all the same and keeps nothing of what waited', async () => {
  const dataDir = newFolder();
  const program = await start({ dataDir });
  expect((await post(program.url, '/jobs', jobForm('N-1'))).status).toBe(303);
  const other = new Database(fileIn(dataDir));
  other.exec('BEGIN IMMEDIATE');
  const waiting = post(program.url, '/jobs/N-1/readings', readingsForm('N-1-waiting', [1])).catch(() => null);
  expect((await ask(`${program.url}/jobs/N-1`)).status).toBe(200);
  await pause(200);
  const { code } = await program.stop();
  expect(code).toBe(0);
  expect([503, undefined]).toContain((await waiting)?.status);
  other.exec('ROLLBACK');
  other.close();
  expect(idsIn(dataDir).filter((id) => id.startsWith('N-1'))).toEqual([]);
});

test('the program, told to stop with idle, slow and deaf clients who never leave, ends all the same', async () => {
  const program = await start({ dataDir: newFolder() });
  const slow = await openSocket(program.port);
  slow.write('GET / HTTP/1.1\r\nHost: 127');
  const deaf = await openSocket(program.port);
  deaf.pause();
  for (let i = 0; i < 60; i++) deaf.write(`GET /cover HTTP/1.1\r\nHost: 127.0.0.1:${program.port}\r\n\r\n`);
  const agent = new Agent({ keepAlive: true });
  expect((await ask(`${program.url}/`, { agent })).status).toBe(200);
  await stopCleanly(program);
  for (const client of [slow, deaf, agent]) client.destroy();
  tell(
    'Told to stop with idle, slow and deaf clients',
    '3 kinds',
    'it ends though they never leave; exit code 0',
  );
});

test('a clock that jumps back three days between two readings refuses nothing, and what came later stands', async () => {
  const dataDir = newFolder();
  const program = await start({ dataDir, inside: ['instrument'] });
  const send = (path: string, fields: Record<string, string>) => post(program.url, path, fields);
  expect((await send('/jobs', jobForm('C-1'))).status).toBe(303);
  expect((await send('/jobs/C-1/readings', readingsForm('C-1-before', [10, 20]))).status).toBe(303);
  await program.ask({ what: 'clock', shiftMs: -3 * 86_400_000 });
  expect((await send('/jobs/C-1/readings', readingsForm('C-1-after', [30]))).status).toBe(303);
  expect((await send('/jobs/C-1/decision', decisionForm(3, 'the clock went back'))).status).toBe(303);
  // The same again, and something that began before what now stands.
  expect((await send('/jobs/C-1/decision', decisionForm(3, 'the clock went back'))).status).toBe(303);
  expect((await send('/jobs/C-1/decision', decisionForm(2, 'from an old page'))).status).toBe(409);
  expect((await send('/jobs', jobForm('C-2'))).status).toBe(303);
  const lines = look(dataDir, (raw) =>
    raw
      .prepare<[], { revision: number; what: string; at: string }>(
        `SELECT r.revision, r.what, r.at FROM job_revision r JOIN job ON job.id = job_id WHERE number = 'C-1' ORDER BY r.revision`,
      )
      .all(),
  );
  expect(lines.map((line) => [line.revision, line.what])).toEqual([
    [1, 'received'],
    [2, 'reading'],
    [3, 'reading'],
    [4, 'decision'],
  ]);
  expect(lines[2]!.at < lines[1]!.at, 'the time is told as the clock said it').toBe(true);
  const page = await ask(`${program.url}/jobs/C-1?revision=2`);
  expect(page.status).toBe(200);
  expect(page.text).not.toContain('the clock went back');
  expect((await ask(`${program.url}/jobs/C-1`)).text).toContain('the clock went back');
  for (const path of ['/', '/jobs', '/jobs/C-1/sheet', '/catalogue', '/criteria']) {
    expect((await ask(program.url + path)).status, path).toBe(200);
  }
  expect(look(dataDir, faultsIn)).toEqual([]);
  expect((await program.stop()).code).toBe(0);
  const again = await start({ dataDir });
  expect((await ask(`${again.url}/jobs/C-1`)).text).toContain('the clock went back');
  tell(
    'Clock jumps back three days',
    '1 jump, 5 changes after it',
    'nothing is refused for it; what came later stands, whatever the clock said',
  );
});

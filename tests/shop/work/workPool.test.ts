import { afterEach, describe, expect, it, vi } from 'vitest';
import type { StiffnessInput } from '../../../shared/words/bending/stiffness.ts';
import { bendCover } from '../../../src/calc/plate/bendCover.ts';
import { type Asker, NotWanted, WorkBusy, WorkFailed, WorkPool } from '../../../src/shop/work/workPool.ts';
import { COVER } from '../../calc/plate/example.ts';
import { tell } from '../../faults/kit/tell.ts';

let pool: WorkPool;
afterEach(() => {
  vi.useRealTimers();
  return pool.close();
});

/**
 * A thread that answers with the wall it was asked about, dies of 13 mm, never takes 7 mm up, never answers 9 mm and
 * takes its time for 8.
 */
const ODD = new URL(
  `data:text/javascript,${encodeURIComponent(`
    import { parentPort } from 'node:worker_threads';
    parentPort.on('message', ({ asked: [{ wallMm }] }) => {
      if (wallMm === 13) process.exit(1);
      if (wallMm === 7) for (;;);
      parentPort.postMessage({ began: true });
      if (wallMm === 9) for (;;);
      const answer = () => parentPort.postMessage({ answer: { wallMm } });
      if (wallMm === 8) setTimeout(answer, 150);
      else answer();
    });
  `)}`,
);
const bend = (input: StiffnessInput, asker?: Asker) => pool.ask('bending', [input], asker);
const by = (caller: string, signal?: AbortSignal): Asker => ({ caller, lane: 'people', signal });
const script = (caller: string): Asker => ({ caller, lane: 'scripts' });
const wall = (wallMm: number): StiffnessInput => ({ ...COVER, wallMm });

describe('the thread that works out what takes long', () => {
  it('answers as the calculation does, refuses as it does, and keeps what it answered', async () => {
    pool = new WorkPool();
    const first = await bend(COVER);
    expect(first).toEqual(bendCover(COVER));
    expect(await bend({ ...COVER })).toBe(first);
    await expect(bend({ ...COVER, rimDiameterMm: -1 })).rejects.toMatchObject({
      code: 'cover-geometry',
      faults: [{ path: 'rimDiameterMm' }],
    });
  });

  it('leaves the thread that answers requests free meanwhile', async () => {
    pool = new WorkPool();
    await bend(COVER);
    let [turns, working] = [0, true];
    const turn = () => {
      turns += 1;
      if (working) setImmediate(turn);
    };
    setImmediate(turn);
    const walls = Array.from({ length: 4 }, (_, i) => bend(wall(4 + i / 10)));
    await Promise.all(walls);
    working = false;
    // On the same thread there would be a turn or two between answers.
    expect(turns).toBeGreaterThan(100);
  });

  it('is replaced when it dies, and the question that killed it twice is refused', async () => {
    pool = new WorkPool({ worker: ODD });
    const before = bend(wall(1));
    const deadly = bend(wall(13));
    const behind = bend(wall(2));
    await expect(deadly).rejects.toBeInstanceOf(WorkFailed);
    expect([await before, await behind]).toEqual([{ wallMm: 1 }, { wallMm: 2 }]);
    expect(await bend(wall(3))).toEqual({ wallMm: 3 });
  });

  it('is stopped when it takes too long: refused with a sentence, not tried again, and the next is answered', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    pool = new WorkPool({ worker: ODD, startLimitMs: 10_000 });
    const endless = bend(wall(7));
    endless.catch(() => undefined);
    const behind = bend(wall(3));
    vi.advanceTimersByTime(9999);
    expect(pool.waiting()).toEqual({ running: 1, people: 1, scripts: 0 });
    vi.advanceTimersByTime(1);
    await expect(endless).rejects.toMatchObject({
      code: 'too-long',
      faults: [{ message: expect.stringMatching(/took too long and was stopped\. Check the walls/) }],
    });
    expect(await behind).toEqual({ wallMm: 3 });
    expect(pool.waiting()).toEqual({ running: 0, people: 0, scripts: 0 });
    tell(
      'Stalled solver',
      '1 endless question, 1 behind it',
      'refused with a sentence; the next is answered',
    );
  });

  it('has its time from when it took a question up, not from when it was asked', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    pool = new WorkPool({ worker: ODD, startLimitMs: 1e9, timeLimitMs: 500 });
    let stopped = false;
    const endless = bend(wall(9)).finally(() => {
      stopped = true;
    });
    endless.catch(() => undefined);
    // Far fewer turns than the limit for its start has room for: what stops it is the shorter one.
    while (!stopped) {
      vi.advanceTimersByTime(500);
      await new Promise((resolve) => setImmediate(resolve));
    }
    await expect(endless).rejects.toMatchObject({ code: 'too-long' });
  });

  it('gives what is under way a moment once nobody waits for it, and its whole time again when somebody does', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    pool = new WorkPool({ worker: ODD, graceMs: 200 });
    const [left, leftToo] = [new AbortController(), new AbortController()];
    const first = bend(wall(7), by('a', left.signal));
    left.abort();
    await expect(first).rejects.toBeInstanceOf(NotWanted);
    const again = bend(wall(7), by('b', leftToo.signal));
    vi.advanceTimersByTime(200);
    expect(pool.waiting().running).toBe(1);
    leftToo.abort();
    await expect(again).rejects.toBeInstanceOf(NotWanted);
    const next = bend(wall(3));
    vi.advanceTimersByTime(200);
    expect(await next).toEqual({ wallMm: 3 });
  });

  it('takes people before scripts, and callers in turn', async () => {
    pool = new WorkPool({ worker: ODD });
    const order: string[] = [];
    let wallMm = 20;
    const ask = (asker: Asker) => {
      wallMm += 1;
      return bend(wall(wallMm), asker).then(() => order.push(asker.caller));
    };
    // The first is begun at once, whoever asks; a script asks much, and then two people.
    const all = [script('s'), script('s'), script('s'), script('t'), by('a'), by('a'), by('a'), by('b')].map(
      ask,
    );
    await Promise.all(all);
    expect(order.join(' ')).toBe('s a b a a t s s');
  });

  it('answers a question that a script asked first in the turn of the person who asks it too', async () => {
    pool = new WorkPool({ worker: ODD });
    const order: number[] = [];
    const ask = (wallMm: number, asker: Asker) => bend(wall(wallMm), asker).then(() => order.push(wallMm));
    await Promise.all([ask(21, script('s')), ask(22, script('s')), ask(23, script('s')), ask(23, by('a'))]);
    expect(order).toEqual([21, 23, 23, 22]);
  });

  it('lets a caller and a lane have only so many wait, and takes more once they are answered', async () => {
    pool = new WorkPool({ worker: ODD });
    let wallMm = 100;
    const ask = (asker: Asker) => {
      wallMm += 1;
      return bend(wall(wallMm), asker);
    };
    const asked = Array.from({ length: 9 }, () => ask(script('s')));
    await expect(ask(script('s'))).rejects.toBeInstanceOf(WorkBusy);
    asked.push(
      ...['t', 'u', 'v', 'w'].flatMap((caller) => Array.from({ length: 8 }, () => ask(script(caller)))),
    );
    expect(pool.waiting()).toEqual({ running: 1, people: 0, scripts: 40 });
    await expect(ask(script('x'))).rejects.toBeInstanceOf(WorkBusy);
    // People have room of their own.
    asked.push(ask(by('a')));
    await Promise.all(asked);
    expect(await ask(script('s'))).toEqual({ wallMm });
  });

  it('drops what nobody waits for any more, and not what somebody else waits for', {
    timeout: 50_000,
  }, async () => {
    pool = new WorkPool({ worker: ODD });
    const slow = bend(wall(8));
    const [left, stays] = [new AbortController(), new AbortController()];
    const dropped = bend(wall(7), by('a', left.signal));
    const shared = bend(wall(4), by('a', left.signal));
    const other = bend(wall(4), by('b', stays.signal));
    left.abort();
    await expect(dropped).rejects.toBeInstanceOf(NotWanted);
    await expect(shared).rejects.toBeInstanceOf(NotWanted);
    // Wall 7 never answers: that these do shows that it was not begun.
    expect([await slow, await other]).toEqual([{ wallMm: 8 }, { wallMm: 4 }]);
    await expect(bend(wall(5), by('a', left.signal))).rejects.toBeInstanceOf(NotWanted);
  });

  it('keeps only so many answers, those asked for last', async () => {
    pool = new WorkPool({ worker: ODD, keep: 2 });
    const one = await bend(wall(1));
    const two = await bend(wall(2));
    expect(await bend(wall(1))).toBe(one);
    await bend(wall(3));
    expect(await bend(wall(1))).toBe(one);
    expect(await bend(wall(2))).not.toBe(two);
  });

  it('gives up what is under way when it is closed, and begins anew when it is asked again', async () => {
    pool = new WorkPool({ worker: ODD });
    const slow = bend(wall(8));
    const waiting = bend(wall(2));
    const told = Promise.allSettled([slow, waiting]);
    await pool.close();
    expect((await told).map(({ status }) => status)).toEqual(['rejected', 'rejected']);
    expect(await bend(wall(2))).toEqual({ wallMm: 2 });
  });
});

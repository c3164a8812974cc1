import { afterEach, describe, expect, it, vi } from 'vitest';
import type { StiffnessInput } from '../../../shared/words/stiffness.ts';
import { bendCover } from '../../../src/calc/plate/bendCover.ts';
import { BendingFailed, BendingPool, NotWanted } from '../../../src/shop/bending/bendingPool.ts';
import { COVER } from '../../calc/plate/example.ts';

let pool: BendingPool;
afterEach(() => {
  vi.useRealTimers();
  return pool.close();
});

/** A thread that answers with the wall it was asked about, dies of 13 mm, never answers 7 mm and takes its time for 8. */
const ODD = new URL(
  `data:text/javascript,${encodeURIComponent(`
    import { parentPort } from 'node:worker_threads';
    parentPort.on('message', ({ wallMm }) => {
      if (wallMm === 13) process.exit(1);
      if (wallMm === 7) for (;;);
      const answer = () => parentPort.postMessage({ answer: { wallMm } });
      if (wallMm === 8) setTimeout(answer, 150);
      else answer();
    });
  `)}`,
);
const wall = (wallMm: number): StiffnessInput => ({ ...COVER, wallMm });

describe('the thread that works out bending', () => {
  it('answers as the calculation does, refuses as it does, and keeps what it answered', async () => {
    pool = new BendingPool();
    const first = await pool.bend(COVER);
    expect(first).toEqual(bendCover(COVER));
    expect(await pool.bend({ ...COVER })).toBe(first);
    await expect(pool.bend({ ...COVER, rimDiameterMm: -1 })).rejects.toMatchObject({
      code: 'cover-geometry',
      faults: [{ path: 'rimDiameterMm' }],
    });
  });

  it('leaves the thread that answers requests free meanwhile', async () => {
    pool = new BendingPool();
    await pool.bend(COVER);
    let [turns, working] = [0, true];
    const turn = () => {
      turns += 1;
      if (working) setImmediate(turn);
    };
    setImmediate(turn);
    const walls = Array.from({ length: 4 }, (_, i) => pool.bend(wall(4 + i / 10)));
    await Promise.all(walls);
    working = false;
    // On the same thread there would be a turn or two between answers.
    expect(turns).toBeGreaterThan(100);
  });

  it('is replaced when it dies, and the question that killed it twice is refused', async () => {
    pool = new BendingPool({ worker: ODD });
    const before = pool.bend(wall(1));
    const deadly = pool.bend(wall(13));
    const behind = pool.bend(wall(2));
    await expect(deadly).rejects.toBeInstanceOf(BendingFailed);
    expect([await before, await behind]).toEqual([{ wallMm: 1 }, { wallMm: 2 }]);
    expect(await pool.bend(wall(3))).toEqual({ wallMm: 3 });
  });

  it('is stopped when it takes too long, and the next is answered', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    pool = new BendingPool({ worker: ODD, timeLimitMs: 10_000 });
    let stopped = false;
    const endless = pool.bend(wall(7)).finally(() => {
      stopped = true;
    });
    endless.catch(() => undefined);
    // It is begun twice, and each time stopped when its time is over.
    while (!stopped) {
      vi.advanceTimersByTime(10_000);
      await new Promise((resolve) => setImmediate(resolve));
    }
    await expect(endless).rejects.toBeInstanceOf(BendingFailed);
    expect(await pool.bend(wall(3))).toEqual({ wallMm: 3 });
  });

  it('drops what nobody waits for any more, and not what somebody else waits for', {
    timeout: 50_000,
  }, async () => {
    pool = new BendingPool({ worker: ODD, timeLimitMs: 60_000 });
    const slow = pool.bend(wall(8));
    const [left, stays] = [new AbortController(), new AbortController()];
    const dropped = pool.bend(wall(7), left.signal);
    const shared = pool.bend(wall(4), left.signal);
    const other = pool.bend(wall(4), stays.signal);
    left.abort();
    await expect(dropped).rejects.toBeInstanceOf(NotWanted);
    await expect(shared).rejects.toBeInstanceOf(NotWanted);
    // Wall 7 never answers: that these do shows that it was not begun.
    expect([await slow, await other]).toEqual([{ wallMm: 8 }, { wallMm: 4 }]);
    await expect(pool.bend(wall(5), left.signal)).rejects.toBeInstanceOf(NotWanted);
  });

  it('keeps only so many answers, those asked for last', async () => {
    pool = new BendingPool({ worker: ODD, keep: 2 });
    const one = await pool.bend(wall(1));
    const two = await pool.bend(wall(2));
    expect(await pool.bend(wall(1))).toBe(one);
    await pool.bend(wall(3));
    expect(await pool.bend(wall(1))).toBe(one);
    expect(await pool.bend(wall(2))).not.toBe(two);
  });

  it('gives up what is under way when it is closed, and begins anew when it is asked again', async () => {
    pool = new BendingPool({ worker: ODD });
    const slow = pool.bend(wall(8));
    const waiting = pool.bend(wall(2));
    const told = Promise.allSettled([slow, waiting]);
    await pool.close();
    expect((await told).map(({ status }) => status)).toEqual(['rejected', 'rejected']);
    expect(await pool.bend(wall(2))).toEqual({ wallMm: 2 });
  });
});

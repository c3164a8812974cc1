import { once } from 'node:events';
import { type AddressInfo, connect, createServer, type Socket } from 'node:net';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { write } from '../../../src/records/database/database.ts';
import { RecordsUnavailable } from '../../../src/records/database/errors.ts';
import { openPostgres } from '../../../src/records/database/postgres.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { tell } from '../../faults/kit/tell.ts';
import { errorOf } from '../refusals.ts';
import { as, received } from '../samples.ts';
import { onPostgres, placeOnPostgres } from '../shops.ts';

/** A line to the server that can be frozen: what is sent is taken, and nothing comes back. */
async function openLine(url: URL) {
  let frozen = false;
  const sockets = new Set<Socket>();
  const line = createServer((near) => {
    const far = connect(Number(url.port || 5432), url.hostname);
    for (const [from, to] of [
      [near, far],
      [far, near],
    ] as const) {
      sockets.add(from);
      from.on('error', () => to.destroy());
      from.on('close', () => to.destroy());
      from.on('data', (bytes) => frozen || to.write(bytes));
    }
  });
  line.listen(0, '127.0.0.1');
  await once(line, 'listening');
  const through = new URL(url);
  through.hostname = '127.0.0.1';
  through.port = String((line.address() as AddressInfo).port);
  return {
    url: through.href,
    freeze: () => {
      frozen = true;
    },
    thaw: () => {
      frozen = false;
    },
    close: () => {
      for (const one of sockets) one.destroy();
      line.close();
    },
  };
}

onPostgres('a PostgreSQL that is frozen', () => {
  let place: Awaited<ReturnType<typeof placeOnPostgres>>;
  let line: Awaited<ReturnType<typeof openLine>>;
  beforeEach(async () => {
    place = await placeOnPostgres();
    line = await openLine(new URL(place.url));
  });
  afterEach(async () => {
    line.close();
    await place.remove();
  });

  const code = async (promise: Promise<unknown>) => {
    const error = await errorOf(promise);
    if (!(error instanceof RecordsUnavailable)) throw error;
    return error.code;
  };

  test('is given up in a sentence, reading and writing, and used again when it answers', async () => {
    const shop = await openPostgres({ url: line.url, dataDir: '', patienceMs: 3000, deadlineMs: 3000 });
    try {
      const kept = await createJob(shop.db, as('AB'), { number: 'kept', received: received() });
      line.freeze();
      expect(await code(getJob(shop.db, 'kept'))).toBe('lost');
      expect(await code(createJob(shop.db, as('AB'), { received: received() }))).toBe('lost');
      line.thaw();
      expect(await getJob(shop.db, 'kept')).toEqual(kept);
      const broken = write(shop.db, async (trx) => {
        await createJob(trx, as('AB'), { number: 'broken', received: received() });
        line.freeze();
        return createJob(trx, as('AB'), { number: 'after', received: received() });
      });
      expect(await code(broken)).toBe('lost');
      line.thaw();
      expect(await getJob(shop.db, 'broken')).toBeNull();
      tell(
        'PostgreSQL frozen, not dead',
        '2 times, once in mid-transaction',
        'reading and writing are given up with a sentence (503), nothing of the change is kept; used again when it answers',
      );
    } finally {
      line.thaw();
      await shop.close();
    }
  });
});

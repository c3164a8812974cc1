import { setTimeout as pause } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { ask, post } from './kit/http.ts';
import { newFolder, start } from './kit/program.ts';
import { faultsIn, jobForm, look, readingIds, readingsForm } from './kit/shop.ts';

/** The longer run is `npm run test:faults`; this is what `npm test` holds of it. */
test('the program is killed three times while people write, starts again with what it acknowledged, and stops when told', async () => {
  const dataDir = newFolder();
  const kept: string[] = [];
  for (const round of [1, 2, 3, 4]) {
    const program = await start({ dataDir, inside: ['instrument'] });
    expect(look(dataDir, faultsIn)).toEqual([]);
    const there = look(dataDir, (raw) => raw.prepare('SELECT id FROM reading').pluck().all());
    expect(there).toEqual(expect.arrayContaining(kept));
    if (round === 4) {
      expect((await ask(`${program.url}/jobs/S-1`)).status).toBe(200);
      expect((await ask(`${program.url}/jobs/${'%2e%2e/'.repeat(9)}x%00`)).status).toBe(404);
      const { code, err } = await program.stop();
      expect([code, err]).toEqual([0, '']);
      break;
    }
    expect((await post(program.url, '/jobs', jobForm(`S-${round}`))).status).toBe(303);
    const writing = [1, 2, 3].map(async (tablet) => {
      for (let i = 0; ; i++) {
        const token = `smoke-${round}-${tablet}-${i}`;
        const places = [100 * tablet + 2 * i, 100 * tablet + 2 * i + 1];
        const answer = await post(
          program.url,
          `/jobs/S-${round}/readings`,
          readingsForm(token, places),
        ).catch(() => null);
        if (answer === null) return;
        expect(answer.status).toBe(303);
        kept.push(...readingIds(token, places));
      }
    });
    const before = kept.length;
    while (kept.length < before + 6) await pause(5);
    await pause(30 * round);
    program.kill('SIGKILL');
    await Promise.all(writing);
    expect((await program.ended).signal).toBe('SIGKILL');
  }
});

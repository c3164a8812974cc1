import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test, vi } from 'vitest';
import { Stopped } from '../../src/progress.ts';
import { listBackups } from '../../src/records/backup/list.ts';
import { openShop } from '../../src/records/database/database.ts';
import { UnderWay } from '../../src/web/workUnderWay.ts';
import { RecordsPage, type RecordsProps } from '../../views/pages/backupsPage.tsx';
import { renderPage } from '../../views/render.ts';
import { serve } from './program.ts';

test('what is under way says how far it is, and ends at its next step when it is stopped', async () => {
  const work = new UnderWay();
  let goOn = () => {};
  const made = work.run('Nothing was copied.', async (step) => {
    for (let done = 3; ; done++) {
      step('Copying photos', done, 40);
      await new Promise<void>((resolve) => {
        goOn = resolve;
      });
    }
  });
  const ended = made.catch((error: unknown) => error);
  expect(work.part).toMatchObject({ what: 'Copying photos', done: 3, of: 40 });
  expect(work.failure).toBeNull();
  const stopped = work.stop();
  goOn();
  await stopped;
  expect(await ended).toEqual(new Stopped('Nothing was copied.'));
  expect(work.part).toBeNull();
  expect(work.failure).toBe('Stopped. Nothing was copied.');
  await work.run('', async () => {});
  expect(work.failure).toBeNull();
});

test('the page asks each second only while something is under way, and stops it by a button', () => {
  const page = (more: Partial<RecordsProps>) => renderPage(RecordsPage({ ...props, ...more }));
  const running = page({
    underWay: { words: 'Copying photos: 3 of 40, about 20 s left', done: 3, of: 40 },
  });
  expect(running).toContain('<progress id="making" value="3" max="40">');
  expect(running).toContain('Copying photos: 3 of 40, about 20\u00a0s left');
  expect(running).toContain('hx-trigger="every 1s"');
  expect(running).toContain('action="/records/stop"');
  expect(running).not.toContain('action="/records/backups"');
  const stopped = page({ stopped: 'Stopped. No backup was made.' });
  expect(stopped).not.toContain('every 1s');
  expect(stopped).toMatch(/role="alert">\s*Stopped\. No backup was made\./);
});

test('a page with a script is answered at once, and finds the backup when it is made', async () => {
  const dataDir = mkdtempSync(join(tmpdir(), 'coverwright-test-'));
  const program = await serve({ demo: false, open: async ({ now }) => openShop({ dataDir, now }) });
  try {
    const answer = await fetch(`${program.url}/records/backups`, {
      method: 'POST',
      redirect: 'manual',
      headers: { origin: program.url, 'HX-Request': 'true' },
    });
    expect(answer.status).toBe(303);
    await vi.waitUntil(async () => !(await program.get('/records')).html.includes('every 1s'), {
      timeout: 60_000,
    });
    expect(await listBackups(join(dataDir, 'backups'))).toHaveLength(1);
    expect(await program.post('/records/stop', {})).toMatchObject({ status: 303 });
  } finally {
    await program.close();
    rmSync(dataDir, { recursive: true });
  }
});

const props: RecordsProps = {
  frame: {
    shopName: 'Demo shop',
    demo: true,
    lengthUnit: 'in',
    decimalSign: 'point',
    timeZone: 'UTC',
    initials: '',
    address: '/records',
  },
  counts: { jobs: 1, putAway: 0, readings: 3, photos: 40 },
  where: 'a folder',
  inPostgres: false,
  daily: null,
  kept: null,
  backups: [],
  failure: null,
  refused: null,
  underWay: null,
  stopped: null,
  lastAway: null,
  copyDue: null,
  awayRefused: null,
};

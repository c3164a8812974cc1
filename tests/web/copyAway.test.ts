import { afterAll, beforeAll, expect, it } from 'vitest';
import { currentCriteria, saveCriteria } from '../../src/records/shopCriteria.ts';
import { type Served, serve } from './program.ts';

let program: Served;
let today = '2026-11-24';
beforeAll(async () => {
  program = await serve({ demo: true, now: () => new Date(`${today}T12:00:00Z`) });
});
afterAll(() => program.close());

const front = async () => (await program.get('/')).text;

it('a manager is reminded once no backup has left for as long as the shop chose', async () => {
  expect(await front()).not.toContain('this machine');
  const { body, revision } = await currentCriteria(program.shop.db);
  await saveCriteria(
    program.shop.db,
    { who: 'AA', why: 'house rule', now: () => new Date(`${today}T12:00:00Z`) },
    { fromRevision: revision, body: { ...body, backupAwayDays: 7 } },
  );
  expect(await front()).toContain('No backup is recorded as taken off this machine');
  const nowhere = await program.post('/records/away', { whither: '', who: 'AA' });
  expect(nowhere.status).toBe(422);
  expect(nowhere.text).toContain('Enter where the copy is now');
  expect((await program.post('/records/away', { whither: 'drive in the safe', who: 'AA' })).status).toBe(303);
  expect(await front()).not.toContain('this machine');
  today = '2026-11-30';
  expect(await front()).not.toContain('this machine');
  today = '2026-12-01';
  expect(await front()).toContain('The last backup left this machine 7 days ago');
  expect((await program.get('/records')).text).toContain('drive in the safe, AA');
});

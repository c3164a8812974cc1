import { afterAll, beforeAll, expect, it } from 'vitest';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import type { Served } from '../program.ts';
import { confirmed, measured, PLACES, readingsForm, revisionNow, rowsOf, shopWith, step } from '../steps.ts';

let program: Served;
beforeAll(async () => {
  program = await shopWith({ minimumWallMm: 4.3, faceRunoutLimitMm: null });
  await measured(program);
  await step(program, 'plan', { cut: '0.3' });
  await step(program, 'decision', { decision: 'face', reason: 'as planned' });
  await step(program, 'cuts', { depth: '0.2', note: 'slow feed', look: 'dark' });
  await step(program, 'cuts', { depth: '0.01', look: 'gone' });
  const walls = PLACES.map(() => '4.60');
  await program.post('/jobs/1001/readings', {
    ...readingsForm('after', walls),
    ...confirmed(walls),
    token: 'token-after-pass2',
  });
});
afterAll(() => program.close());

it('a pass ten times what is left of the decided cut is asked about, and kept once it is confirmed', async () => {
  const shop = await shopWith({ minimumWallMm: 4.3, faceRunoutLimitMm: null });
  await measured(shop);
  await step(shop, 'plan', { cut: '0.31' });
  await step(shop, 'decision', { decision: 'face', reason: 'as planned' });
  const asked = await step(shop, 'cuts', { depth: '3.1' });
  expect(asked.status).toBe(422);
  expect(asked.text).toContain('Did you mean 0.31 mm?');
  expect(asked.html).toMatch(/<input[^>]*name="ok.depth"[^>]*value="3.1"/);
  expect(asked.html).toMatch(/<button[^>]*name="set.depth"[^>]*value="0.31 mm"/);
  expect((await step(shop, 'cuts', { depth: '3.1', 'ok.depth': '3.1' })).status).toBe(303);
  await shop.close();
});

it('a pass put right to ten times what is left is asked about too, and kept once it is confirmed', async () => {
  const shop = await shopWith({ minimumWallMm: 4.3, faceRunoutLimitMm: null });
  await measured(shop);
  await step(shop, 'plan', { cut: '0.31' });
  await step(shop, 'decision', { decision: 'face', reason: 'as planned' });
  await step(shop, 'cuts', { depth: '0.30' });
  const right = { pass: '1', why: 'read the dial again' };
  const asked = await step(shop, 'pass', { ...right, depth: '3.1' });
  expect(asked.status).toBe(422);
  const form = asked.html.split('id="pass-form"')[1]!.split('</form>')[0]!;
  expect(form).toContain('Did you mean 0.31 mm?');
  expect(form).toMatch(/<input[^>]*name="ok.depth"[^>]*value="3.1"/);
  expect(form).toMatch(/<button[^>]*name="set.depth"[^>]*value="0.31 mm"/);
  expect((await step(shop, 'pass', { ...right, depth: '0.31' })).status).toBe(303);
  expect((await step(shop, 'pass', { ...right, depth: '3.1', 'ok.depth': '3.1' })).status).toBe(303);
  await shop.close();
});

const job = async () => (await getJob(program.shop.db, '1001'))!;

it('a mistyped pass is put right with a reason; the figure it was stays in the history, and no reading is lost', async () => {
  const before = await job();
  expect(before.stage).toBe('to-sign');
  const page = await program.get('/jobs/1001');
  const form = page.html.split('id="pass-form"')[1]!.split('</form>')[0]!;
  expect(form).toMatch(/value="2" selected[^>]*>pass 2, entered as 0\.010 mm/);
  expect(form).toContain('Reason for the correction');

  expect((await step(program, 'pass', { pass: '2', depth: '0.1', why: 'a nought too many' })).status).toBe(
    303,
  );
  const after = await job();
  expect(after.revision).toBe(before.revision + 1);
  expect(after.sections.cuts?.body.cuts).toEqual([
    { depthMm: 0.2, typed: '0.2', note: 'slow feed', look: 'dark', truedAgain: null },
    { depthMm: 0.1, typed: '0.1', note: '', look: 'gone', truedAgain: null },
  ]);
  expect(after.sections.cuts).toMatchObject({ who: 'AK', why: 'a nought too many' });
  expect(after.passesAt).toEqual(before.passesAt);
  expect(after.readings).toEqual(before.readings);
  expect(after.outcome).toBe('face');
  // What the interface does too: the depths changed, so a wall is measured again.
  expect(after.stage).toBe('to-verify');

  const history = await program.get(`/jobs/1001/history/${after.revision}`);
  expect(rowsOf(history.html)).toEqual([
    [
      'Pass 2',
      '0.01 mm; heat mark after this pass: gone everywhere',
      '0.1 mm; heat mark after this pass: gone everywhere',
    ],
  ]);
  expect(history.text).toContain('a nought too many');
});

it.each([
  ['no reason', { pass: '1', depth: '0.21', why: '' }, 'why', 'Enter the reason for the correction'],
  ['no depth', { pass: '1', depth: '', why: 'slip' }, 'depth', 'Depth of cut is empty'],
  ['more than the wall', { pass: '1', depth: '21', why: 'slip' }, 'depth', 'Check the depth and its unit'],
  ['a pass nobody made', { pass: '3', depth: '0.2', why: 'slip' }, 'pass', 'has no such pass'],
])(
  'a pass put right with %s is refused beside what was typed, and nothing is kept',
  async (_, sent, field, sentence) => {
    const revision = await revisionNow(program);
    const page = await step(program, 'pass', sent);
    expect(page.status).toBe(422);
    const folded = page.html.split('id="put-right"')[1]!.split('</details>')[0]!;
    expect(folded).toMatch(/^[^>]* open/);
    expect(folded).toContain(sentence);
    expect(folded).toMatch(new RegExp(`name="${field}"[^>]*aria-invalid="true"`));
    expect(folded).toContain(`name="depth"`);
    expect(page.html.split('id="cuts-form"')[1]!.split('</form>')[0]).not.toContain(sentence);
    expect(await revisionNow(program)).toBe(revision);
  },
);

it('a pass somebody put right meanwhile is not put right over it', async () => {
  const from = String(await revisionNow(program));
  await step(program, 'pass', { pass: '1', depth: '0.19', why: 'read the dial again', who: 'BL' });
  const page = await step(program, 'pass', { pass: '1', depth: '0.18', why: 'mine', from });
  expect(page.status).toBe(409);
  expect(rowsOf(page.html)).toContainEqual([
    'Pass 1',
    '0.19 mm; heat mark after this pass: still there; slow feed',
    '0.18 mm; heat mark after this pass: still there; slow feed',
  ]);
  expect((await job()).sections.cuts?.body.cuts[0]?.depthMm).toBe(0.19);
});

it('a page calls no step done that keeps the job from being signed', async () => {
  // The depth was put right above, so the walls read before it do not count; then the look is taken back.
  await step(program, 'looked', { crackTest: 'not-done' });
  expect((await job()).stage).toBe('to-decide');
  const { html } = await program.get('/jobs/1001');
  const shown = [...html.matchAll(/<section class="job-section job-section-(\w+)"/g)].map(
    ([, state]) => state,
  );
  expect(shown).toEqual(['done', 'missing', 'done', 'next', 'done', 'later', 'later', 'later']);
  for (const missing of ['the crack test is not done', 'no wall is measured after the last cut']) {
    expect(html).toContain(missing);
  }
});
